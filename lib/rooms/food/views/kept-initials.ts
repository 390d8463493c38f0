/** For how long a device says the initials of who used it last: as long as the same round goes on. */

import { MINUTE_MS } from '#lib/safety/limits.ts'

/** A pause so long ends a round: whoever comes then may be another. Common practice, no source. */
const PAUSE_MS = 15 * MINUTE_MS

/**
 * Two clocks of a device, milliseconds: one that runs on but may stand while it sleeps, and one that is
 * set by people.
 */
export interface DeviceMoment {
  readonly ran: number
  readonly wall: number
}

/** Initials that were used at a moment; null: none were. Whatever a clock makes of it, unknown is over. */
export const initialsAt = (
  used: (DeviceMoment & { readonly initials: string }) | null,
  now: DeviceMoment,
): string => {
  if (used === null) return ''
  const isSoon = (passed: number) => passed >= 0 && passed < PAUSE_MS
  return isSoon(now.ran - used.ran) && isSoon(now.wall - used.wall) ? used.initials : ''
}
