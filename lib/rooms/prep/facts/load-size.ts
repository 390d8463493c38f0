import { type CorrectedYield, correctedPortions } from '#lib/recipes/measured-yield.ts'
import { pansOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What own batches made of their cards, by component. */
export type Yields = Readonly<Record<string, CorrectedYield>>

/**
 * Portions of one load: as it is made again, corrected by what own batches really made, or as its pan
 * is usually loaded.
 */
export const loadSize = (
  station: StationDocument,
  { id, remake }: Component,
  yields: Yields = {},
): number =>
  (remake && correctedPortions(remake.portionsPerLoad, yields[id])) ??
  pansOf(station).find(({ component }) => component === id)?.usualPortions ??
  1
