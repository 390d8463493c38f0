/** Carrying in a house over its stores. */
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { createHouse } from '#server/access/house.ts'
import { type Carrying, createCarrying } from '#server/carry/carrying.ts'
import type { CarryPorts } from '#server/carry/ports.ts'
import { createTables, type Tables } from '#server/carry/tables.ts'
import { createDrafts } from '#server/drafts/drafts.ts'
import type { Menu } from '#server/drafts/menu.ts'
import { createSqliteDrafts } from '#server/drafts/sqlite.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import type { Photos } from '#server/labels/photos.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export const openCarrying = (deps: {
  readonly database: SqliteDatabase
  readonly labels: Pick<HouseLabels, 'find' | 'begin'>
  readonly photos: Pick<Photos, 'find' | 'adopt'>
  readonly menu: Menu
  readonly stations: KnownStations
  readonly services: Pick<StationServices, 'current'>
}): { readonly carrying: Carrying; readonly tables: Tables } => {
  const { database, labels, photos, menu, stations, services } = deps
  const ports: CarryPorts = {
    menu,
    drafts: createDrafts(createSqliteDrafts(database, createHouse(database).id)),
    published: (station) => stations.find(station)?.document ?? null,
    label: (ingredient) => {
      const found = labels.find(ingredient, null)
      return found && (found.label ?? UNREAD_LABEL)
    },
    keepLabels: labels.begin,
    pictures: {
      find: (sha256) => {
        const bytes = photos.find(sha256)
        return bytes && { type: 'image/jpeg', bytes }
      },
      keep: (sha256, { bytes }) => photos.adopt(sha256, bytes),
    },
    isOpen: (station) => services.current(station)?.state().stage === 'open',
  }
  return { carrying: createCarrying(ports), tables: createTables(ports) }
}
