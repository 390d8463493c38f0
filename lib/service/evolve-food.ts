/** Folds batches, readings, clocks, and what isn't sold or is thrown out. */
import { addToAccounts } from '#lib/service/accounts.ts'
import type { Stamp } from '#lib/service/event.ts'
import { backupsInStep, toppedUp } from '#lib/service/evolve-pans.ts'
import type {
  DiscardSignedOff,
  FoodEvent,
  OffSaleResolved,
  TemperatureRead,
  TimeClockStarted,
} from '#lib/service/food-event.ts'
import type { BatchState, HeldStock, OffSale } from '#lib/service/food-state.ts'
import {
  componentIn,
  emptied,
  type StockKind,
  throwOutKey,
  withStock,
} from '#lib/service/held-stock.ts'
import { unmixedByBatch } from '#lib/service/mixing.ts'
import type { RunningState } from '#lib/service/state.ts'

const withBatch = (
  state: RunningState,
  id: string,
  change: (batch: BatchState) => BatchState,
): RunningState => {
  const batch = state.batches[id]
  if (!batch) throw new Error(`there is no batch ${id}`)
  return { ...state, batches: { ...state.batches, [id]: change(batch) } }
}

const newest = (batch: BatchState, at: number): number => Math.max(batch.newestAt, at)

/** A change of food on the line or behind it, with the readiness of back-up pans in step. */
const withFood = (
  state: RunningState,
  what: StockKind,
  id: string,
  change: (stock: HeldStock) => HeldStock,
): RunningState => {
  const next = withStock(state, what, id, change)
  const component = componentIn(state.station, id)
  return what === 'backup' && component !== undefined ? backupsInStep(next, [component]) : next
}

const inStep = (state: RunningState, what: string, id: string): RunningState => {
  const component = what === 'backup' ? componentIn(state.station, id) : undefined
  return component === undefined ? state : backupsInStep(state, [component])
}

const clockStarted = (state: RunningState, event: TimeClockStarted): RunningState => {
  const { what, id, clock, reading } = event
  if (what === 'batch')
    return withBatch(state, id, (batch) => ({
      ...batch,
      clock,
      newestAt: newest(batch, Math.max(clock.startedAt, reading.at)),
    }))
  return withFood(state, what, id, (stock) => ({
    ...stock,
    food: stock.food && { ...stock.food, heldBy: 'time', clock },
    since: reading.at,
    readings: [reading],
  }))
}

const wasRead = (state: RunningState, event: TemperatureRead): RunningState =>
  withFood(state, event.what, event.id, (stock) => ({
    ...stock,
    readings: [...stock.readings, event.reading],
    offSale: event.lifts === true ? null : stock.offSale,
  }))

const offSale = (
  state: RunningState,
  event: { readonly what: 'pan' | 'backup' | 'batch'; readonly id: string },
  change: OffSale | null,
): RunningState =>
  event.what === 'batch'
    ? withBatch(state, event.id, (batch) => ({ ...batch, offSale: change }))
    : withFood(state, event.what, event.id, (stock) => ({ ...stock, offSale: change }))

const resolved = (before: RunningState, event: OffSaleResolved & Stamp): RunningState => {
  const { what, id, way, reading, clock } = event
  const state = offSale(before, event, null)
  if (way === 'discard')
    return inStep(
      {
        ...state,
        toThrowOut: {
          ...state.toThrowOut,
          [throwOutKey(what, id)]: { what, id, because: 'out-of-limits', since: event.at },
        },
      },
      what,
      id,
    )
  if (what === 'batch')
    return withBatch(state, id, (batch) => ({
      ...batch,
      cooledAgain: true,
      cooling: reading ? [reading] : [],
      newestAt: newest(batch, reading?.at ?? event.at),
    }))
  return withFood(state, what, id, (stock) => ({
    ...stock,
    food: stock.food && clock !== null ? { ...stock.food, heldBy: 'time', clock } : stock.food,
    since: reading?.at ?? event.at,
    readings: reading ? [reading] : [],
  }))
}

const signedOff = (before: RunningState, event: DiscardSignedOff & Stamp): RunningState => {
  const { what, id, amount } = event
  const { [throwOutKey(what, id)]: _, ...toThrowOut } = before.toThrowOut
  const state = { ...before, toThrowOut }
  if (what === 'build') return state
  if (what === 'batch')
    return withBatch({ ...state, ...unmixedByBatch(state, id) }, id, (batch) => ({
      ...batch,
      thrownOutAt: event.at,
      offSale: null,
    }))
  const component = componentIn(state.station, id)
  if (component === undefined) throw new Error(`nothing is called ${id}`)
  const held = (what === 'pan' ? state.pans[id] : state.backupPans[id])?.amount ?? 0
  const accounts = addToAccounts(
    addToAccounts(state.accounts, 'wasted', { [component]: amount }),
    'corrected',
    { [component]: amount - held },
  )
  return withFood({ ...state, accounts }, what, id, emptied)
}

const batchEvent = (
  state: RunningState,
  event: Extract<FoodEvent, { readonly batch: string; readonly type: `batch${string}` }>,
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
      loaded: 0,
      cooking: [],
      cooked: false,
      cooling: [],
      cooledAgain: false,
      reheat: null,
      clock: null,
      dateMark: null,
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
          newestAt: newest(batch, event.reading.at),
        }
      case 'batchFinished': {
        const { amount, finishedAt, dateMark } = event
        return { ...batch, amount, finishedAt, dateMark, newestAt: newest(batch, finishedAt) }
      }
      case 'batchReheated': {
        const { place, startedAt, reading, ok, why } = event
        const before = batch.reheat?.startedAt === startedAt ? batch.reheat.readings : []
        return {
          ...batch,
          reheat: { place, startedAt, readings: [...before, reading], ok, why },
          newestAt: newest(batch, reading.at),
        }
      }
    }
  })
}

/** Folds what happened to food. @throws where there is no such pan or batch. */
export const evolveFood = (state: RunningState, event: FoodEvent & Stamp): RunningState => {
  switch (event.type) {
    case 'batchStarted':
    case 'batchCooked':
    case 'batchFinished':
    case 'batchReheated':
      return batchEvent(state, event)
    case 'coolingRead':
      return withBatch(state, event.batch, (batch) => ({
        ...batch,
        cooling: [...batch.cooling, event.reading],
        newestAt: newest(batch, event.reading.at),
      }))
    case 'coolingMissed':
      return withBatch(state, event.batch, (batch) => ({
        ...batch,
        offSale: { why: 'cooling-missed', since: event.at, lastGoodAt: null },
      }))
    case 'timeClockStarted':
      return clockStarted(state, event)
    case 'panToppedUp':
      return toppedUp(state, event)
    case 'temperatureRead':
      return wasRead(state, event)
    case 'readingMissed': {
      const stock = event.what === 'pan' ? state.pans[event.id] : state.backupPans[event.id]
      return offSale(state, event, {
        why: stock?.food?.clock ? 'monitoring-missed' : 'reading-missed',
        since: event.at,
        lastGoodAt: stock?.readings.at(-1)?.at ?? null,
      })
    }
    case 'takenOffSale': {
      const { why, lastGoodAt } = event
      return offSale(state, event, { why, since: event.at, lastGoodAt })
    }
    case 'offSaleResolved':
      return resolved(state, event)
    case 'throwOutPassed': {
      const { what, id, because, at } = event
      const toThrowOut = {
        ...state.toThrowOut,
        [throwOutKey(what, id)]: { what, id, because, since: at },
      }
      return inStep({ ...state, toThrowOut }, what, id)
    }
    case 'discardSignedOff':
      return signedOff(state, event)
  }
}
