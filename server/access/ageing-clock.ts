/** The clock by which proofs age: it never falls, also when the machine's is set back. */
import { ageingNow, type Floor } from '#lib/access/life.ts'
import type { House } from '#server/access/house.ts'

/** How far it may be ahead of what is kept: so much of a proof's age a kill and a set clock could undo. */
const KEPT_EVERY_MS = 60_000

export interface AgeingClock {
  /** Epoch milliseconds. */
  now(): number
  /** What a time of this clock is on the machine's own. */
  onWall(at: number): number
  /** Keeps how far it has come. */
  keep(): void
}

export const createAgeingClock = (
  house: Pick<House, 'floor' | 'raiseFloor'>,
  wall: () => number,
  monotonic: () => number = () => performance.now(),
): AgeingClock => {
  let floor: Floor = { at: house.floor(), monotonic: monotonic() }
  let kept = floor.at
  const keep = (): void => {
    kept = floor.at
    house.raiseFloor(kept)
  }
  const now = (): number => {
    const since = monotonic()
    floor = { at: Math.round(ageingNow(floor, wall(), since)), monotonic: since }
    if (floor.at - kept >= KEPT_EVERY_MS) keep()
    return floor.at
  }
  return { now, onWall: (at) => wall() + (at - now()), keep }
}
