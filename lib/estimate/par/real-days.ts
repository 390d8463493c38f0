/** Ten real days like the one ahead, where there are as many. */
import { type DayAhead, type PastDay, weekdayOf } from '#lib/estimate/par/past-day.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface RealDay {
  /** Civil date. */
  readonly on: string
  /** Portions that were wanted, as far as the day tells. */
  readonly portions: number
  /** It ran out: at least as many were wanted. */
  readonly atLeast: boolean
}

export interface RealDays {
  /** The fewest portions first. */
  readonly days: readonly RealDay[]
  /** All of them are of the same weekday. */
  readonly sameWeekday: boolean
}

const DAYS = 10
/** Guests expected that differ by more make another day. Common practice, no source. */
const ALIKE = 0.2

const isAlike = (day: PastDay, { expected }: DayAhead): boolean =>
  expected === null || day.expected === null
    ? expected === day.expected
    : Math.abs(day.expected - expected) <= ALIKE * Math.max(1, expected)

/**
 * The newest ten services like the one ahead, of its weekday where they are as many: about as many
 * guests expected, and the same items sold of those that take the component. Null where there are
 * fewer.
 */
export const realDays = (
  { items }: Pick<StationDocument, 'items'>,
  past: readonly PastDay[],
  ahead: DayAhead,
  onSale: readonly string[] | null,
  component: string,
): RealDays | null => {
  const taking = items
    .filter(
      ({ parts, base, heart }) =>
        heart === component ||
        parts.some((part) => part.component === component) ||
        base?.choices.includes(component),
    )
    .map(({ id }) => id)
  const alike = past.filter(
    (day) =>
      isAlike(day, ahead) &&
      taking.every((id) => (day.items[id] ?? 0) > 0 === (onSale === null || onSale.includes(id))),
  )
  const weekday = weekdayOf(ahead.on)
  const same = alike.filter(({ on }) => weekdayOf(on) === weekday)
  const sameWeekday = same.length >= DAYS
  const chosen = (sameWeekday ? same : alike).slice(-DAYS)
  if (chosen.length < DAYS) return null
  const days = chosen.map((day) => ({
    on: day.on,
    portions: Math.max(0, day.portions[component] ?? 0),
    atLeast: day.soldOut.includes(component),
  }))
  return { days: days.sort((one, other) => one.portions - other.portions), sameWeekday }
}
