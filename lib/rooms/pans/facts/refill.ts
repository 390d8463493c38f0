/** What can be done about a component that is used up: the one way that is possible now. */

import { batchesInOrder, needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { backupsOf } from '#lib/rooms/pans/facts/behind.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export type Refill =
  /** A back-up pan stands ready. */
  | 'change'
  /** A finished batch stands ready, or it is loaded as it comes. */
  | 'load'
  /** It can be made again. */
  | 'start'

/** A back-up pan, else a batch that stands ready, else a batch to start; null: nothing can be done. */
export const refillOf = (state: RunningState, component: string): Refill | null => {
  const found = findComponent(state.station, component)
  const each = state.portions[component]?.amount ?? 1
  if (backupsOf(state, component, 'all').length > 0) return 'change'
  const isReady = batchesInOrder(state, component).some((id) => {
    const batch = state.batches[id]
    return batch !== undefined && leftOfBatch(batch) >= each
  })
  if (isReady) return 'load'
  if (!found) return null
  if (found.remake) return 'start'
  return needsBatch(found) ? null : 'load'
}
