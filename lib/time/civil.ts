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

/** The civil date of an instant in a time zone, as 2026-11-25. @throws RangeError for an unknown time zone. */
export const civilDate = (epochMs: number, timeZone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(epochMs)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
    .toString()
