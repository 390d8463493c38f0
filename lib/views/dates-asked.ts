/** Whether the days of food are asked, and how: without a calendar, which is fetched with its fields. */
import { componentOf } from '#lib/menu/find.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import type { PutSource } from '#lib/views/put-sources.ts'
import type { FirstDayIs } from '#lib/words/dates-en.ts'

/** What is bought as one thing is opened; what several things or a recipe go into is made. */
export const firstDayIs = (station: StationDocument, component: string): FirstDayIs => {
  const { ingredients, recipes } = componentOf(station, component)
  return recipes.length === 0 && ingredients.length <= 1 ? 'opened' : 'made'
}

/**
 * Whether the days of what goes in are asked: cold food as it came, or of a batch that has no mark
 * yet. `heldBy`: how it will be held.
 */
export const asksDates = (source: PutSource | null, heldBy: string): boolean =>
  heldBy === 'cold' &&
  (source?.kind === 'plain' || (source?.kind === 'batch' && source.useBy === null))
