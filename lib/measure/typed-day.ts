/** A date as it is read off a pack and typed in figures. */
import { Temporal } from 'temporal-polyfill'
import { daysBetween } from '#lib/measure/civil.ts'

/** Which comes first: month or day. */
export type DayOrder = 'month-first' | 'day-first'

export const dayOrderOf = (locale: string): DayOrder =>
  locale === 'en-US' ? 'month-first' : 'day-first'

export type TypedDay =
  | { readonly is: 'day'; readonly date: string }
  /** Too few figures so far. */
  | { readonly is: 'begun' }
  /** Without a year it could be of several. */
  | { readonly is: 'needs-year' }
  | { readonly is: 'no-date' }

/** Figures of a date with its year: 12 05 26. */
export const MOST_DAY_FIGURES = 6
const WITHOUT_YEAR = 4

/** Farther off than this, a date without a year isn't guessed. */
const NEAR_DAYS = 60

const dateOf = (year: number, month: number, day: number): string | null => {
  try {
    return Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' }).toString()
  } catch {
    return null
  }
}

/**
 * The civil date that figures name, four of them or six with the year of this century. Of four, only a
 * date within 60 days of today counts: an old pack's is never read as one of next year.
 *
 * @param today civil date
 */
export const typedDay = (figures: string, today: string, order: DayOrder): TypedDay => {
  if (!/^\d*$/.test(figures)) return { is: 'no-date' }
  if (figures.length !== WITHOUT_YEAR && figures.length !== MOST_DAY_FIGURES)
    return { is: figures.length > MOST_DAY_FIGURES ? 'no-date' : 'begun' }
  const [first, second] = [Number(figures.slice(0, 2)), Number(figures.slice(2, 4))]
  const [month, day] = order === 'month-first' ? [first, second] : [second, first]
  if (figures.length === MOST_DAY_FIGURES) {
    const date = dateOf(2000 + Number(figures.slice(4)), month, day)
    return date === null ? { is: 'no-date' } : { is: 'day', date }
  }
  const year = Number(today.slice(0, 4))
  const dates = [year - 1, year, year + 1].flatMap((one) => dateOf(one, month, day) ?? [])
  // The 29th of February is a date in some year, perhaps in none of these.
  if (dates.length === 0) return { is: dateOf(2000, month, day) ? 'needs-year' : 'no-date' }
  const near = dates.find((date) => Math.abs(daysBetween(today, date)) <= NEAR_DAYS)
  return near === undefined ? { is: 'needs-year' } : { is: 'day', date: near }
}

/** What stands on the display after a key of the pad; figures only. */
export const typedFigures = (figures: string, key: string): string => {
  if (key === 'back') return figures.slice(0, -1)
  return /^\d$/.test(key) && figures.length < MOST_DAY_FIGURES ? figures + key : figures
}
