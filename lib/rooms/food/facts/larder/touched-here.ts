/** What touched food where it was set aside, as the station that takes it counts it. */
import type { LotFood } from '#lib/larder/lot.ts'
import { reachOf } from '#lib/needs/contact.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { findComponent } from '#lib/station/find.ts'
import { isOfBefore } from '#lib/station/relabelled.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

type TouchedLot = Pick<LotFood, 'component' | 'soiledBy' | 'touched' | 'stoodOpen'>

/** Ids of what a component is bought as, sorted; null where the station doesn't have it. */
export const boughtFor = (
  station: StationDocument,
  component: string,
): readonly string[] | null => {
  const found = findComponent(station, component)
  if (!found) return null
  const ways = [...waysTo(station, found)].flatMap((way) => way.at(-1) ?? [])
  return [...new Set(ways)].filter((id) => !isOfBefore(id)).sort()
}

/**
 * Whether the station knows all that touched a lot: by that name, with all that was in it there. Where
 * nobody said what touches what there, it is known here only as what it is: unknown.
 */
export const isTouchKnown = (station: StationDocument, lot: TouchedLot): boolean => {
  if (lot.soiledBy.some((by) => !findComponent(station, by))) return false
  if (lot.touched === null) return station.contacts === null
  return lot.touched.every(({ component, madeOf }) => {
    const here = boughtFor(station, component)
    return here !== null && madeOf.every((id) => isOfBefore(id) || here.includes(id))
  })
}

/**
 * Components whose mark a lot brings: those whose scoop or probe was in it, and those that touched it and
 * by this station's document don't. Of what never stood open only what no protected back-up clears counts
 * as touching here anyway.
 */
export const marksOf = (station: StationDocument, lot: TouchedLot): readonly string[] => {
  const reach = reachOf(station, [], [])?.get(lot.component)
  const here = (lot.stoodOpen ? reach?.line : reach?.backup) ?? []
  const isHere = (id: string) => here.some(({ component }) => component === id)
  const brought = (lot.touched ?? []).map(({ component }) => component).filter((id) => !isHere(id))
  return [...new Set([...lot.soiledBy, ...brought])].sort()
}
