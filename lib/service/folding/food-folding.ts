/** Changes of a place of food, whichever it is, and of a batch as it is made. */

import type { Reading } from '#lib/safety/readings.ts'
import type { TimeClock } from '#lib/safety/time-control.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import type { BatchState, HeldStock, OffSale } from '#lib/service/food-state.ts'
import { componentIn, withStock } from '#lib/service/held-stock.ts'
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

/** Its cooling is over: nobody has to stay for it. */
export const unattended = ({ presentUntil: _, ...batch }: BatchState): BatchState => batch

/** The newest told moment of a batch, this one too. */
export const newest = (batch: BatchState, at: number): number => Math.max(batch.newestAt, at)

/** What is so of a place from now on; what is left away stays. */
export interface News {
  readonly offSale?: OffSale | null
  /** All that count from now on. */
  readonly readings?: readonly Reading[]
  /** Its food is on time alone. */
  readonly clock?: TimeClock | null
  /** It is known anew since this moment, as told, epoch milliseconds. */
  readonly since?: number
}

const inBatch = (batch: BatchState, news: News, at: number): BatchState => {
  const { offSale = batch.offSale, readings = batch.readings, since } = news
  const clock = news.clock ?? null
  const moments = [since, clock?.startedAt, news.readings?.at(-1)?.at]
  return {
    ...(offSale ? unattended(batch) : batch),
    offSale,
    readings,
    clock: clock ?? batch.clock,
    toldAt: since === undefined ? batch.toldAt : at,
    newestAt: moments.reduce<number>((newest, one) => Math.max(newest, one ?? 0), batch.newestAt),
  }
}

const inStock = (stock: HeldStock, news: News): HeldStock => {
  const { offSale = stock.offSale, readings = stock.readings, since = stock.since, clock } = news
  const food = stock.food && clock ? { ...stock.food, heldBy: 'time' as const, clock } : stock.food
  return { ...stock, offSale, readings, since, food }
}

/** With the readiness of the back-up pans of what was changed in step. */
export const inStep = (state: RunningState, id: string): RunningState => {
  const component = componentIn(state.station, id)
  return component === undefined ? state : backupsInStep(state, [component])
}

/** A place with the news of it. @throws where there is no such place. */
export const withPlace = (
  state: RunningState,
  { what, id, at }: Place & { readonly at: number },
  news: News,
): RunningState => {
  if (what === 'batch') return withBatch(state, id, (batch) => inBatch(batch, news, at))
  return inStep(
    withStock(state, what, id, (stock) => inStock(stock, news)),
    id,
  )
}
