/**
 * Fresh servers without fresh processes: the screens are prepared once, and each house has a data
 * folder, a rail and a port of its own. A child of whoever tests; asked over its channel.
 */
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import pino from 'pino'
import { readAbout } from '#server/about.ts'
import { composeStation, type Station } from '#server/compose.ts'
import { readConfig } from '#server/config.ts'
import { createAnswer } from '#server/http/answer.ts'
import { createEdge } from '#server/http/edge.ts'
import { listenerOptions, openFront } from '#server/http/front.ts'
import { openPages } from '#server/http/pages.ts'
import { root } from '#server/root.ts'

/** What is asked of the houses, and answered under the same number. */
export type Asked =
  | { readonly ask: 'open'; readonly number: number; readonly data: string }
  | { readonly ask: 'close'; readonly number: number; readonly port: number }
  | { readonly ask: 'end'; readonly number: number }

export interface Answered {
  readonly number: number
  readonly port: number
}

interface House {
  readonly station: Station
  readonly httpServer: Server
}

const log = pino({ level: 'warn' }, pino.destination({ dest: 2, sync: true }))
const pages = await openPages({ folder: root, development: false, port: 0 })
if (pages === null) throw new Error('the screens were never built')
const about = await readAbout(root)
const houses = new Map<number, House>()

const open = async (data: string): Promise<number> => {
  const read = readConfig({ HOST: '127.0.0.1', PORT: '0', LEVEL_SCOOP_DATA: data }, root)
  if (!read.ok) throw new Error(read.problems.join(' '))
  const httpServer = createServer(listenerOptions)
  const edge = createEdge({ secure: false, extraHosts: read.config.extraHosts })
  const station = await composeStation({
    config: read.config,
    httpServer,
    edge,
    build: pages.build,
    log,
  })
  const portNow = (): number => (httpServer.address() as AddressInfo).port
  const answer = createAnswer({
    about,
    health: station.health,
    access: station.access,
    keeping: station.keeping,
    setDemoOpen: station.setDemoOpen,
    allergens: station.allergens,
    routes: station.routes,
    pages,
    edge,
    development: false,
    port: portNow,
    log,
  })
  openFront({ httpServer, edge, answer, more: false, log })
  await new Promise<void>((done) => httpServer.listen({ port: 0, host: '127.0.0.1' }, done))
  const port = portNow()
  houses.set(port, { station, httpServer })
  return port
}

/** In the order in which a server ends. */
const close = async (port: number): Promise<number> => {
  const house = houses.get(port)
  if (!house) throw new Error(`no house on port ${port}`)
  houses.delete(port)
  const { station, httpServer } = house
  httpServer.close()
  httpServer.closeIdleConnections()
  station.stopTaking()
  await station.finish()
  await station.closeSockets()
  httpServer.closeAllConnections()
  await station.closeStores()
  return port
}

process.on('message', async (asked: Asked) => {
  if (asked.ask === 'end') process.exit(0)
  const port = await (asked.ask === 'open' ? open(asked.data) : close(asked.port))
  process.send?.({ number: asked.number, port } satisfies Answered)
})
// Whoever asked is gone.
process.once('disconnect', () => process.exit(1))
