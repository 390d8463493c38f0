import { type Cooking, cookedTo, type HeatLack, thatMet } from '#lib/safety/cooking.ts'
import type { CoolingState } from '#lib/safety/cooling.ts'
import { type CivilDate, type DateStamp, pastStamp } from '#lib/safety/date-stamp.ts'
import {
  type HeldBy,
  inLimits,
  READING_PRACTICE,
  type ReadingPractice,
} from '#lib/safety/holding.ts'
import type { SafetyLimits } from '#lib/safety/limits.ts'
import { type Reading, thatCount } from '#lib/safety/readings.ts'
import type { Reheated } from '#lib/safety/reheating.ts'
import { TIME_PRACTICE, type TimeClock } from '#lib/safety/time-control.ts'

/** One making of a component, as far as its loading depends on it. Moments are epoch ms. */
export interface BatchRecord {
  readonly startedAt: number
  readonly finishedAt: number | null
  readonly cooking: Cooking
  /** How it cooled; null where it never was. */
  readonly cooling: CoolingState | null
  /** How it was reheated after cooling; null where it wasn't. */
  readonly reheat: Reheated | null
  /** Taken while it waited to be loaded. */
  readonly readings: readonly Reading[]
  readonly clock: TimeClock | null
  readonly dateMark: DateStamp | null
  /** Taken off sale and not resolved yet. */
  readonly offSale: boolean
  readonly thrownOutAt: number | null
}

export type BatchTimesProblem =
  | { readonly code: 'in-the-future'; readonly byMs: number }
  | { readonly code: 'finished-before-started'; readonly byMs: number }

/** Whether a batch's told times can be. Epoch milliseconds; null while it isn't finished. */
export const batchTimesProblem = (
  startedAt: number,
  finishedAt: number | null,
  now: number,
): BatchTimesProblem | null => {
  if (finishedAt !== null && finishedAt < startedAt)
    return { code: 'finished-before-started', byMs: startedAt - finishedAt }
  const newest = finishedAt ?? startedAt
  return newest > now ? { code: 'in-the-future', byMs: newest - now } : null
}

export type LoadProblem =
  | BatchTimesProblem
  | { readonly code: 'thrown-out' }
  | { readonly code: 'off-sale' }
  | { readonly code: 'not-finished' }
  | { readonly code: 'to-order-only' }
  | { readonly code: 'not-cooked'; readonly why: HeatLack }
  /** Of loads that are finished at once so many have no reading of their own that meets the limit. */
  | { readonly code: 'loads-unread'; readonly lacking: number }
  | { readonly code: 'not-cooled' }
  | { readonly code: 'not-reheated' }
  /** Nobody read it since then, for longer than a pan may go unread. */
  | { readonly code: 'not-watched'; readonly since: number }
  | { readonly code: 'past-throw-out'; readonly at: number }
  | { readonly code: 'past-date-mark'; readonly lastDay: CivilDate }
  | { readonly code: 'not-back-to-hot-or-cold'; readonly at: number }
  | { readonly code: 'needs-clock' }
  /** A jump of the clock leaves it open how long it has waited since it was read. */
  | { readonly code: 'clock-unsure' }
  | { readonly code: 'no-load-reading' }
  | { readonly code: 'load-out-of-limits' }

export interface LoadInto {
  readonly heldBy: HeldBy
  readonly roast: boolean
  /** Taken when it is loaded, or shortly before. */
  readonly readings: readonly Reading[]
  readonly now: number
}

const coolingProblem = (
  batch: BatchRecord,
  heldBy: HeldBy,
  isCooked: boolean,
): LoadProblem | null => {
  if (batch.cooling === null) return isCooked && heldBy === 'cold' ? { code: 'not-cooled' } : null
  if (batch.cooling.state !== 'cooled') return { code: 'not-cooled' }
  return heldBy === 'hot' && !batch.reheat?.ok ? { code: 'not-reheated' } : null
}

/** Hot food that waits between the range and the line is read as often as a pan on it. */
const watchProblem = (
  batch: BatchRecord,
  { heldBy, now }: LoadInto,
  { everyMs }: ReadingPractice,
  limits: SafetyLimits,
): LoadProblem | null => {
  if (heldBy !== 'hot') return null
  const heated = batch.reheat?.ok ? batch.reheat.at : Number.NEGATIVE_INFINITY
  const read = [...thatMet(batch.cooking, limits), ...thatCount(batch.readings)]
  const since = Math.max(heated, ...read.map(({ at }) => at))
  return now - since > everyMs ? { code: 'not-watched', since } : null
}

const timeProblem = (batch: BatchRecord, into: LoadInto): LoadProblem | null => {
  const { clock, dateMark } = batch
  if (clock && into.now >= clock.throwOutAt) return { code: 'past-throw-out', at: clock.throwOutAt }
  if (dateMark && pastStamp(dateMark, into.now))
    return { code: 'past-date-mark', lastDay: dateMark.lastDay }
  if (clock && (into.heldBy === 'hot' || into.heldBy === 'cold'))
    return { code: 'not-back-to-hot-or-cold', at: clock.throwOutAt }
  return into.heldBy === 'time' && !clock ? { code: 'needs-clock' } : null
}

const readingProblem = (
  batch: BatchRecord,
  into: LoadInto,
  limits: SafetyLimits,
): LoadProblem | null => {
  const { heldBy, now } = into
  if (heldBy !== 'hot' && heldBy !== 'cold') return null
  const since = Math.max(batch.finishedAt ?? now, now - TIME_PRACTICE.startReadingWithinMs)
  const readings = thatCount(into.readings).filter(({ at }) => at >= since && at <= now)
  if (readings.length === 0) return { code: 'no-load-reading' }
  return readings.every((one) => inLimits(heldBy, one, limits, into.roast))
    ? null
    : { code: 'load-out-of-limits' }
}

/**
 * Why a batch can't be loaded into a pan now, or null. Nothing is loaded without the reading that
 * shows what it was cooked to, past its throw-out time or date, back to heat or cold from time
 * alone, or into a hot or cold pan without a reading in its limits.
 */
export const loadProblem = (
  batch: BatchRecord,
  into: LoadInto,
  limits: SafetyLimits,
  practice: ReadingPractice = READING_PRACTICE,
): LoadProblem | null => {
  if (batch.thrownOutAt !== null) return { code: 'thrown-out' }
  if (batch.offSale) return { code: 'off-sale' }
  const times = batchTimesProblem(batch.startedAt, batch.finishedAt, into.now)
  if (times) return times
  if (batch.finishedAt === null) return { code: 'not-finished' }
  if (batch.cooking.kind === 'eggs-to-order') return { code: 'to-order-only' }
  const cooked = cookedTo(batch.cooking, limits)
  if (cooked && !cooked.met) return { code: 'not-cooked', why: cooked.why }
  return (
    timeProblem(batch, into) ??
    coolingProblem(batch, into.heldBy, cooked !== null) ??
    (cooked ? watchProblem(batch, into, practice, limits) : null) ??
    readingProblem(batch, into, limits)
  )
}

export interface InStock {
  readonly batch: string
  readonly throwOutAt: number | null
  readonly dateMark: DateStamp | null
  readonly finishedAt: number
}

const orNever = (one: number | null | undefined): number => one ?? Number.POSITIVE_INFINITY

/** Batches in the order in which they are used: what must go first, then first in, first out. */
export const firstOut = (batches: readonly InStock[]): readonly InStock[] =>
  [...batches].sort((one, other) => {
    const [a, b] = [orNever(one.throwOutAt), orNever(other.throwOutAt)]
    if (a !== b) return a - b
    const [day, otherDay] = [orNever(one.dateMark?.endsAt), orNever(other.dateMark?.endsAt)]
    if (day !== otherDay) return day - otherDay
    return one.finishedAt - other.finishedAt
  })
