/** How long a device's proof and a code last. Times are epoch milliseconds of a clock that never falls. */

const HOUR_MS = 3_600_000

/** Since it was last used. */
export const UNUSED_MS = 24 * HOUR_MS

/** In all, however often it is used. */
export const WHOLE_MS = 30 * 24 * HOUR_MS

/** Of a code that lets one device join. */
export const CODE_MS = 600_000

/** Of a device that ran out or was removed: what it is told is told so long, then it is a stranger. */
export const REMEMBERED_MS = 30 * 24 * HOUR_MS

export interface Proved {
  readonly joinedAt: number
  /** When it was last used. */
  readonly seenAt: number
}

/** When a device has to join again, unless it is used before. */
export const lastsUntil = ({ joinedAt, seenAt }: Proved): number =>
  Math.min(seenAt + UNUSED_MS, joinedAt + WHOLE_MS)

/** A time before it was last used is none at which it could be asked for. */
export const hasRunOut = (proved: Proved, now: number): boolean =>
  now >= lastsUntil(proved) || now < proved.joinedAt

export interface Floor {
  /** The greatest time that was ever seen. */
  readonly at: number
  /** What the monotonic clock showed then, milliseconds. */
  readonly monotonic: number
}

/**
 * The time by which proofs age: the wall clock where that is ahead, else what has passed since the
 * greatest time that was ever seen, so that a clock that is set back stretches nothing.
 */
export const ageingNow = (floor: Floor, wall: number, monotonic: number): number =>
  Math.max(wall, floor.at + Math.max(0, monotonic - floor.monotonic))
