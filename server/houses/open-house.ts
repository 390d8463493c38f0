/** A house: its stores in a folder of its own, its stations, and the rails over them. */
import type { Logger } from 'pino'
import { unreadFrom } from '#lib/larder/recall.ts'
import { receivingFood } from '#lib/larder/receiving-view.ts'
import type { LabelsHere } from '#lib/larder/shelf-view.ts'
import { yieldsOfServices } from '#lib/rooms/day/facts/measured-batches.ts'
import { endsService } from '#lib/service/events/ends-service.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { type DataFolder, openDataFolder } from '#server/data-folder.ts'
import { createPublications, type Publications } from '#server/drafts/publications.ts'
import type { EventLog } from '#server/event-log/port.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { createForecasts, type Forecasts } from '#server/forecast/forecasts.ts'
import type { Guests } from '#server/guests/port.ts'
import { openGuests } from '#server/guests/sqlite.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import { houseOf, openLabels } from '#server/labels/open-labels.ts'
import { type Larder, openLarder } from '#server/larder/larder-rail.ts'
import { type OpenKeeping, openKeeping } from '#server/privacy/open-keeping.ts'
import type { ServerClock } from '#server/rail/clock.ts'
import { openStationServices, type StationServices } from '#server/rail/station-services.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { type KnownRecords, openKnownRecords } from '#server/records/known-records.ts'
import { createSqliteRecords } from '#server/records/sqlite.ts'
import { createHouseContacts, type HouseContacts } from '#server/stations/house-contacts.ts'
import { type KnownStations, openKnownStations } from '#server/stations/known-stations.ts'
import { createRevisions } from '#server/stations/revisions.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase, type SqliteDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { createTastingStore } from '#server/tasting/sqlite.ts'
import { createTastings, type Tastings } from '#server/tasting/tastings.ts'

export interface OpenHouse {
  readonly folder: DataFolder
  readonly database: SqliteDatabase
  readonly events: EventLog<Recorded, StoredAnswer>
  readonly guests: Guests
  readonly stations: KnownStations
  readonly labels: HouseLabels
  readonly records: KnownRecords
  readonly services: StationServices
  readonly contacts: HouseContacts
  readonly publications: Publications
  /** What is set aside between services. */
  readonly larder: Larder
  /** What is known of the labels of its lots. */
  readonly larderLabels: LabelsHere
  /** Batches that are made to be tried, and what own batches really made. */
  readonly tastings: Tastings
  readonly keeping: OpenKeeping
  readonly forecasts: Forecasts
  /** Settles when what was taken is committed, shown, answered and kept. */
  finish(): Promise<void>
  /** Nothing is looked at by itself any more. */
  quiet(): void
  /** Checkpoints and closes the stores. */
  closeStores(): Promise<void>
}

const LOOK_EVERY_MS = 10_000

/**
 * @param setup.first is kept in a folder that has no station yet
 * @param setup.begin before anything falls due: what is done of services by the house itself
 * @throws {StoreProblem} for what people can mend: no data folder, one in use, a damaged one
 */
export const openHouse = async (setup: {
  readonly path: string
  readonly clock: ServerClock
  readonly logger: Logger
  readonly fatal: (error: unknown) => void
  readonly first?: StationDocument
  readonly begin?: (services: StationServices, stations: KnownStations) => Promise<void>
}): Promise<OpenHouse> => {
  const { clock, logger, fatal } = setup
  const folder = openDataFolder(setup.path)
  const events = openSqliteLog<Recorded, StoredAnswer>({ path: folder.log })
  const guests = openGuests({ path: folder.guests })
  const database = openHouseDatabase({ path: folder.house })
  const kept = createSqliteStations({
    house: database,
    parse: (json) => stationSchema.parse(json),
  })
  const labels = openLabels({
    file: database,
    log: events,
    rails: () => [...services.currents(), ...services.planned()],
    fatal,
  })
  const stations = await openKnownStations({ stations: kept, labels })
  if (setup.first && stations.first() === null) await stations.put(setup.first)
  const records = await openKnownRecords({
    records: createSqliteRecords(database),
    events: (service) => events.read(service, 0),
    logger,
    fatal,
  })
  const larderLabels: LabelsHere = {
    newest: labels.newest,
    from: (ingredient, version) => labels.since(ingredient, version - 1),
    nameOf: (station, ingredient) =>
      stations.find(station)?.document.ingredients.find(({ id }) => id === ingredient)?.name ??
      ingredient,
    labelOf: (ingredient) => {
      const row = labels.find(ingredient, null)
      return row && (row.label ?? UNREAD_LABEL)
    },
    allergensOf: (station) => {
      const document = stations.find(station)?.document
      if (!document) return null
      const { allergenSet, ownAllergens } = document
      return { allergenSet, ownAllergens }
    },
  }
  const larder = await openLarder({
    house: houseOf(database),
    log: events.as(),
    guests,
    clock,
    labels: larderLabels,
    deliveries: {
      food: (ingredient) =>
        receivingFood(
          stations.all().map(({ document }) => document),
          ingredient,
        ),
      guard: labels.guard,
      onUnread: labels.unread,
    },
    logger,
    fatal,
  })
  const services = await openStationServices({
    log: events,
    guests,
    clock,
    station: stations.find,
    newestLabels: labels.newest,
    labelsGuard: labels.guard,
    larder,
    knownBias: records.knownBias,
    logger,
    fatal,
  })
  services.onShow((rail, events) => {
    labels.take(events)
    if (events.some(endsService)) records.take(rail)
  })
  const publications = createPublications(database, labels.house)
  const contacts = createHouseContacts({
    log: events,
    stations,
    revisions: createRevisions(database, (json) => stationSchema.parse(json)),
    rails: () => services.currents(),
    neverTouched: publications.neverTouched,
  })
  // What the server didn't get to before it was cut short.
  await labels.recover(unreadFrom(await larder.entries()))
  contacts.recover()
  for (const newest of services.currents()) records.take(newest)
  const tastings = createTastings({
    store: createTastingStore(database),
    guests,
    station: (id) => stations.find(id)?.document ?? null,
    measured: (id) => {
      const document = stations.find(id)?.document
      return document ? yieldsOfServices(records.all(), document) : []
    },
    now: clock.now,
  })
  const keeping = await openKeeping({
    house: database,
    tastings,
    services,
    log: events,
    guests,
    records,
    clock,
    logger,
    fatal,
  })
  await setup.begin?.(services, stations)
  services.look()
  // What passed its time while nothing ran falls due now.
  larder.look()
  const looking = setInterval(() => {
    services.look()
    larder.look()
  }, LOOK_EVERY_MS)
  const first = stations.first()
  if (first) records.taught(first.document, 'real')
  const forecasts = createForecasts({
    currents: () => services.currents(),
    onShow: (listener) => services.onShow(listener),
    taught: ({ station, kind }) => records.taught(station, kind),
    now: clock.now,
    logger,
  })
  return {
    folder,
    database,
    events,
    guests,
    stations,
    labels,
    records,
    services,
    contacts,
    publications,
    larder,
    larderLabels,
    tastings,
    keeping,
    forecasts,
    finish: async () => {
      await services.idle()
      await labels.idle()
      await services.idle()
      await larder.idle()
      await tastings.idle()
      await records.idle()
      await keeping.idle()
    },
    quiet: () => {
      clearInterval(looking)
      keeping.close()
      forecasts.close()
      larder.close()
      services.close()
    },
    closeStores: async () => {
      await guests.close()
      closeDurableDatabase(database)
      await events.close()
    },
  }
}
