/** Folds how batches are started, cooked, finished and reheated. */
import type { Stamp } from '#lib/service/events/event.ts'
import type { FoodEvent } from '#lib/service/events/food-event.ts'
import { newest, withBatch } from '#lib/service/folding/food-folding.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'

/** @throws where there is no such batch, or one already. */
export const batchEvent = (
  state: RunningState,
  event: Extract<FoodEvent, { readonly batch: string; readonly type: `batch${string}` }> & Stamp,
): RunningState => {
  if (event.type === 'batchStarted') {
    if (state.batches[event.batch]) throw new Error(`there is a batch ${event.batch} already`)
    const { component, loads, startedAt } = event
    const batch: BatchState = {
      component,
      loads,
      startedAt,
      finishedAt: null,
      amount: 0,
      loadsDone: 0,
      loaded: 0,
      cooking: [],
      cooked: false,
      cooling: [],
      cooledAgain: false,
      reheat: null,
      clock: null,
      dateMark: null,
      readings: [],
      toldAt: event.at,
      offSale: null,
      thrownOutAt: null,
      newestAt: startedAt,
    }
    return {
      ...state,
      nextBatch: state.nextBatch + 1,
      batches: { ...state.batches, [event.batch]: batch },
    }
  }
  return withBatch(state, event.batch, (batch) => {
    switch (event.type) {
      case 'batchCooked':
        return {
          ...batch,
          cooking: [...batch.cooking, event.reading],
          cooked: event.met,
          toldAt: event.at,
          newestAt: newest(batch, event.reading.at),
        }
      case 'batchFinished': {
        const { amount, finishedAt, dateMark, at } = event
        // Said again it corrects the amount, and is no word of how it is kept.
        const toldAt = batch.finishedAt === null ? at : batch.toldAt
        const newestAt = newest(batch, finishedAt)
        const loadsDone = event.loads ?? batch.loads
        const cookedFor =
          loadsDone > batch.loadsDone
            ? batch.cooking.length
            : (batch.cookedFor ?? batch.cooking.length)
        const { measured: _, firstDone: before, ...rest } = batch
        const first = before ?? batch.finishedAt ?? finishedAt
        const told = { amount, loadsDone, finishedAt, dateMark, toldAt, newestAt }
        return {
          ...rest,
          cookedFor,
          ...told,
          ...(first < finishedAt && rest.cooking.length === 0 ? { firstDone: first } : {}),
          ...(event.measured ? { measured: true } : {}),
        }
      }
      case 'batchReheated': {
        const { place, startedAt, reading, ok, why } = event
        const before = batch.reheat?.startedAt === startedAt ? batch.reheat.readings : []
        return {
          ...batch,
          reheat: { place, startedAt, readings: [...before, reading], ok, why },
          toldAt: event.at,
          newestAt: newest(batch, reading.at),
        }
      }
    }
  })
}
