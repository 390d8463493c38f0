/** The set-up of a house over its stores. */
import { arrived } from '#lib/carry/arrived.ts'
import { type Draft, type Row, recordsIn, rowsOf, textIn } from '#lib/editor/draft.ts'
import type { DraftLabels } from '#lib/editor/raw-document.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { createHouse } from '#server/access/house.ts'
import { demoStation } from '#server/demo-station.ts'
import { createDrafts } from '#server/drafts/drafts.ts'
import { createMenu, type Menu } from '#server/drafts/menu.ts'
import type { Publications } from '#server/drafts/publications.ts'
import { createSqliteDrafts } from '#server/drafts/sqlite.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import type { HouseContacts } from '#server/stations/house-contacts.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'
import { createRevisions } from '#server/stations/revisions.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

const SETS = [{ from: 'demo', document: arrived(demoStation, () => false) }, ...STATION_SETS]

/** What this computer is set to. */
const here = () => {
  const { timeZone, locale } = new Intl.DateTimeFormat().resolvedOptions()
  return { timeZone, locale }
}

export const openMenu = (deps: {
  readonly database: SqliteDatabase
  readonly stations: KnownStations
  readonly labels: Pick<HouseLabels, 'find' | 'labelled' | 'filled' | 'begin'>
  readonly services: Pick<StationServices, 'current'>
  readonly contacts: Pick<HouseContacts, 'published'>
  readonly publications: Publications
  /** Epoch milliseconds. */
  readonly now: () => number
}): Menu => {
  const { database, stations, services, now, publications } = deps
  const { id: house } = createHouse(database)
  const revisions = createRevisions(database, (json) =>
    deps.labels.filled(stationSchema.parse(json)),
  )

  const labels = (draft: Draft): DraftLabels => {
    const said = (ingredient: string, product: string | null, key: string) => {
      const label = deps.labels.find(ingredient, product)?.label
      return label ? [[key, label as unknown as Row] as const] : []
    }
    return Object.fromEntries(
      rowsOf(draft, 'ingredient').flatMap(({ id, row }) => [
        ...said(id, null, id),
        ...recordsIn(row, 'products').flatMap((one) => {
          const product = textIn(one, 'id')
          return said(id, product, `${id}/${product}`)
        }),
      ]),
    )
  }

  return createMenu({
    drafts: createDrafts(createSqliteDrafts(database, house)),
    publications,
    shelf: {
      stations: () => stations.all().map(({ station }) => station),
      newest: stations.find,
      at: revisions.at,
      revisions: revisions.of,
      put: stations.put,
    },
    labels,
    labelOf: (ingredient, product) => {
      const found = deps.labels.find(ingredient, product)
      return found && (found.label ?? UNREAD_LABEL)
    },
    labelled: deps.labels.labelled,
    beginLabels: deps.labels.begin,
    sets: SETS,
    isOpen: (station) => services.current(station)?.state().stage === 'open',
    told: deps.contacts.published,
    here: here(),
    now,
  })
}
