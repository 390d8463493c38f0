import { findComponent, findItem, findPan } from '#lib/menu/find.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'

/** What an id is called on the screens: a component, an item, or the component that a pan holds. */
export const nameIn =
  (station: StationDocument | null) =>
  (id: string): string => {
    if (!station) return id
    const named = findComponent(station, id) ?? findItem(station, id)
    const held = findComponent(station, findPan(station, id)?.component ?? '')
    return named?.name ?? held?.name ?? id
  }
