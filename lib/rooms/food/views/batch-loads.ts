/** Each load of a batch by itself, in the order in which they are made. */

import { isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export type LoadStage = 'finished' | 'cooked' | 'waits'

/**
 * One entry for each load: what is finished, then what was read to its limit, then what wasn't yet. Of
 * what isn't cooked here nothing is read before it is finished. Empty where there is no such batch.
 */
export const loadsOf = (state: RunningState, id: string): readonly LoadStage[] => {
  const batch = state.batches[id]
  const component = findComponent(state.station, batch?.component ?? '')
  if (!batch || !component) return []
  const read = isCookedHere(component) ? loadsRead(state.station, batch) : 0
  return Array.from({ length: batch.loads }, (_, index) =>
    index < batch.loadsDone ? 'finished' : index < batch.loadsDone + read ? 'cooked' : 'waits',
  )
}
