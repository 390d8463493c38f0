import type { Server } from 'node:http'
import type { Logger } from 'pino'
import { lineDrawn } from '#lib/access/line-drawn.ts'
import { serviceOf } from '#lib/access/rights.ts'
import { MOST_MESSAGES_A_SECOND, PROTOCOL } from '#lib/protocol/wire.ts'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { type Access, createAccess } from '#server/access/access.ts'
import { removeScriptsToken, writeScriptsToken } from '#server/access/scripts-token.ts'
import type { Config } from '#server/config.ts'
import { openDataFolder } from '#server/data-folder.ts'
import { DEMO_SERVICE, openDemo } from '#server/demo/open-demo.ts'
import { demoStation } from '#server/demo-station.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { createForecasts } from '#server/forecast/forecasts.ts'
import { openGuests } from '#server/guests/sqlite.ts'
import { createAllergens } from '#server/http/allergens.ts'
import type { Edge } from '#server/http/edge.ts'
import { refusalAtGate } from '#server/http/gate.ts'
import type { HealthSource } from '#server/http/health.ts'
import type { Keeping } from '#server/privacy/keeping.ts'
import { openKeeping } from '#server/privacy/open-keeping.ts'
import { createServerClock, type ServerClock } from '#server/rail/clock.ts'
import type { Rail } from '#server/rail/rail.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { openKnownRecords } from '#server/records/known-records.ts'
import { createSqliteRecords } from '#server/records/sqlite.ts'
import { attachSockets } from '#server/sockets/attach.ts'
import { openKnownStations } from '#server/stations/known-stations.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'

/** All that lives while the server runs, and how it ends: the steps are called in this order. */
export interface Station {
  readonly health: HealthSource
  readonly access: Access
  readonly keeping: Keeping
  /** What the allergen sheet is made of, for whoever asks. */
  readonly allergens: () => SheetAnswer
  /** New commands are answered "not taken" from now on. Also the first act after a fault. */
  stopTaking(): void
  /** Settles when what was taken is committed, shown and answered. */
  finish(): Promise<void>
  closeSockets(): Promise<void>
  /** Checkpoints and closes the stores. */
  closeStores(): Promise<void>
}

/** The place of a service in its log; its hash is worked out once a position. */
const createHealth = (
  current: () => Rail | null,
  commits: () => number,
  scriptsToken: string,
): HealthSource => {
  let known = { id: '', position: -1, hash: '' }
  return {
    protocol: PROTOCOL,
    commits,
    scriptsToken,
    service: () => {
      const rail = current()
      if (!rail) return null
      if (known.id !== rail.service || known.position !== rail.position())
        known = {
          id: rail.service,
          position: rail.position(),
          hash: stateHash(rail.state()),
        }
      return known
    },
  }
}

/**
 * The store failed, so what it holds is unknown: the fault is thrown where nothing catches it, and
 * the process ends as it does on any other fault.
 */
const endTheProcess = (error: unknown): void => {
  setImmediate(() => {
    throw error
  })
}

/**
 * Opens the stores and sets up the rail and the sockets on a server that doesn't listen yet.
 * @throws {StoreProblem} for what people can mend: no data folder, one in use, a damaged one
 */
export const composeStation = async ({
  config,
  httpServer,
  edge,
  build,
  log: logger,
  clock = createServerClock(),
}: {
  readonly config: Config
  readonly httpServer: Server
  readonly edge: Edge
  /** Identity of the screens' build, told at each handshake so that old pages load anew. */
  readonly build: string
  readonly log: Logger
  readonly clock?: ServerClock
}): Promise<Station> => {
  const folder = openDataFolder(config.dataFolder)
  const events = openSqliteLog<Recorded, StoredAnswer>({ path: folder.log })
  const guests = openGuests({ path: folder.guests })
  const house = openHouseDatabase({ path: folder.house })
  const stations = createSqliteStations({ house, parse: (json) => stationSchema.parse(json) })
  if ((await stations.list()).length === 0) await stations.put(demoStation.id, demoStation)
  const known = await openKnownStations({ stations, fatal: endTheProcess })
  const first = known.first()
  const records = await openKnownRecords({
    records: createSqliteRecords(house),
    events: (service) => events.read(service, 0),
    logger,
    fatal: endTheProcess,
  })
  let taking = true
  const services = await openStationServices({
    log: events,
    guests,
    clock,
    station: known.find,
    newestRevision: known.newestRevision,
    knownBias: records.knownBias,
    logger,
    fatal: endTheProcess,
  })
  services.onShow((rail, events) => {
    if (events.some(({ type }) => type === 'labelChanged')) known.take(rail.state())
    if (events.some(({ type }) => type === 'serviceClosed')) records.take(rail)
  })
  // What the server didn't get to before it was cut short.
  for (const newest of services.currents()) {
    known.take(newest.state())
    records.take(newest)
  }
  const keeping = await openKeeping({
    house,
    services,
    log: events,
    guests,
    records,
    clock,
    logger,
    fatal: endTheProcess,
  })
  const current = () => first && services.current(first.station)
  const followed = current()
  const isFirstDemo = followed?.service === DEMO_SERVICE && followed.state().stage === 'open'
  if (first && (followed === null || isFirstDemo))
    await openDemo(services, first.document, clock.now())
  services.look()
  const looking = setInterval(() => services.look(), 10_000)
  if (first) records.taught(first.document, 'real')
  const forecasts = createForecasts({
    currents: () => services.currents(),
    onShow: (listener) => services.onShow(listener),
    taught: ({ station, kind }) => records.taught(station, kind),
    now: clock.now,
    logger,
  })
  const access = createAccess({
    database: house,
    now: clock.now,
    station: () => first?.station ?? null,
    line: () => first && lineDrawn(first.document),
    isDemo: () => serviceOf(current()?.state() ?? NOT_OPENED)?.kind === 'demo',
  })
  const scriptsToken = writeScriptsToken(folder.path, access.scriptsToken)
  const sockets = attachSockets({
    httpServer,
    services,
    guests,
    access,
    forecasts,
    station: () => (first ? { id: first.station, name: first.document.name } : null),
    build,
    now: clock.now,
    isAllowed: (request) => refusalAtGate(request, 'socket', edge.site) === null,
    onProved: ({ socket }) => {
      edge.connections.keep(socket)
      edge.sockets.keep(socket)
    },
    isTaking: () => taking,
    onForgotten: keeping.onForgotten,
    mostMessagesASecond: MOST_MESSAGES_A_SECOND,
    logger,
  })
  return {
    health: createHealth(current, () => events.commits(), scriptsToken),
    stopTaking: () => {
      taking = false
    },
    access,
    keeping,
    allergens: createAllergens({
      state: (station) => services.current(station)?.state() ?? null,
      stations: known,
      now: clock.now,
    }),
    finish: async () => {
      await services.idle()
      await known.idle()
      await records.idle()
      await keeping.idle()
    },
    closeSockets: () => {
      clearInterval(looking)
      keeping.close()
      forecasts.close()
      services.close()
      access.close()
      return sockets.close()
    },
    closeStores: async () => {
      removeScriptsToken(folder.path)
      await guests.close()
      closeDurableDatabase(house)
      await events.close()
    },
  }
}
