/** The clock by which proofs age: it never falls, also when the machine's is set back. */
import { ageingNow, type Floor } from '#lib/access/life.ts'
import type { House } from '#server/access/house.ts'

/** How far it may be ahead of what is kept: so much of a proof's age a kill and a set clock could undo. */
const KEPT_EVERY_MS = 60_000

/** Two clocks that are this close are one. */
const SAME_MS = 1_000

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
    kept = Math.floor(floor.at)
    house.raiseFloor(kept)
  }
  const now = (): number => {
    const since = monotonic()
    // Not rounded: what is asked often would run ahead by its halves.
    floor = { at: ageingNow(floor, wall(), since), monotonic: since }
    if (floor.at - kept >= KEPT_EVERY_MS) keep()
    return Math.floor(floor.at)
  }
  const onWall = (at: number): number => {
    const ahead = now() - wall()
    return Math.abs(ahead) < SAME_MS ? at : at - ahead
  }
  return { now, onWall, keep }
}
