import { Temporal } from 'temporal-polyfill'

/**
 * The instant at which the next civil day starts in a time zone, epoch milliseconds.
 * @throws RangeError for an unknown time zone.
 */
export const startOfNextDay = (epochMs: number, timeZone: string): number =>
  Temporal.Instant.fromEpochMilliseconds(epochMs)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
    .add({ days: 1 })
    .toZonedDateTime(timeZone).epochMilliseconds

/**
 * The civil date of an instant in a time zone, as 2026-11-25; screens tell time in fractions of a
 * millisecond. @throws RangeError for an unknown time zone.
 */
export const civilDate = (epochMs: number, timeZone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(Math.floor(epochMs))
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
    .toString()

/** The civil day before one. @throws RangeError for what is none */
export const dayBefore = (date: string): string =>
  Temporal.PlainDate.from(date).subtract({ days: 1 }).toString()

/** Civil days from one date to another, below 0 where it is earlier. @throws RangeError for what is none */
export const daysBetween = (from: string, to: string): number =>
  Temporal.PlainDate.from(from).until(to, { largestUnit: 'day' }).days

/**
 * The instant at which it is 'HH:MM' on a civil date in a time zone, epoch milliseconds; of a time that
 * comes twice as clocks are set back the earlier. Null for one that is skipped as they are set forward.
 * @throws RangeError for what is no date or time of day, and for an unknown time zone.
 */
export const instantOn = (date: string, time: string, timeZone: string): number | null => {
  const plainTime = Temporal.PlainTime.from(time)
  const zoned = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone, plainTime })
  return zoned.toPlainTime().equals(plainTime) ? zoned.epochMilliseconds : null
}

/** Minute of the civil day of an instant in a time zone, with its fraction: 0 to under 1,440. */
export const minuteOfDay = (epochMs: number, timeZone: string): number => {
  const { hour, minute, second } =
    Temporal.Instant.fromEpochMilliseconds(epochMs).toZonedDateTimeISO(timeZone)
  return hour * 60 + minute + second / 60
}

/** A time of day that lies so many hours ahead is taken as tomorrow's; any farther as past. */
const MOST_AHEAD_MS = 12 * 3_600_000

/**
 * The next instant after `epochMs` at which it is 'HH:MM' in a time zone, today or past midnight.
 * Null where that is more than 12 hours ahead: then it is past, and somebody's slip.
 * @throws RangeError for what is no time of day, and for an unknown time zone.
 */
export const nextTimeOfDay = (epochMs: number, time: string, timeZone: string): number | null => {
  const date = Temporal.Instant.fromEpochMilliseconds(epochMs)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
  const at = Temporal.PlainTime.from(time)
  for (const days of [0, 1]) {
    const next = date.add({ days }).toZonedDateTime({ timeZone, plainTime: at }).epochMilliseconds
    if (next > epochMs) return next - epochMs <= MOST_AHEAD_MS ? next : null
  }
  return null
}

/**
 * The instant at which it is 'HH:MM' on the civil day of another, in a time zone.
 * @throws RangeError for what is no time of day, and for an unknown time zone.
 */
export const timeOnDayOf = (epochMs: number, time: string, timeZone: string): number =>
  Temporal.Instant.fromEpochMilliseconds(epochMs)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
    .toZonedDateTime({ timeZone, plainTime: Temporal.PlainTime.from(time) }).epochMilliseconds
