/** Whether the days of food are asked, and how: without a calendar, which is fetched with its fields. */

import { needsBatch, needsReading } from '#lib/rooms/food/facts/food-now.ts'
import type { PutSource } from '#lib/rooms/pans/views/put-sources.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What is bought in is opened; what is made here is made. */
export const firstDayIs = (station: StationDocument, component: string): FirstDayIs =>
  needsBatch(componentOf(station, component)) ? 'made' : 'opened'

/** Whether it is said to be straight from the pack: all of no batch that is held hot or cold. */
export const isFromPack = (source: PutSource | null, heldBy: HeldBy): boolean =>
  source?.kind === 'plain' && needsReading(heldBy)

/**
 * Whether the days of what goes in are asked: cold food straight from the pack, or of a batch that has no mark
 * yet. `heldBy`: how it will be held.
 */
export const asksDates = (source: PutSource | null, heldBy: string): boolean =>
  heldBy === 'cold' &&
  (source?.kind === 'plain' || (source?.kind === 'batch' && source.useBy === null))

/** Whether day 1 is the day on which a pack was opened, or something was made. */
export type FirstDayIs = 'opened' | 'made'
