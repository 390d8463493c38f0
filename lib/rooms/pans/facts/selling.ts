/** What may be sold in an order that is sent now: what ends before that is made isn't left to sell. */

import { waitNow } from '#lib/rooms/pans/facts/wait-now.ts'
import { mayTake } from '#lib/safety/time-control.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { allStock, keyOf, type StockKind, usableIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** A service as what is made by some moment sees its pans. */
export interface Selling extends RunningState {
  /** When food ends that is past its time or date by then, epoch milliseconds, by `keyOf`. */
  readonly ending?: Readonly<Record<string, number>>
}

const sameKeys = (one: object, other: object): boolean => {
  const keys = Object.keys(one)
  return keys.length === Object.keys(other).length && keys.every((key) => Object.hasOwn(other, key))
}

/** A screen asks many times, and what it worked out of the same is to be found again. */
const newest = new WeakMap<RunningState, Selling & Required<Pick<Selling, 'ending'>>>()

/** The state itself where all food lasts, and the same object for the same food. Epoch milliseconds. */
export const sellingUntil = (state: RunningState, now: number, finishedAt: number): Selling => {
  const ending: Record<string, number> = {}
  for (const { what, id, stock } of allStock(state)) {
    const until = stock.amount > 0 ? lastsUntil(state, stock) : null
    if (until !== null && !mayTake(until, now, finishedAt)) ending[keyOf(what, id)] = until
  }
  if (Object.keys(ending).length === 0) return state
  const known = newest.get(state)
  if (known && sameKeys(known.ending, ending)) return known
  const selling = { ...state, ending }
  newest.set(state, selling)
  return selling
}

/** How long an order of so many builds may take at the latest, milliseconds. */
const latest = (state: RunningState, builds: number): number =>
  (waitNow(state, builds)?.late ?? 0) * 1000

/** As an order of so many builds finds the pans that is sent now; `now` is the server's time. */
export const sellingNow = (state: RunningState, builds: number, now: number): Selling =>
  sellingUntil(state, now, now + latest(state, builds))

/** In how many milliseconds more food ends too early for such an order; null where none will. */
export const endsIn = (state: RunningState, builds: number, now: number): number | null => {
  const finishedAt = now + latest(state, builds)
  let first: number | null = null
  for (const { stock } of allStock(state)) {
    const until = stock.amount > 0 ? lastsUntil(state, stock) : null
    if (until === null || until <= finishedAt) continue
    first = Math.min(first ?? until, until)
  }
  return first === null ? null : first - finishedAt
}

export interface Lasting {
  /** What may be taken from some places and lasts, in the component's unit. */
  readonly amount: number
  /** What may be taken from them and doesn't. */
  readonly ending: number
  /** When the first of that ends, epoch milliseconds; null where all lasts. */
  readonly endsAt: number | null
}

export const lastingIn = (state: Selling, what: StockKind, places: readonly string[]): Lasting => {
  let amount = 0
  let ending = 0
  let endsAt: number | null = null
  for (const id of places) {
    const usable = usableIn(state, what, id)
    const until = usable > 0 ? state.ending?.[keyOf(what, id)] : undefined
    if (until === undefined) {
      amount += usable
    } else {
      ending += usable
      endsAt = Math.min(endsAt ?? until, until)
    }
  }
  return { amount, ending, endsAt }
}
