/** Times of day and lengths of time, as people read them. */
const clocks = new Map<string, Intl.DateTimeFormat>()

/** "11:42 AM" in a station's time zone, from epoch milliseconds. Throws RangeError for no such zone. */
export const sayClock = (at: number, timeZone: string): string => {
  const known = clocks.get(timeZone)
  const clock =
    known ?? new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit', timeZone })
  if (!known) clocks.set(timeZone, clock)
  return clock.format(at)
}

/** A narrow space stands before it in newer data. */
const DAY_PART = /\s?[AP]M$/

/** "11:42" without AM or PM, where the hour leaves no doubt: on a pan, within one service. */
export const sayTime = (at: number, timeZone: string): string =>
  sayClock(at, timeZone).replace(DAY_PART, '')

/** "0:42", "12:05", "1:02:09": milliseconds, cut to whole seconds; below zero counts as zero. */
export const sayLength = (ms: number): string => {
  const seconds = Math.max(0, Math.floor(ms / 1000))
  const two = (count: number) => String(count).padStart(2, '0')
  const minutes = Math.floor(seconds / 60)
  return minutes < 60
    ? `${minutes}:${two(seconds % 60)}`
    : `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(seconds % 60)}`
}

/** "about 6 min" or "about 6 to 9 min": whole minutes, a range where it is one. */
export const sayAbout = ([low, high]: readonly [number, number]): string =>
  low === high ? `about ${low} min` : `about ${low} to ${high} min`
