/** Folds batches, readings, clocks, and what isn't sold or is thrown out. */

import { backupsInStep } from '#lib/service/backups-in-step.ts'
import { lastReadAt } from '#lib/service/batch-read.ts'
import type { Stamp } from '#lib/service/event.ts'
import { batchEvent } from '#lib/service/evolve-batch.ts'
import { clockStarted, madeBound } from '#lib/service/evolve-clocks.ts'
import { signedOff, toBeThrownOut } from '#lib/service/evolve-thrown-out.ts'
import type { FoodEvent, OffSaleResolved, TemperatureRead } from '#lib/service/food-event.ts'
import { newest, withBatch, withFood } from '#lib/service/food-folding.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { componentIn, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import { releasedFrom } from '#lib/service/pan-hold.ts'
import type { RunningState } from '#lib/service/state.ts'

const inStep = (state: RunningState, what: string, id: string): RunningState => {
  const component = what === 'backup' ? componentIn(state.station, id) : undefined
  return component === undefined ? state : backupsInStep(state, [component])
}

const wasRead = (
  state: RunningState,
  { what, id, reading, lifts }: TemperatureRead,
): RunningState => {
  if (what === 'batch')
    return withBatch(state, id, (batch) => ({
      ...batch,
      readings: [...batch.readings, reading],
      offSale: lifts === true ? null : batch.offSale,
      newestAt: newest(batch, reading.at),
    }))
  return withFood(state, what, id, (stock) => ({
    ...stock,
    readings: [...stock.readings, reading],
    offSale: lifts === true ? null : stock.offSale,
  }))
}

const offSale = (
  state: RunningState,
  event: { readonly what: 'pan' | 'backup' | 'batch'; readonly id: string },
  change: OffSale | null,
): RunningState =>
  event.what === 'batch'
    ? withBatch(state, event.id, (batch) => ({ ...batch, offSale: change }))
    : withFood(state, event.what, event.id, (stock) => ({ ...stock, offSale: change }))

/** What is held for a pan goes on, and what was made of it since it was last good is bound. */
const foundGood = (before: RunningState, event: OffSaleResolved): RunningState => {
  const { what, id, way, madeUntil } = event
  // A batch may be called as a pan is.
  if (way === 'discard' || what === 'batch') return before
  const state = releasedFrom(before, id, madeUntil)
  const since = stockOf(before, what, id)?.offSale?.lastGoodAt ?? null
  return madeUntil === undefined || since === null
    ? state
    : madeBound(state, { what, id }, { since, until: madeUntil })
}

const resolved = (before: RunningState, event: OffSaleResolved & Stamp): RunningState => {
  const { what, id, way, reading, clock } = event
  const good = foundGood(before, event)
  const state = offSale(good, event, null)
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
  if (what === 'batch') {
    const isOfCooling = before.batches[id]?.offSale?.why === 'cooling-missed'
    const readAgain = reading ? [reading] : []
    return withBatch(state, id, (batch) => ({
      ...batch,
      ...(isOfCooling
        ? { cooledAgain: true, cooling: readAgain }
        : { clock: clock ?? batch.clock, readings: readAgain }),
      toldAt: event.at,
      newestAt: newest(batch, reading?.at ?? event.at),
    }))
  }
  return withFood(state, what, id, (stock) => ({
    ...stock,
    food: stock.food && clock !== null ? { ...stock.food, heldBy: 'time', clock } : stock.food,
    since: reading?.at ?? event.at,
    readings: reading ? [reading] : [],
  }))
}

/** Topping up is folded with the pans, and what is read of the shelf with the shelf. */
type OfFood = Exclude<
  FoodEvent,
  { readonly type: 'panToppedUp' | 'shelfRead' | 'shelfReadingMissed' | 'shelfResolved' }
>

/** Folds what happened to food. @throws where there is no such pan or batch. */
export const evolveFood = (state: RunningState, event: OfFood & Stamp): RunningState => {
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
        toldAt: event.at,
        newestAt: newest(batch, event.reading.at),
      }))
    case 'coolingMissed':
      return withBatch(state, event.batch, (batch) => ({
        ...batch,
        offSale: { why: 'cooling-missed', since: event.at, lastGoodAt: null },
      }))
    case 'timeClockStarted':
      return clockStarted(state, event)
    case 'temperatureRead':
      return wasRead(state, event)
    case 'readingMissed': {
      const { what, id } = event
      const batch = what === 'batch' ? state.batches[id] : undefined
      const stock = what === 'batch' ? undefined : stockOf(state, what, id)
      return offSale(state, event, {
        why: (batch ?? stock?.food)?.clock ? 'monitoring-missed' : 'reading-missed',
        since: event.at,
        lastGoodAt: batch ? lastReadAt(state.station, batch) : (stock?.readings.at(-1)?.at ?? null),
      })
    }
    case 'takenOffSale': {
      const { why, lastGoodAt } = event
      return offSale(state, event, { why, since: event.at, lastGoodAt })
    }
    case 'offSaleResolved':
      return resolved(state, event)
    case 'throwOutPassed':
      return toBeThrownOut(state, event)
    case 'discardSignedOff':
      return signedOff(state, event)
    case 'handedOverFound': {
      const { what, id, because, since, builds } = event
      const entry = { what, id, because, since, builds }
      return { ...state, toTell: { ...state.toTell, [throwOutKey(what, id)]: entry } }
    }
    case 'handedOverAnswered': {
      const { [throwOutKey(event.what, event.id)]: _, ...toTell } = state.toTell
      return { ...state, toTell }
    }
  }
}
