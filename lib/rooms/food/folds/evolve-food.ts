/** Folds batches, readings, clocks, and what isn't sold or is thrown out. */

import { batchEvent } from '#lib/rooms/food/folds/evolve-batch.ts'
import { clockStarted, madeBound } from '#lib/rooms/food/folds/evolve-clocks.ts'
import { taken } from '#lib/rooms/food/folds/evolve-taken.ts'
import { placeOver, signedOff, toBeThrownOut } from '#lib/rooms/food/folds/evolve-thrown-out.ts'
import { meets } from '#lib/safety/limits.ts'
import type { CoolingRead } from '#lib/service/events/batch-event.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { FoodEvent, OffSaleResolved, TemperatureRead } from '#lib/service/events/food-event.ts'
import { newest, unattended, withBatch, withPlace } from '#lib/service/folding/food-folding.ts'
import { releasedFrom } from '#lib/service/folding/pan-hold.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { isOfStock, keyOf, stockOf } from '#lib/service/held-stock.ts'
import { knownPlace, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

const wasRead = (
  state: RunningState,
  event: TemperatureRead & Stamp,
  { readings }: Placed,
): RunningState =>
  withPlace(state, event, {
    readings: [...readings, event.reading],
    ...(event.lifts === true ? { offSale: null } : {}),
  })

/** What is held for a pan goes on, and what was made of it since it was last good is bound. */
const foundGood = (before: RunningState, event: OffSaleResolved): RunningState => {
  const { id, way, madeUntil } = event
  // A batch may be called as a pan is.
  if (way === 'discard' || !isOfStock(event)) return before
  const state = releasedFrom(before, id, madeUntil)
  const since = stockOf(before, event.what, id)?.offSale?.lastGoodAt ?? null
  return madeUntil === undefined || since === null
    ? state
    : madeBound(state, event, { since, until: madeUntil })
}

const staying = ({ presentUntil }: Pick<CoolingRead, 'presentUntil'>) =>
  presentUntil === undefined ? {} : { presentUntil }

const coolingRead = (state: RunningState, event: CoolingRead & Stamp): RunningState =>
  withBatch(state, event.batch, (before) => {
    const batch: BatchState = {
      ...before,
      ...staying(event),
      cooling: [...before.cooling, event.reading],
      toldAt: event.at,
      newestAt: newest(before, event.reading.at),
    }
    const isCold = meets(event.reading.temperature, limitsOf(state.station).coolingTo)
    return isCold ? unattended(batch) : batch
  })

const resolved = (
  before: RunningState,
  event: OffSaleResolved & Stamp,
  { offSale }: Placed,
): RunningState => {
  const { id, way, reading, clock, at } = event
  if (way === 'discard')
    return toBeThrownOut(withPlace(before, event, { offSale: null }), {
      ...event,
      type: 'throwOutPassed',
      because: 'out-of-limits',
    })
  const isOfCooling = offSale?.why === 'cooling-missed'
  const readings = reading ? [reading] : []
  const since = reading?.at ?? at
  const state = withPlace(foundGood(before, event), event, {
    offSale: null,
    since,
    ...(isOfCooling ? {} : { clock, readings }),
  })
  return isOfCooling
    ? withBatch(state, id, (batch) => ({
        ...batch,
        ...staying(event),
        cooledAgain: true,
        cooling: readings,
      }))
    : state
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
    case 'foodTaken':
      return taken(state, event)
    case 'coolingRead':
      return coolingRead(state, event)
    case 'coolingMissed':
      return withPlace(
        state,
        { what: 'batch', id: event.batch, at: event.at },
        { offSale: { why: 'cooling-missed', since: event.at, lastGoodAt: null } },
      )
    case 'timeClockStarted':
      return clockStarted(state, event)
    case 'temperatureRead':
      return wasRead(state, event, knownPlace(state, event))
    case 'sanitizerRead': {
      const { kind, mgPerL, water, ph, problem, at } = event
      return { ...state, sanitizer: { kind, mgPerL, water, ph, problem, at } }
    }
    case 'readingMissed': {
      const { food, newest } = knownPlace(state, event)
      return withPlace(state, event, {
        offSale: {
          why: food?.clock ? 'monitoring-missed' : 'reading-missed',
          since: event.at,
          lastGoodAt: newest?.at ?? null,
        },
      })
    }
    case 'takenOffSale': {
      const { why, lastGoodAt } = event
      return withPlace(state, event, { offSale: { why, since: event.at, lastGoodAt } })
    }
    case 'offSaleResolved':
      return resolved(state, event, knownPlace(state, event))
    case 'throwOutPassed':
      return toBeThrownOut(state, event)
    case 'discardSignedOff':
      return signedOff(state, event)
    case 'foodEnded':
      return placeOver(state, event)
    case 'handedOverFound': {
      const { what, id, because, since, builds } = event
      const entry = { what, id, because, since, builds }
      return { ...state, toTell: { ...state.toTell, [keyOf(what, id)]: entry } }
    }
    case 'handedOverAnswered': {
      const { [keyOf(event.what, event.id)]: _, ...toTell } = state.toTell
      return { ...state, toTell }
    }
  }
}
