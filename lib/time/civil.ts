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
