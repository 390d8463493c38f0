/** What was read of a batch last, while it was known to be in limits. */
import type { Reading } from '#lib/safety/readings.ts'
import type { BatchState } from '#lib/service/food-state.ts'

/** Cooked to, cooled to, reheated to, or taken while it waits; null where nobody read it. */
export const lastReading = (batch: BatchState): Reading | null => {
  const { cooked, cooking, cooling, reheat, readings } = batch
  const all: readonly Reading[] = [
    ...(cooked ? cooking.slice(-1) : []),
    ...cooling.slice(-1),
    ...(reheat?.ok ? reheat.readings.slice(-1) : []),
    ...readings.slice(-1),
  ]
  return all.reduce<Reading | null>(
    (newest, one) => (newest !== null && newest.at > one.at ? newest : one),
    null,
  )
}

/** Epoch milliseconds; null where nobody read it. */
export const lastReadAt = (batch: BatchState): number | null => lastReading(batch)?.at ?? null
