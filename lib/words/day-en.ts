/** Days, as people read them. */
const days = new Map<string, Intl.DateTimeFormat>()

/** "Thu, Nov 26" in a station's time zone, from epoch milliseconds. Throws RangeError for no such zone. */
export const sayDay = (at: number, timeZone: string): string => {
  const known = days.get(timeZone)
  const day =
    known ??
    new Intl.DateTimeFormat('en-US', { weekday: 'short', day: 'numeric', month: 'short', timeZone })
  if (!known) days.set(timeZone, day)
  return day.format(at)
}

/** "Thu, Nov 26" of a civil date, 2026-11-26. Throws RangeError for no date. */
export const sayDate = (date: string): string => sayDay(Date.parse(`${date}T12:00Z`), 'UTC')

/** "Thu" of a civil date: where a row begins another day. Throws RangeError for no date. */
export const sayWeekday = (date: string): string =>
  new Intl.DateTimeFormat('en-US', { weekday: 'short', timeZone: 'UTC' }).format(
    Date.parse(`${date}T12:00Z`),
  )

/** "Thursday" of a civil date of about these days. Throws RangeError for no date. */
export const sayWeekdayInFull = (date: string): string =>
  new Intl.DateTimeFormat('en-US', { weekday: 'long', timeZone: 'UTC' }).format(
    Date.parse(`${date}T12:00Z`),
  )

const OF_YEAR = { year: 'numeric', month: 'short', day: 'numeric' } as const

/** "Nov 20, 2026" of a civil date that may be of another year; throws RangeError for what is none. */
export const sayDateOfYear = (date: string): string =>
  new Intl.DateTimeFormat('en-US', { ...OF_YEAR, timeZone: 'UTC' }).format(Date.parse(date))

/** "Nov 25, 2026, 12:45 PM" in a station's time zone, from epoch milliseconds: on paper. */
export const sayMoment = (at: number, timeZone: string): string =>
  new Intl.DateTimeFormat('en-US', {
    ...OF_YEAR,
    hour: 'numeric',
    minute: '2-digit',
    timeZone,
  }).format(at)
