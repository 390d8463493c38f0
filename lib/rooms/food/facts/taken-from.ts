/** Whether food that was made may hold some of what stands in a pan. */

import { componentIn, type StockKind, stockOf } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'

const hasSeveral = (state: RunningState, component: string): boolean =>
  linePansOf(state.station, component).length > 1

/**
 * Whether a made build took from what stands there now: as was counted; beyond the counts out of each
 * of its component's on the line. Where several stand there nobody knows from which it came, however
 * it was counted: it came from each that was loaded by then.
 */
export const tookFrom = (
  state: RunningState,
  { took, takes, since }: Pick<Build, 'took' | 'takes' | 'since'>,
  what: StockKind,
  id: string,
): boolean => {
  const stock = stockOf(state, what, id)
  if (took.some((one) => one.pan === id && one.load === stock?.load)) return true
  const component = componentIn(state.station, id)
  if (what !== 'pan' || !stock || component === undefined) return false
  const isOpen = hasSeveral(state, component) && since >= stock.loadedAt
  const known = took
    .filter(({ pan }) => componentIn(state.station, pan) === component)
    .filter(({ pan }) => !isOpen || state.pans[pan] === undefined)
    .reduce((sum, { amount }) => sum + amount, 0)
  return known < (takes[component] ?? 0)
}
