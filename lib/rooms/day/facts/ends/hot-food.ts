/** All that is hot: what goes at once under one person's initials. */
import { historyOf } from '#lib/rooms/day/facts/ends/food-history.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Pans, what is behind them and batches, in line order. `now` in epoch milliseconds. */
export const hotFood = (state: RunningState, now: number): readonly Placed[] =>
  toAnswer(state).filter((place) => historyOf(state, place, null, now).heldBy === 'hot')

export interface HotSum {
  readonly places: Readonly<Record<PlaceKind, number>>
  /** Whole ones, as each place says them. */
  readonly portions: number
  /** Components, each once, in line order. */
  readonly components: readonly string[]
}

/** How much that is, as it is believed. */
export const hotSum = (state: RunningState, now: number): HotSum => {
  const hot = hotFood(state, now)
  const count = (kind: PlaceKind) => hot.filter(({ what }) => what === kind).length
  return {
    places: { pan: count('pan'), backup: count('backup'), batch: count('batch') },
    portions: hot.reduce(
      (sum, { amount, component }) =>
        sum + Math.round(amount / (state.portions[component]?.amount ?? 1)),
      0,
    ),
    components: [...new Set(hot.map(({ component }) => component))],
  }
}
