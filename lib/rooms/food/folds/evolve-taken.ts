/** Folds food of the larder that came into a service. */
import { mixKey } from '#lib/rooms/care/facts/mixing.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { FoodTaken } from '#lib/service/events/taken-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { beforeId, relabelled, withBefore } from '#lib/station/relabelled.ts'

/** Products of before that are in it count beside the ones of today, as they did where it was made. */
const withMixed = (state: RunningState, { batch, food }: FoodTaken): RunningState => {
  let { station } = state
  const mixing = { ...state.mixing }
  for (const { ingredient, label } of food.before) {
    const known = mixing[ingredient] ?? { pans: [], before: [] }
    const id = beforeId(ingredient, known.before.length + 1)
    const pans = [...new Set([...known.pans, mixKey({ what: 'batch', id: batch })])]
    station = relabelled(withBefore(station, ingredient, id), id, label)
    mixing[ingredient] = { pans, before: [...known.before, id] }
  }
  return { ...state, station, mixing }
}

const batchOf = ({ lot, amount, food }: FoodTaken, at: number): BatchState => {
  const finishedAt = food.finishedAt ?? at
  const readings = [...food.cooking, ...food.cooling, ...food.readings]
  return {
    component: food.component,
    loads: 1,
    startedAt: food.startedAt ?? finishedAt,
    finishedAt,
    amount,
    loadsDone: 1,
    loaded: 0,
    cooking: food.cooking,
    cooked: food.cooking.length > 0,
    cooling: food.cooling,
    ...(food.presentUntil === null ? {} : { presentUntil: food.presentUntil }),
    cooledAgain: food.cooledAgain || food.reheated,
    reheat: null,
    clock: null,
    dateMark: food.dateMark,
    readings: food.readings,
    ...(food.soiledBy.length === 0 ? {} : { probedWith: food.soiledBy, soiledBy: food.soiledBy }),
    lot,
    ...(food.stoodOpen ? { stoodOpen: true as const } : {}),
    toldAt: at,
    offSale: null,
    thrownOutAt: null,
    newestAt: Math.max(finishedAt, ...readings.map((one) => one.at)),
  }
}

/** @throws where there is such a batch already */
export const taken = (before: RunningState, event: FoodTaken & Stamp): RunningState => {
  if (before.batches[event.batch]) throw new Error(`there is a batch ${event.batch} already`)
  const state = withMixed(before, event)
  return {
    ...state,
    nextBatch: state.nextBatch + 1,
    batches: { ...state.batches, [event.batch]: batchOf(event, event.at) },
  }
}
