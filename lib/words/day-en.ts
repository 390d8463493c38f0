/** Days, as people read them. */
const days = new Map<string, Intl.DateTimeFormat>()

/** "Thu 26 Nov" in a station's time zone, from epoch milliseconds. Throws RangeError for no such zone. */
export const sayDay = (at: number, timeZone: string): string => {
  const known = days.get(timeZone)
  const day =
    known ??
    new Intl.DateTimeFormat('en-US', { weekday: 'short', day: 'numeric', month: 'short', timeZone })
  if (!known) days.set(timeZone, day)
  const parts = day.formatToParts(at)
  const part = (type: 'weekday' | 'day' | 'month') =>
    parts.find((one) => one.type === type)?.value ?? ''
  return `${part('weekday')} ${part('day')} ${part('month')}`
}

/** "Thu 26 Nov" of a civil date, 2026-11-26. Throws RangeError for no date. */
export const sayDate = (date: string): string => sayDay(Date.parse(`${date}T12:00Z`), 'UTC')
