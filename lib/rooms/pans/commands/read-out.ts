/** What is recorded of food that was read out of its limits as it was to be put in. */

import { heldReading } from '#lib/rooms/food/facts/held-reading.ts'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { type Decision, refuse, refuseHaving } from '#lib/service/commands/decision.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { placeOf } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

interface NotIn {
  readonly refusal: Refusal
  readonly also?: readonly ServiceEvent[]
}

/** Food that doesn't go in, with what was read of where it came from. */
export const notIn = ({ refusal, also = [] }: NotIn): Decision =>
  also.length > 0 ? refuseHaving(refusal, also) : refuse(refusal)

interface Source {
  readonly from?: string | undefined
  readonly batch?: string | undefined
}

const placeFrom = ({ from, batch }: Source): Place | null => {
  if (from !== undefined) return { what: 'backup', id: from }
  return batch === undefined ? null : { what: 'batch', id: batch }
}

/** A reading out of limits is one of the back-up pan or the batch that the food was to come from. */
export const readIn = (
  state: RunningState,
  told: Source,
  heldBy: HeldBy,
  reading: Reading | null,
  now: number,
): readonly ServiceEvent[] => {
  const source = placeFrom(told)
  return source === null || reading === null || (heldBy !== 'hot' && heldBy !== 'cold')
    ? []
    : heldReading(state, { ...source, heldBy }, reading, now)
}

/**
 * Of food that went off sale for want of a reading while it was read: out of limits it is kept, so that
 * a good one after it doesn't bring that food back.
 */
export const readUnsold = (
  state: RunningState,
  told: Source,
  readingOf: (heldBy: HeldBy) => Reading | null,
  now: number,
): readonly ServiceEvent[] => {
  const source = placeFrom(told)
  const placed = source && placeOf(state, source)
  if (placed?.offSale?.why !== 'reading-missed') return []
  if (boundAt(state, placed.what, placed.id) !== undefined) return []
  const heldBy = heldByAt(state, placed, now)
  const seen = heldBy === null ? [] : readIn(state, told, heldBy, readingOf(heldBy), now)
  return seen.some((one) => one.type === 'takenOffSale' && one.why === 'out-of-limits') ? seen : []
}
