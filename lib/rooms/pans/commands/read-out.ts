/** What is recorded of food that was read out of its limits as it was to be put in. */

import { heldReading } from '#lib/rooms/food/facts/held-reading.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { type Decision, refuse, refuseHaving } from '#lib/service/commands/decision.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

interface NotIn {
  readonly refusal: Refusal
  readonly also?: readonly ServiceEvent[]
}

/** Food that doesn't go in, with what was read of where it came from. */
export const notIn = ({ refusal, also = [] }: NotIn): Decision =>
  also.length > 0 ? refuseHaving(refusal, also) : refuse(refusal)

/** A reading out of limits is one of the back-up pan or the batch that the food was to come from. */
export const readIn = (
  state: RunningState,
  { from, batch }: { readonly from?: string | undefined; readonly batch?: string | undefined },
  heldBy: HeldBy,
  reading: Reading | null,
  now: number,
): readonly ServiceEvent[] => {
  const source =
    from === undefined
      ? batch === undefined || state.batches[batch]?.offSale
        ? null
        : ({ what: 'batch', id: batch } as const)
      : ({ what: 'backup', id: from } as const)
  return source === null || reading === null || (heldBy !== 'hot' && heldBy !== 'cold')
    ? []
    : heldReading(state, { ...source, heldBy }, reading, now)
}
