import { Temporal } from 'temporal-polyfill'
import type { CivilDate, DateStamp } from '#lib/safety/date-stamp.ts'
import type { SafetyLimits } from '#lib/safety/limits.ts'

/**
 * A last day with the instant that ends it in a time zone: its next midnight, whatever the clocks do
 * that night. Throws RangeError for no date and for an unknown zone.
 */
export const stampOf = (lastDay: CivilDate, timeZone: string): DateStamp => ({
  lastDay,
  endsAt: Temporal.PlainDate.from(lastDay).add({ days: 1 }).toZonedDateTime(timeZone)
    .epochMilliseconds,
})

const plus = (date: CivilDate, days: number): CivilDate =>
  Temporal.PlainDate.from(date).add({ days }).toString()

const daysBetween = (from: CivilDate, to: CivilDate): number =>
  Temporal.PlainDate.from(from).until(to, { largestUnit: 'day' }).days

/**
 * Days that are left from thawing on, the day of that with them, as food goes into the freezer: the day
 * of freezing isn't used, except where it is the first or the day of its last thawing (as `dateMark`).
 * Less than 1 where none is.
 * @param first day 1, where it is known and the food wasn't frozen before
 */
export const daysLeftFrozen = (
  { lastDay, thawedOn }: DateStamp,
  on: CivilDate,
  first?: CivilDate,
): number => {
  const from = thawedOn ?? first
  return daysBetween(on, lastDay) + (from === undefined || from < on ? 1 : 0)
}

const isAfter = (one: CivilDate, other: CivilDate): boolean =>
  Temporal.PlainDate.compare(one, other) > 0

export interface Freezing {
  readonly frozenOn: CivilDate
  /** null while it is frozen. */
  readonly thawedOn: CivilDate | null
}

export interface Dated {
  /** The day on which it was prepared, or its pack opened. */
  readonly preparedOn: CivilDate
  /** In order, not overlapping. */
  readonly freezings: readonly Freezing[]
  /** The maker's use-by date of an opened pack; the mark never goes past it. */
  readonly useBy: CivilDate | null
}

export type DateMark =
  | { readonly mark: 'last-day'; readonly lastDay: CivilDate }
  /** No day passes while it is frozen; so many are left from the day of thawing, with it. */
  | { readonly mark: 'frozen'; readonly daysLeft: number }
  /** It was frozen after its last day, or in no order that can be. */
  | { readonly mark: 'too-late' }
  | { readonly mark: 'wrong-order' }

/**
 * The last day on which food may be sold. The day of preparation is day 1, so 7 days end 6 days
 * after it. The day on which it goes into the freezer isn't counted (except where it was prepared or
 * thawed on that day), the day of thawing is, and days before freezing stay used. Throws RangeError for no date.
 */
export const dateMark = (food: Dated, limits: SafetyLimits): DateMark => {
  const { days } = limits.dateMark
  const lastFrom = (from: CivilDate, used: number): CivilDate => {
    const lastDay = plus(from, days - used - 1)
    return food.useBy !== null && isAfter(lastDay, food.useBy) ? food.useBy : lastDay
  }
  let from = food.preparedOn
  let used = 0
  for (const { frozenOn, thawedOn } of food.freezings) {
    if (isAfter(from, frozenOn) || (thawedOn !== null && isAfter(frozenOn, thawedOn)))
      return { mark: 'wrong-order' }
    if (isAfter(frozenOn, lastFrom(from, used))) return { mark: 'too-late' }
    used += Math.max(1, daysBetween(from, frozenOn))
    if (thawedOn === null) return { mark: 'frozen', daysLeft: days - used }
    if (used >= days) return { mark: 'too-late' }
    from = thawedOn
  }
  return { mark: 'last-day', lastDay: lastFrom(from, used) }
}
