/** What a guest wanted, couldn't have, and no build will say: one tap counts it as demand. */
import type { Blocked, Settled } from '#lib/rooms/orders/facts/draft.ts'
import { type NotFree, type Offer, standingOf } from '#lib/rooms/orders/facts/offer.ts'

const isGone = (standing: NotFree): boolean =>
  standing.kind === 'gone'
    ? standing.notLoaded !== true
    : standing.kind === 'kept' || standing.kind === 'not-selling'

/** Whether an item can't be had because something ran out, is kept for others, or isn't sold. */
export const isItemWanted = (blocked: Blocked | null): boolean =>
  blocked !== null && isGone(blocked.standing)

/**
 * Whether a pan's tap counts: there is none of it for this guest, and the build that will be sent
 * doesn't say so itself.
 */
export const isPanWanted = (offer: Offer, settled: Settled | null, component: string): boolean => {
  const standing = standingOf(offer, component)
  if (standing.kind === 'free' || !isGone(standing)) return false
  if (!settled || settled.blocked) return true
  return !settled.parts.some((one) => one.part.component === component && one.because === 'gone')
}
