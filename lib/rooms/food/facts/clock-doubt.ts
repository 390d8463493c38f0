/** What a jump of the clock leaves open of a component. */

import { type ClockDoubt, clockDoubt, isForSale } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'

/** What a jump of the clock leaves open of a component's food on the line; null where it does nothing. */
export const clockDoubtOf = (state: RunningState, component: string): ClockDoubt | null => {
  const doubts = linePansOf(state.station, component).flatMap(({ id }) =>
    isForSale(state, 'pan', id) ? (clockDoubt(state, 'pan', id) ?? []) : [],
  )
  return doubts.includes('unread') ? 'unread' : (doubts[0] ?? null)
}
