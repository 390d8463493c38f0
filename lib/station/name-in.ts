import { findComponent, findItem, findPan } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What an id is called on the screens: a component, an item, or the component that a pan holds. */
export const nameIn =
  (station: StationDocument | null) =>
  (id: string): string => {
    if (!station) return id
    const named = findComponent(station, id) ?? findItem(station, id)
    const held = findComponent(station, findPan(station, id)?.component ?? '')
    return named?.name ?? held?.name ?? id
  }

/** Whether what an id is called takes a verb of many, as the station document says of it. */
export const isPluralIn =
  (station: StationDocument | null) =>
  (id: string): boolean =>
    station !== null &&
    (findComponent(station, id) ?? findComponent(station, findPan(station, id)?.component ?? ''))
      ?.plural === true
