/** What the clock asks of a pan: when it is thrown out, when it is read, and why it isn't sold. */

import type { Reading } from '#lib/safety/readings.ts'
import { throwOutMoment } from '#lib/safety/time-control.ts'
import { lastReading } from '#lib/service/batch-read.ts'
import { batchReadBy } from '#lib/service/batch-watch.ts'
import type { HeldFood, StockPlace } from '#lib/service/food-event.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import { holdingOf, practiceOf } from '#lib/service/food-now.ts'
import type { OffSale, ToThrowOut } from '#lib/service/food-state.ts'
import { stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** So long before it is thrown out it is told, and drawn strongly. */
export const THROW_OUT_SOON_MS = 30 * 60_000
/** A date that ends later than this is no matter of this service. */
const DATE_MATTERS_MS = 2 * 60 * 60_000

export interface FoodTimes {
  /** Epoch milliseconds; null where no clock or near date binds it. */
  readonly throwOutAt: number | null
  readonly isSoon: boolean
  /**
   * The midnight that ends the last day on which it may be used, epoch milliseconds; null where no
   * date binds it. `isDated`: by a date mark, not for want of one.
   */
  readonly useBy: { readonly endsAt: number; readonly isDated: boolean } | null
  /** It is asked for, and missed from this moment on; null where it isn't asked for yet. */
  readonly readBy: number | null
  /** When the next one is missed, asked for or not; null where none is due. */
  readonly nextBy: number | null
  readonly newest: Reading | null
  readonly offSale: OffSale | null
  readonly toThrowOut: ToThrowOut | null
}

/** The last day of food by its mark, or by the day on which it was loaded without one. */
export const lastUseOf = (food: Pick<HeldFood, 'dateMark' | 'dayEndsAt'>): FoodTimes['useBy'] => {
  const marked = food.dateMark?.endsAt ?? Number.POSITIVE_INFINITY
  const day = food.dayEndsAt ?? Number.POSITIVE_INFINITY
  const endsAt = Math.min(marked, day)
  return Number.isFinite(endsAt) ? { endsAt, isDated: marked <= day } : null
}

const batchTimes = (state: RunningState, id: string, now: number): FoodTimes | null => {
  const batch = state.batches[id]
  if (!batch) return null
  const { clock } = batch
  const throwOutAt = clock && throwOutMoment(clock, batch.readings, limitsOf(state.station))
  const nextBy = batch.offSale === null ? batchReadBy(state, id, now) : null
  const isAsked = nextBy !== null && nextBy - now <= practiceOf(state.station).askBeforeMs
  return {
    throwOutAt,
    isSoon: throwOutAt !== null && throwOutAt - now <= THROW_OUT_SOON_MS,
    useBy: lastUseOf(batch),
    readBy: isAsked ? nextBy : null,
    nextBy,
    newest: lastReading(state.station, batch),
    offSale: batch.offSale,
    toThrowOut: state.toThrowOut[throwOutKey('batch', id)] ?? null,
  }
}

/** Of a pan of the line, a back-up pan or a batch; null where there is none of that id. */
export const foodTimes = (
  state: RunningState,
  what: StockPlace['what'],
  id: string,
  now: number,
): FoodTimes | null => {
  if (what === 'batch') return batchTimes(state, id, now)
  const stock = stockOf(state, what, id)
  if (!stock) return null
  const until = stock.amount > 0 ? lastsUntil(state, stock) : null
  const isClock = stock.food?.clock !== null && stock.food?.clock !== undefined
  const matters = until !== null && (isClock || until - now <= DATE_MATTERS_MS)
  const holding = holdingOf(state, what, id, now)
  const next = holding?.state === 'ask' || holding?.state === 'in-limits' ? holding.next : null
  return {
    throwOutAt: matters ? until : null,
    isSoon: matters && until - now <= THROW_OUT_SOON_MS,
    useBy: stock.amount > 0 && stock.food ? lastUseOf(stock.food) : null,
    readBy: holding?.state === 'ask' ? holding.next.dueAt : null,
    nextBy: next?.dueAt ?? null,
    newest: stock.readings.at(-1) ?? null,
    offSale: stock.offSale,
    toThrowOut: state.toThrowOut[throwOutKey(what, id)] ?? null,
  }
}
