/** Changes of batches and of what stands on the line or behind it. */
import { backupsInStep } from '#lib/service/backups-in-step.ts'
import type { BatchState, HeldStock } from '#lib/service/food-state.ts'
import { componentIn, type StockKind, withStock } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** @throws where there is no such batch. */
export const withBatch = (
  state: RunningState,
  id: string,
  change: (batch: BatchState) => BatchState,
): RunningState => {
  const batch = state.batches[id]
  if (!batch) throw new Error(`there is no batch ${id}`)
  return { ...state, batches: { ...state.batches, [id]: change(batch) } }
}

/** The newest told moment of a batch, this one too. */
export const newest = (batch: BatchState, at: number): number => Math.max(batch.newestAt, at)

/** A change of food on the line or behind it, with the readiness of back-up pans in step. */
export const withFood = (
  state: RunningState,
  what: StockKind,
  id: string,
  change: (stock: HeldStock) => HeldStock,
): RunningState => {
  const next = withStock(state, what, id, change)
  const component = componentIn(state.station, id)
  return what === 'backup' && component !== undefined ? backupsInStep(next, [component]) : next
}
