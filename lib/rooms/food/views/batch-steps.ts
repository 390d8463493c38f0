/** What can be done with a batch now, and what of that comes next. */

import { batchReadBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { isDayBefore } from '#lib/rooms/food/facts/cooling/day-before.ts'
import { coolingOf, isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { leftOfBatch, loadsToCome } from '#lib/service/batch-loads.ts'
import { loadsRead } from '#lib/service/batch-read.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export type BatchStep =
  | 'cook'
  | 'finish'
  | 'load'
  /** While it waits to be loaded. */
  | 'read'
  | 'cool'
  | 'reheat'
  | 'clock'
  | 'resolve'
  | 'throw-out'

/** In the order in which they come up. */
export const batchSteps = (
  state: RunningState,
  id: string,
  now: number = state.at,
): readonly BatchStep[] => {
  const batch = state.batches[id]
  const component = findComponent(state.station, batch?.component ?? '')
  if (!batch || !component || batch.thrownOutAt !== null) return []
  if (boundAt(state, 'batch', id) !== undefined) return ['throw-out']
  if (batch.offSale)
    return batch.offSale.why === 'reading-missed'
      ? ['read', 'resolve', 'throw-out']
      : ['resolve', 'throw-out']
  const isFinished = batch.finishedAt !== null
  const isCooked = batch.cooked || !isCookedHere(component)
  const hasFood = isFinished && leftOfBatch(batch) > 0
  const mayHold = hasFood && isCooked && component.held !== 'dry' && batch.clock === null
  const hasCooled = coolingOf(state.station, batch, now)?.state === 'cooled' && !batch.reheat?.ok
  return [
    ...(isCookedHere(component) &&
    (!batch.cooked || loadsRead(state.station, batch) < loadsToCome(batch))
      ? (['cook'] as const)
      : []),
    ...(loadsToCome(batch) > 0 ? (['finish'] as const) : []),
    // Nothing is loaded before the service is open.
    ...(hasFood && isCooked && state.stage !== 'planned' ? (['load'] as const) : []),
    ...(batchReadBy(state, id, now) === null ? [] : (['read'] as const)),
    ...(mayHold ? (['cool'] as const) : []),
    ...(mayHold && hasCooled && component.food.reheatable ? (['reheat'] as const) : []),
    // Time alone holds it for four hours: not from the day before.
    ...(mayHold && state.station.safety.timeProcedure && !isDayBefore(state, now)
      ? (['clock'] as const)
      : []),
    'throw-out',
  ]
}

/** null: it stands ready, or nothing is typed for what comes next. */
export const nextStep = (state: RunningState, id: string): BatchStep | null => {
  const steps = batchSteps(state, id)
  const batch = state.batches[id]
  const isCooling = (batch?.cooling.length ?? 0) > 0
  // One load that was read may be finished while the next still cooks.
  const mayFinish = batch?.cooked === true && loadsRead(state.station, batch) > 0
  return (
    steps.find(
      (one) =>
        (one === 'cook' && !(mayFinish && steps.includes('finish'))) ||
        one === 'finish' ||
        (one === 'cool' && isCooling),
    ) ?? null
  )
}

/**
 * What the pot's main button does: never nothing while it holds food of an open service. What must not be
 * served is read or decided on first, what was cooled for a hot pan is heated before it is loaded.
 *
 * @returns null where it waits for a service that isn't open: throwing out is never what comes next there
 */
export const mainStep = (state: RunningState, id: string, now: number): BatchStep | null => {
  const steps = batchSteps(state, id, now)
  const next = nextStep(state, id)
  if (next !== null && steps.includes(next)) return next
  const isAsked = (foodTimes(state, 'batch', id, now)?.readBy ?? null) !== null
  const held = findComponent(state.station, state.batches[id]?.component ?? '')?.held
  const order: readonly (BatchStep | null)[] = [
    state.batches[id]?.offSale?.why === 'reading-missed' ? 'read' : null,
    'resolve',
    // What was cooked ahead cools before anything else is asked of it.
    coolBy(state, id, now) === null ? null : 'cool',
    isAsked ? 'read' : null,
    held === 'hot' && !isDayBefore(state, now) ? 'reheat' : null,
    'load',
    'cook',
    'finish',
    state.stage === 'planned' && boundAt(state, 'batch', id) === undefined ? null : 'throw-out',
  ]
  return order.find((one) => one !== null && steps.includes(one)) ?? null
}
