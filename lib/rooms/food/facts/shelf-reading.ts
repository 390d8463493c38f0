/** When the hot or cold shelf of made food is read next. */

import { practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { type NextReading, nextReading } from '#lib/safety/holding.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Null where no reading falls due, since it isn't known to be held as it should. */
export const shelfNext = (state: RunningState): NextReading | null => {
  const goodAt = state.shelf?.goodAt ?? null
  return goodAt === null ? null : nextReading(goodAt, state.rushes, practiceOf(state.station))
}
