import type { Server } from 'node:http'
import type { Logger } from 'pino'
import { lineDrawn } from '#lib/access/line-drawn.ts'
import { serviceOf } from '#lib/access/rights.ts'
import { MOST_MESSAGES_A_SECOND, PROTOCOL } from '#lib/protocol/wire.ts'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { type Access, createAccess } from '#server/access/access.ts'
import { removeScriptsToken, writeScriptsToken } from '#server/access/scripts-token.ts'
import { openCarrying } from '#server/carry/open-carrying.ts'
import type { Config } from '#server/config.ts'
import { beginDemo } from '#server/demo/open-demo.ts'
import { demoStation } from '#server/demo-station.ts'
import { openMenu } from '#server/drafts/open-menu.ts'
import { openHouse } from '#server/houses/open-house.ts'
import { createAllergens } from '#server/http/allergens.ts'
import type { Edge } from '#server/http/edge.ts'
import { refusalAtGate } from '#server/http/gate.ts'
import type { HealthSource } from '#server/http/health.ts'
import { menuRows } from '#server/http/menu.ts'
import { menuCarryRoutes } from '#server/http/menu-carry.ts'
import { menuRoutes } from '#server/http/menu-route.ts'
import type { Route } from '#server/http/routes.ts'
import type { Keeping } from '#server/privacy/keeping.ts'
import { createServerClock, type ServerClock } from '#server/rail/clock.ts'
import type { Rail } from '#server/rail/rail.ts'
import { attachSockets } from '#server/sockets/attach.ts'

/** All that lives while the server runs, and how it ends: the steps are called in this order. */
export interface Station {
  readonly health: HealthSource
  readonly access: Access
  readonly keeping: Keeping
  /** What is answered over http beside the house's own rows. */
  readonly routes: readonly Route[]
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
  const house = await openHouse({
    path: config.dataFolder,
    clock,
    logger,
    fatal: endTheProcess,
    first: demoStation,
    begin: (services, stations) => beginDemo(services, stations.first(), clock.now()),
  })
  const { services, guests, stations: known, keeping, forecasts } = house
  const first = known.first()
  const current = () => first && services.current(first.station)
  let taking = true
  const access = createAccess({
    database: house.database,
    now: clock.now,
    station: () => first?.station ?? null,
    line: () => first && lineDrawn(first.document),
    isDemo: () => serviceOf(current()?.state() ?? NOT_OPENED)?.kind === 'demo',
  })
  const menu = openMenu({
    database: house.database,
    stations: known,
    labels: house.labels,
    services,
    now: clock.now,
  })
  const carry = openCarrying({
    database: house.database,
    labels: house.labels,
    menu,
    stations: known,
    services,
  })
  const scriptsToken = writeScriptsToken(house.folder.path, access.scriptsToken)
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
    health: createHealth(current, () => house.events.commits(), scriptsToken),
    stopTaking: () => {
      taking = false
    },
    access,
    keeping,
    routes: [
      ...menuRoutes(access, logger, menuRows(access, menu)),
      ...menuCarryRoutes({ access, log: logger, ...carry }),
    ],
    allergens: createAllergens({
      state: (station) => services.current(station)?.state() ?? null,
      stations: known,
      changedAt: house.labels.changedAt,
      now: clock.now,
    }),
    finish: house.finish,
    closeSockets: () => {
      house.quiet()
      access.close()
      return sockets.close()
    },
    closeStores: async () => {
      removeScriptsToken(house.folder.path)
      await house.closeStores()
    },
  }
}
