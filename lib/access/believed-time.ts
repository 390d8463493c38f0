/**
 * Which time it is, where all that is known is a wall clock that anybody can set and how long the
 * server has run. What is erased can't be brought back, so a time counts only once two observations
 * agree on it, a day apart; a great leap, or going back, once a week of days agrees.
 */

/** One look at the clocks. */
export interface Seen {
  /** Epoch milliseconds. */
  readonly wall: number
  /** Milliseconds for which servers of this house have run in all, by the monotonic clock. */
  readonly ran: number
  /** How often they were started. */
  readonly starts: number
}

export interface BelievedTime {
  /** Epoch milliseconds: what is certain to have come. */
  readonly believed: number
  readonly last: Seen
  /** A time that differs, and for how long looks have agreed on it; null where there is none. */
  readonly other: {
    readonly wall: number
    readonly ran: number
    readonly agreedMs: number
    readonly neededMs: number
  } | null
}

export const DAY_MS = 86_400_000

/** Longer than a summer without the server: a leap beyond it is more likely a wrong clock. */
export const LEAP_MS = 100 * DAY_MS

const NEEDED_MS = DAY_MS
const NEEDED_FOR_A_LEAP_MS = 7 * DAY_MS

/** Less is what clocks do when they are corrected. */
const SET_BACK_MS = 60_000

const begins = (seen: Seen, awayMs: number): BelievedTime['other'] => ({
  wall: seen.wall,
  ran: seen.ran,
  agreedMs: 0,
  neededMs: awayMs > LEAP_MS || awayMs < 0 ? NEEDED_FOR_A_LEAP_MS : NEEDED_MS,
})

/** Before anything was observed: what is in the log already has come. */
export const firstSeen = (seen: Seen, newestKnown: number | null): BelievedTime => {
  const believed = Math.min(newestKnown ?? seen.wall, seen.wall)
  const away = seen.wall - believed
  return { believed, last: seen, other: away > 0 ? begins(seen, away) : null }
}

/**
 * After one more look. While a server runs, time goes on by the monotonic clock; how long it was off
 * is known from the wall clock alone, of which each start counts for a day at most.
 */
export const observed = ({ believed, last, other }: BelievedTime, seen: Seen): BelievedTime => {
  const ranMs = Math.max(0, seen.ran - last.ran)
  const passed = believed + ranMs
  const away = seen.wall - passed
  if (away <= 0 && away >= -DAY_MS) return { believed: passed, last: seen, other: null }
  const isSameStart = seen.starts === last.starts
  const wentMs = seen.wall - last.wall
  const isSetBack = wentMs < (isSameStart ? ranMs : 0) - SET_BACK_MS
  const isOtherSide = other !== null && Math.sign(other.wall - believed) !== Math.sign(away)
  if (other === null || isSetBack || isOtherSide || wentMs - ranMs > LEAP_MS)
    return { believed: passed, last: seen, other: begins(seen, away) }
  const agreedMs =
    other.agreedMs + (isSameStart ? ranMs : Math.max(ranMs, Math.min(wentMs, DAY_MS)))
  if (agreedMs < other.neededMs)
    return { believed: passed, last: seen, other: { ...other, agreedMs } }
  const agreedOn = Math.min(other.wall + (seen.ran - other.ran), seen.wall)
  const to = away < 0 ? seen.wall : Math.max(passed, agreedOn)
  const left = seen.wall - to
  return { believed: to, last: seen, other: left > 0 ? begins(seen, left) : null }
}

/** A service that is over. */
export interface Over {
  /** As its log says it, epoch milliseconds. */
  readonly closedAt: number
  /** What was believed when its close was seen; null where nobody was there to see. */
  readonly seenAt: number | null
}

export const FEWEST_DAYS = 1
export const MOST_DAYS = 366
export const USUAL_DAYS = 30

/** Epoch milliseconds of believed time from which the stream of a service is gone. */
export const goesAt = ({ closedAt, seenAt }: Over, time: BelievedTime, days: number): number => {
  const now = Math.max(time.believed, time.last.wall)
  // Closed by a clock that was ahead then: its own word would keep it for ever.
  const told = closedAt > now + DAY_MS ? null : closedAt
  const seen = seenAt !== null && seenAt <= time.believed + DAY_MS ? seenAt : null
  const closed = Math.max(told ?? 0, seen ?? 0) || time.believed
  return closed + days * DAY_MS
}

/** Whether it goes now. */
export const isToGo = (over: Over, time: BelievedTime, days: number): boolean =>
  time.believed >= goesAt(over, time, days)
