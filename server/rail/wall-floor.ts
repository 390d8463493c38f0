/** What the wall clock showed at least when the newest event was recorded. */
import type { Recorded } from '#lib/service/events/event.ts'

export interface WallFloor {
  /** Of the newest event, epoch milliseconds; times in a log never run backwards. */
  readonly at: number
  /** Below it by what the clock is known to have fallen, until it has caught up. Epoch milliseconds. */
  readonly wall: number
}

export const NO_WALL: WallFloor = { at: 0, wall: 0 }

/** After one more event. */
export const wallAfter = ({ at, wall }: WallFloor, event: Recorded): WallFloor => {
  const shown = event.at > at ? event.at : wall
  const fell = event.type === 'clockJumped' ? Math.min(0, event.byMs) : 0
  return { at: event.at, wall: shown + fell }
}
