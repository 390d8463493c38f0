import { once } from 'node:events'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { pino } from 'pino'
import { onTestFinished } from 'vitest'
import { composeStation, type Station } from '#server/compose.ts'
import { readConfig } from '#server/config.ts'
import { createAnswer } from '#server/http/answer.ts'
import { createEdge } from '#server/http/edge.ts'
import { listenerOptions, openFront } from '#server/http/front.ts'
import type { ServerClock } from '#server/rail/clock.ts'

interface ComposedStation {
  readonly station: Station
  readonly url: string
  readonly httpServer: Server
  /** All that the server wrote of itself, as finely as it can. */
  readonly logged: readonly string[]
  /** In good order. */
  end(): Promise<void>
}

/** The whole server but its screens and its process, over a data folder. */
export const startComposedStation = async (
  data: string,
  clock?: ServerClock,
): Promise<ComposedStation> => {
  const logged: string[] = []
  const log = pino({ level: 'trace' }, { write: (line) => logged.push(line) })
  const read = readConfig({ LEVEL_SCOOP_DATA: data, HOST: '127.0.0.1', PORT: '0' }, '/')
  if (!read.ok) throw new Error(read.problems.join())
  const { config } = read
  const httpServer = createServer(listenerOptions)
  const edge = createEdge({ secure: false, extraHosts: [] })
  const station = await composeStation({
    config,
    httpServer,
    edge,
    build: 'none',
    log,
    ...(clock ? { clock } : {}),
  })
  const answer = createAnswer({
    about: { version: '0', revision: null },
    health: station.health,
    allergens: station.allergens,
    routes: station.routes,
    access: station.access,
    keeping: station.keeping,
    setDemoOpen: station.setDemoOpen,
    pages: null,
    edge,
    development: false,
    port: () => 0,
    log,
  })
  openFront({ httpServer, edge, answer, more: false, log })
  httpServer.listen(0, '127.0.0.1')
  await once(httpServer, 'listening')
  const { port } = httpServer.address() as AddressInfo
  let ended: Promise<void> | null = null
  const endOnce = async () => {
    station.stopTaking()
    await station.finish()
    await station.closeSockets()
    httpServer.closeAllConnections()
    httpServer.close()
    await station.closeStores()
  }
  const end = () => {
    ended ??= endOnce()
    return ended
  }
  onTestFinished(end)
  return { station, url: `http://127.0.0.1:${port}`, httpServer, logged, end }
}
