/** How food was kept until now: what it may be said to have left when time alone begins. */
import type { ClockStart } from '#lib/safety/time-control.ts'
import { lastReadAt } from '#lib/service/batch-read.ts'
import { batchHeldBy } from '#lib/service/batch-watch.ts'
import type { StockPlace } from '#lib/service/food-event.ts'
import { stockOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Kept {
  readonly heldBy: 'hot' | 'cold' | null
  /** What it may be said to have left. */
  readonly mayLeave: readonly ClockStart['from'][]
  /** At room temperature it stands since then at the latest, epoch milliseconds. */
  readonly roomSince?: number
}

const KEPT = {
  hot: { heldBy: 'hot', mayLeave: ['hot'] },
  cold: { heldBy: 'cold', mayLeave: ['cold'] },
  /** Cut or opened, and never put into the cold as far as anybody said. */
  fresh: { heldBy: 'cold', mayLeave: ['cold', 'room'] },
  dry: { heldBy: null, mayLeave: ['room'] },
  neither: { heldBy: null, mayLeave: [] },
} as const satisfies Readonly<Record<string, Kept>>

/** How it was held until now, and so what it can have left. */
export const keptAs = (state: RunningState, { what, id }: StockPlace, now: number): Kept => {
  if (what === 'batch') {
    const batch = state.batches[id]
    const held = batch ? batchHeldBy(state.station, batch, now) : null
    if (!batch || held === null) return KEPT.neither
    if (held !== 'cold' || lastReadAt(state.station, batch) !== null) return KEPT[held]
    return { ...KEPT.fresh, roomSince: batch.finishedAt ?? batch.startedAt }
  }
  const held = stockOf(state, what, id)?.food?.heldBy
  return held === 'hot' || held === 'cold' || held === 'dry' ? KEPT[held] : KEPT.neither
}
