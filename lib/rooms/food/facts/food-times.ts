/** What the clock asks of a pan: when it is thrown out, when it is read, and why it isn't sold. */

import { batchReadBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { holdingOf, practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { throwOutMoment } from '#lib/safety/time-control.ts'
import type { HeldFood, PlaceKind } from '#lib/service/events/food-event.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import type { OffSale, ToThrowOut } from '#lib/service/food-state.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { type Placed, placeOf } from '#lib/service/place.ts'
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

/** When its next reading is missed, and whether it is asked for by now. */
const nextReading = (state: RunningState, place: Placed, now: number) => {
  const { what, id, offSale } = place
  if (what === 'batch') {
    const dueAt = offSale === null ? batchReadBy(state, id, now) : null
    const isAsked = dueAt !== null && dueAt - now <= practiceOf(state.station).askBeforeMs
    return { dueAt, isAsked }
  }
  const holding = holdingOf(state, what, id, now)
  const next = holding?.state === 'ask' || holding?.state === 'in-limits' ? holding.next : null
  return { dueAt: next?.dueAt ?? null, isAsked: holding?.state === 'ask' }
}

/** A clock is told always; a date of what stands at the line, where it ends soon. */
const throwOutShown = (state: RunningState, place: Placed, now: number): number | null => {
  const { stage, food, readings } = place
  const clock = food?.clock ?? null
  if (stage === 'empty') return null
  if (stage !== 'standing') return clock && throwOutMoment(clock, readings, limitsOf(state.station))
  const until = lastsUntil(state, place)
  return until !== null && (clock !== null || until - now <= DATE_MATTERS_MS) ? until : null
}

/** Of a pan of the line, a back-up pan or a batch; null where there is none of that id. */
export const foodTimes = (
  state: RunningState,
  what: PlaceKind,
  id: string,
  now: number,
): FoodTimes | null => {
  const place = placeOf(state, { what, id })
  if (!place) return null
  const throwOutAt = throwOutShown(state, place, now)
  const { dueAt, isAsked } = nextReading(state, place, now)
  return {
    throwOutAt,
    isSoon: throwOutAt !== null && throwOutAt - now <= THROW_OUT_SOON_MS,
    useBy: place.stage !== 'empty' && place.food ? lastUseOf(place.food) : null,
    readBy: isAsked ? dueAt : null,
    nextBy: dueAt,
    newest: place.newest,
    offSale: place.offSale,
    toThrowOut: boundAt(state, what, id) ?? null,
  }
}
