/** What was read of a batch last, while it was known to be in limits. */

import { thatMet } from '#lib/safety/cooking.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { loadsToCome, readOfLoad } from '#lib/service/batch-loads.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What its finished loads were cooked to: what is read of the next one says nothing of them. */
const cookedReadings = (station: StationDocument, batch: BatchState): readonly Reading[] => {
  const component = findComponent(station, batch.component)
  if (!component) return []
  const { finishedAt } = batch
  const readings =
    finishedAt !== null && loadsToCome(batch) > 0
      ? batch.cooking.filter(({ at }) => at <= finishedAt)
      : batch.cooking
  const { cookedIn } = component.food
  return thatMet({ kind: foodKindOf(component), cookedIn, readings }, limitsOf(station))
}

/** Cooked to, cooled to, reheated to, or taken while it waits; null where nobody read it. */
export const lastReading = (station: StationDocument, batch: BatchState): Reading | null => {
  const { cooling, reheat, readings } = batch
  const all: readonly Reading[] = [
    ...cookedReadings(station, batch).slice(-1),
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
export const lastReadAt = (station: StationDocument, batch: BatchState): number | null =>
  lastReading(station, batch)?.at ?? null

/**
 * How many of the loads that are being made were read to meet their limit. Spots that were read at one
 * moment are of one load.
 */
export const loadsRead = (station: StationDocument, batch: BatchState): number => {
  const component = findComponent(station, batch.component)
  if (!component) return 0
  const { cookedIn } = component.food
  const cooking = { kind: foodKindOf(component), cookedIn, readings: readOfLoad(batch) }
  return new Set(thatMet(cooking, limitsOf(station)).map(({ at }) => at)).size
}
