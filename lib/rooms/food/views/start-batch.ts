/** What a batch can be started of. */

import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/**
 * In the order of the document: what the house says how to make again, and what goes into no pan
 * without a batch of it, whether or not anybody said how long that takes.
 */
export const canStart = ({ components }: StationDocument): readonly Component[] =>
  components.filter((one) => one.remake !== null || needsBatch(one))

/** The first of them that waits for its first batch: its pans are empty and nobody makes it; null where none does. */
export const firstToStart = ({ station, pans, batches }: RunningState): string | null => {
  const made = new Set(Object.values(batches).map(({ component }) => component))
  const waits = canStart(station).find((one) => {
    const own = linePansOf(station, one.id)
    const isEmpty = own.length > 0 && own.every(({ id }) => (pans[id]?.amount ?? 0) === 0)
    return needsBatch(one) && isEmpty && !made.has(one.id)
  })
  return waits?.id ?? null
}
