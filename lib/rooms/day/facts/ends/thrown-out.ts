/** Food that is thrown out as the service ends, and why. */

import { endsAt } from '#lib/rooms/day/facts/ends/food-history.ts'
import type { EndWhy, HowMuch } from '#lib/safety/ends.ts'
import type { DiscardReason, DiscardSignedOff } from '#lib/service/events/food-event.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Why food that may come to no other end goes into the bin; what is only left over, where it may. */
const REASONS: Readonly<Partial<Record<EndWhy, DiscardReason>>> = {
  'out-of-limits': 'out-of-limits',
  'past-time': 'past-time',
  'past-date': 'past-date',
  'cooling-missed': 'not-cooled',
  'not-cooked': 'not-cooked',
}

const reasonAt = (state: RunningState, place: Placed, now: number): DiscardReason => {
  // That the crew doesn't eat here is no reason: whatever bars the crew beside that bars all.
  const why = endsAt(state, place, now).find(({ end }) => end === 'dry')?.why
  return (why && REASONS[why]) ?? 'left-over'
}

/** Initialled as thrown out at the end of the service, for the reason that its history gives. */
export const thrownOut = (
  state: RunningState,
  place: Placed,
  { amount, how }: { readonly amount: number; readonly how: HowMuch },
  now: number,
): DiscardSignedOff => {
  const { what, id } = place
  return { type: 'discardSignedOff', what, id, amount, reason: reasonAt(state, place, now), how }
}
