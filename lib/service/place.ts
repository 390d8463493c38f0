/**
 * A place of food is one thing: a pan of the line, a back-up pan, or a batch. Here is the one way to see
 * it; `food-folding.ts` has the one way to change it, `place-now.ts` what is known of it at a moment.
 */

import type { Reading } from '#lib/safety/readings.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { lastReading } from '#lib/service/batch-read.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import type { Bound } from '#lib/service/food-limits.ts'
import type { BatchState, HeldStock, OffSale } from '#lib/service/food-state.ts'
import {
  allStock,
  boundAt,
  componentIn,
  keyOf,
  type StockKind,
  stockOf,
} from '#lib/service/held-stock.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface Placed extends Place, Bound {
  readonly component: string
  /**
   * `making`: a batch of which no load is finished; `waiting`: one that is, until it is loaded; `gone`: it
   * was thrown out. On the line and behind it food is `standing`, or the place is `empty`.
   */
  readonly stage: 'making' | 'waiting' | 'standing' | 'empty' | 'gone'
  /** What is there to be taken, in its component's unit: of a batch, what isn't loaded yet. */
  readonly amount: number
  /** What it held when it was loaded or last counted: what a count or a slip may bring back. */
  readonly full: number
  /** Since when it is there: loaded, finished or begun, epoch milliseconds. */
  readonly since: number
  /** `readings` are of it as it stands or waits; this is the last one, also as it was made. */
  readonly newest: Reading | null
  /** When the newest of it happened, as told, epoch milliseconds; null where nothing was. */
  readonly toldOf: number | null
  readonly offSale: OffSale | null
  /** Components whose scoop was in it. */
  readonly soiledBy: readonly string[]
  /** Batches that it holds, oldest first. */
  readonly batches: readonly string[]
}

export const findBatch = (state: RunningState, id: string): BatchState | undefined =>
  Object.hasOwn(state.batches, id) ? state.batches[id] : undefined

const batchStage = ({ finishedAt, thrownOutAt }: BatchState): Placed['stage'] => {
  if (thrownOutAt !== null) return 'gone'
  return finishedAt === null ? 'making' : 'waiting'
}

const ofBatch = (station: StationDocument, id: string, batch: BatchState): Placed => ({
  what: 'batch',
  id,
  component: batch.component,
  stage: batchStage(batch),
  amount: leftOfBatch(batch),
  full: leftOfBatch(batch),
  since: batch.finishedAt ?? batch.startedAt,
  food: batch,
  readings: batch.readings,
  newest: lastReading(station, batch),
  toldOf: batch.newestAt,
  offSale: batch.offSale,
  soiledBy: [],
  batches: [id],
})

const ofStock = (
  station: StationDocument,
  { what, id, stock }: { readonly what: StockKind; readonly id: string; readonly stock: HeldStock },
): Placed => {
  const newest = stock.readings.at(-1) ?? null
  return {
    what,
    id,
    component: componentIn(station, id) ?? id,
    stage: stock.amount > 0 ? 'standing' : 'empty',
    amount: stock.amount,
    full: stock.full,
    since: stock.loadedAt,
    food: stock.food,
    readings: stock.readings,
    newest,
    toldOf: newest?.at ?? null,
    offSale: stock.offSale,
    soiledBy: stock.soiledBy,
    batches: stock.batches,
  }
}

/** What is at a place; undefined where nothing is called so. */
export const placeOf = (state: RunningState, { what, id }: Place): Placed | undefined => {
  if (what === 'batch') {
    const batch = findBatch(state, id)
    return batch && ofBatch(state.station, id, batch)
  }
  const stock = stockOf(state, what, id)
  return stock && ofStock(state.station, { what, id, stock })
}

/** A place that is known to be there. @throws where nothing is called so. */
export const knownPlace = (state: RunningState, place: Place): Placed => {
  const found = placeOf(state, place)
  if (!found) throw new Error(`nothing is called ${keyOf(place.what, place.id)}`)
  return found
}

/** Every place, the line first, then what is behind it, then the batches. */
export const allPlaces = (state: RunningState): readonly Placed[] => [
  ...allStock(state).map((one) => ofStock(state.station, one)),
  ...Object.entries(state.batches).map(([id, batch]) => ofBatch(state.station, id, batch)),
]

/** The component of a place, or of a rest that was taken out of one; undefined for all else. */
export const componentAt = (state: RunningState, what: string, id: string): string | undefined => {
  if (what === 'batch') return findBatch(state, id)?.component
  return what === 'rest'
    ? boundAt(state, what, id)?.rest?.component
    : componentIn(state.station, id)
}

/** That there is no such place. */
export const noPlace = ({ what, id }: Place): Refusal => ({ code: 'unknown', what, id })
