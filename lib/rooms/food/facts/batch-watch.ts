/** How a batch that waits to be loaded is kept, and when it is read. */

import { coolingOf, isCookedHere, practiceFor, TELLING_MS } from '#lib/rooms/food/facts/food-now.ts'
import { type HoldingState, waitingState } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { nextMonitoring } from '#lib/safety/time-control.ts'
import { leftOfBatch, loadsToCome } from '#lib/service/batch-loads.ts'
import { lastReadAt } from '#lib/service/batch-read.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt, isReadSinceJump } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** By what a batch is kept; null where it is by neither: on a clock, cooling, not cooked, or dry. */
export const batchHeldBy = (
  station: StationDocument,
  batch: BatchState,
  now: number,
): 'hot' | 'cold' | null => {
  const component = findComponent(station, batch.component)
  if (!component || component.held === 'dry') return null
  if (batch.clock || batch.thrownOutAt !== null) return null
  if (batch.reheat?.ok) return 'hot'
  const cooling = coolingOf(station, batch, now)
  if (cooling) return cooling.state === 'cooled' ? 'cold' : null
  if (!isCookedHere(component)) return component.held
  // Its finished loads were cooked through, whatever is read of the next one.
  return batch.cooked || (batch.loadsDone > 0 && loadsToCome(batch) > 0) ? 'hot' : null
}

/**
 * From when on a batch that waits is read. Hot food since it was last read, told or not. Cold food may
 * have come out of the cold room, which is read otherwise: since it is known here.
 */
export const watchedSince = (
  station: StationDocument,
  batch: BatchState,
  heldBy: 'hot' | 'cold',
): number => {
  const readAt = lastReadAt(station, batch) ?? batch.finishedAt ?? batch.startedAt
  return heldBy === 'hot' ? readAt : Math.max(readAt, batch.toldAt)
}

/** Whether at least a portion of it waits to be loaded. */
const waits = (state: RunningState, batch: BatchState): boolean =>
  batch.finishedAt !== null &&
  batch.thrownOutAt === null &&
  leftOfBatch(batch) >= (state.portions[batch.component]?.amount ?? 1)

/**
 * What is known of a hot or cold batch that waits to be loaded; null where none does.
 * @param more readings beside those that are recorded
 */
export const waitingOf = (
  state: RunningState,
  id: string,
  now: number,
  more: readonly Reading[] = [],
): HoldingState | null => {
  const batch = state.batches[id]
  if (!batch || !waits(state, batch)) return null
  const heldBy = batchHeldBy(state.station, batch, now)
  if (heldBy === null) return null
  const roast = findComponent(state.station, batch.component)?.food.roast === true
  const since = watchedSince(state.station, { ...batch, readings: [] }, heldBy)
  const readings = [...batch.readings, ...more]
  return waitingState(
    { heldBy, roast, since, readings },
    state.rushes,
    now,
    limitsOf(state.station),
    practiceFor(state, heldBy, Math.max(since, readings.at(-1)?.at ?? 0)),
  )
}

/**
 * Whether a jump of the clock leaves it open how long a hot or cold batch has waited: it is read again
 * before it is loaded, or the jump is confirmed.
 */
const isBatchInDoubt = (state: RunningState, id: string, now: number): boolean => {
  const batch = state.clockJump === null ? undefined : state.batches[id]
  return (
    batch !== undefined &&
    batchHeldBy(state.station, batch, now) !== null &&
    !isReadSinceJump(state, 'batch', id)
  )
}

/** Why nothing of a batch is loaded, whatever is read of it as it is; null where nothing bars it. */
export const batchBarred = (
  state: RunningState,
  id: string | undefined,
  now: number,
): LoadProblem | null => {
  if (id === undefined) return null
  if (boundAt(state, 'batch', id) !== undefined) return { code: 'thrown-out' }
  return isBatchInDoubt(state, id, now) ? { code: 'clock-unsure' } : null
}

const dueAtOf = (state: RunningState, batch: BatchState, id: string, now: number) => {
  if (batch.clock) return waits(state, batch) ? nextMonitoring(batch.clock, batch.readings) : null
  const waiting = waitingOf(state, id, now)
  if (!waiting || waiting.state === 'out') return null
  return waiting.state === 'missed' ? waiting.since : waiting.next.dueAt
}

/**
 * From when on the reading of a batch that waits is missed; null where none is asked for. One that was
 * due before somebody told of the batch may still be told, for a while.
 */
export const batchReadBy = (state: RunningState, id: string, now: number): number | null => {
  const batch = state.batches[id]
  const dueAt = batch ? dueAtOf(state, batch, id, now) : null
  if (!batch || dueAt === null) return null
  return dueAt >= batch.toldAt ? dueAt : batch.toldAt + TELLING_MS
}
