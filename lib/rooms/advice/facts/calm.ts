/** When the lead may be asked: not inside the rush windows that were said, nor where past days were busy. */

import type { Profile } from '#lib/estimate/arrivals.ts'
import { type Rush, rushOf } from '#lib/estimate/rush.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import { instantAt, minuteAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Calm {
  /** Until when a rush goes on at an instant, epoch milliseconds; null where there is none. */
  readonly rushUntil: (at: number) => number | null
  /** The next one that begins after an instant and before close; null where none is known. */
  readonly rushAhead: (at: number, closes: number) => RushWindow | null
  /** The first instant from `at` on at which the lead may be asked, at the latest at close. */
  readonly nextQuiet: (at: number, closes: number) => number
}

const STEP_MS = 60_000

/** `profile` is what past days were like; null where none is known. */
export const calmOf = (state: RunningState, profile: Profile | null): Calm => {
  const byPast: Rush | null = profile ? rushOf(profile) : null
  const isRush = (at: number): boolean =>
    state.rushes.some(({ from, to }) => from <= at && at < to) ||
    (byPast?.isAt(state.counts, minuteAt(state, at)) ?? false)
  const end = (at: number, closes: number): number => {
    let quiet = at
    while (quiet < closes && isRush(quiet)) {
      const said = state.rushes.find(({ from, to }) => from <= quiet && quiet < to)
      quiet = said ? said.to : instantAt(state, Math.floor(minuteAt(state, quiet)) + 1)
    }
    return Math.min(quiet, closes)
  }
  const ahead = (at: number, closes: number): RushWindow | null => {
    const said = state.rushes.find(({ from }) => from > at)?.from ?? closes
    let from = instantAt(state, Math.floor(minuteAt(state, end(at, closes))) + 1)
    while (from < Math.min(said, closes) && !isRush(from)) from += STEP_MS
    from = Math.min(from, said)
    return from > at && from < closes && isRush(from) ? { from, to: end(from, closes) } : null
  }
  return {
    rushAhead: ahead,
    rushUntil: (at) => (isRush(at) ? end(at, at + 240 * STEP_MS) : null),
    nextQuiet: end,
  }
}
