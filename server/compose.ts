import type { Server } from 'node:http'
import type { Logger } from 'pino'
import { MOST_MESSAGES_A_SECOND } from '#lib/protocol/wire.ts'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'
import { type Access, createAccess } from '#server/access/access.ts'
import type { AskedPage } from '#server/access/asked-page.ts'
import { createHouse } from '#server/access/house.ts'
import { removeScriptsToken, writeScriptsToken } from '#server/access/scripts-token.ts'
import { openCarrying } from '#server/carry/open-carrying.ts'
import type { Config } from '#server/config.ts'
import { openMenu } from '#server/drafts/open-menu.ts'
import { createHealth } from '#server/houses/health.ts'
import { createHere } from '#server/houses/here.ts'
import { openHouses } from '#server/houses/houses.ts'
import { keepingOfBoth } from '#server/houses/keeping-of-both.ts'
import { createAllergens } from '#server/http/allergens.ts'
import type { SetDemoOpen } from '#server/http/demo.ts'
import type { Edge } from '#server/http/edge.ts'
import { refusalAtGate } from '#server/http/gate.ts'
import type { HealthSource } from '#server/http/health.ts'
import { larderRows } from '#server/http/larder.ts'
import { menuRows } from '#server/http/menu.ts'
import { menuCarryRoutes } from '#server/http/menu-carry.ts'
import { menuLabelRows } from '#server/http/menu-labels.ts'
import { menuPhotoRoutes } from '#server/http/menu-photos.ts'
import { menuRoutes } from '#server/http/menu-route.ts'
import { planRows } from '#server/http/plan.ts'
import type { Route } from '#server/http/routes.ts'
import { crewRoute, servicesRoute } from '#server/http/services.ts'
import { tastingRows } from '#server/http/tasting.ts'
import { createPhotos } from '#server/labels/photos.ts'
import { createServerClock, type ServerClock } from '#server/rail/clock.ts'
import { attachSockets } from '#server/sockets/attach.ts'

/** All that lives while the server runs, and how it ends: the steps are called in this order. */
export interface Station {
  readonly health: HealthSource
  readonly access: Access
  readonly keeping: ReturnType<typeof keepingOfBoth>
  readonly setDemoOpen: SetDemoOpen
  /** What is answered over http beside the house's own rows. */
  readonly routes: readonly Route[]
  /** What the allergen sheet is made of, for whoever asks. */
  readonly allergens: (page: AskedPage) => SheetAnswer
  /** New commands are answered "not taken" from now on. Also the first act after a fault. */
  stopTaking(): void
  /** Settles when what was taken is committed, shown and answered. */
  finish(): Promise<void>
  closeSockets(): Promise<void>
  /** Checkpoints and closes the stores. */
  closeStores(): Promise<void>
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
  const houses = await openHouses({
    path: config.dataFolder,
    clock,
    logger,
    fatal: endTheProcess,
  })
  const { own } = houses
  const here = createHere(houses)
  let taking = true
  const access = createAccess({ database: own.database, now: clock.now, here })
  const menu = openMenu({
    database: own.database,
    stations: own.stations,
    labels: own.labels,
    services: own.services,
    contacts: own.contacts,
    publications: own.publications,
    now: clock.now,
  })
  const adults = createHouse(own.database)
  const photos = createPhotos({ file: own.database, house: adults.id, now: clock.now })
  const carry = openCarrying({
    database: own.database,
    labels: own.labels,
    photos,
    menu,
    stations: own.stations,
    services: own.services,
  })
  const scriptsToken = writeScriptsToken(own.folder.path, access.scriptsToken)
  const sockets = attachSockets({
    httpServer,
    houses,
    access,
    build,
    now: clock.now,
    isAllowed: (request) => refusalAtGate(request, 'socket', edge.site) === null,
    onProved: ({ socket }) => {
      edge.connections.keep(socket)
      edge.sockets.keep(socket)
    },
    isTaking: () => taking,
    mostMessagesASecond: MOST_MESSAGES_A_SECOND,
    logger,
  })
  return {
    health: createHealth(houses, scriptsToken),
    stopTaking: () => {
      taking = false
    },
    access,
    keeping: keepingOfBoth(houses),
    setDemoOpen: houses.setDemoOpen,
    routes: [
      ...menuRoutes(access, logger, [
        ...menuRows(access, menu),
        ...larderRows({
          larder: own.larder,
          labels: own.labels,
          lotLabels: own.larderLabels,
          stations: own.stations,
          access,
          now: clock.now,
        }),
        ...menuLabelRows({
          access,
          house: adults,
          labels: own.labels,
          menu,
          stations: own.stations,
          hasPhoto: (hash) => photos.find(hash) !== null,
          now: clock.now,
        }),
        ...planRows({ house: own, now: clock.now }),
        ...tastingRows({
          tastings: own.tastings,
          station: (id) =>
            (id === '' ? own.stations.first() : own.stations.find(id))?.document ?? null,
          now: clock.now,
        }),
      ]),
      ...menuPhotoRoutes({ access, photos, log: logger }),
      ...menuCarryRoutes({ access, log: logger, ...carry }),
      servicesRoute({ houses, here, access, now: clock.now }),
      crewRoute({ houses, access }),
    ],
    allergens: createAllergens({ houses, here, now: clock.now }),
    finish: houses.finish,
    closeSockets: () => {
      houses.quiet()
      access.close()
      return sockets.close()
    },
    closeStores: async () => {
      removeScriptsToken(own.folder.path)
      await houses.closeStores()
    },
  }
}
