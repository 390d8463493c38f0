/** What past days teach of a menu's builds, each thing of what was learned before it. */
import { afterGone, doingWithout, doWithoutAt } from '#lib/estimate/par/going-without.ts'
import { itemWeights } from '#lib/estimate/par/item-weights.ts'
import { type MenuMix, tastes } from '#lib/estimate/par/menu-mix.ts'
import { type PastDay, stretchesOf } from '#lib/estimate/par/past-day.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export const menuMix = (
  station: Pick<StationDocument, 'items' | 'components'>,
  past: readonly PastDay[],
): MenuMix => {
  const own = tastes(station, past)
  const without = doingWithout(afterGone(station, past, own.parts))
  const serving = doWithoutAt(own.parts, without)
  const days = past.map((day) => stretchesOf(station, day, serving))
  return { ...own, without, ...itemWeights(station, days) }
}
