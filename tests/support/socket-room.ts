import { once } from 'node:events'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { pino } from 'pino'
import { io, type Socket } from 'socket.io-client'
import { onTestFinished } from 'vitest'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import {
  type Answer,
  type Followed,
  MOST_MESSAGES_A_SECOND,
  PROTOCOL,
  type Welcome,
} from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { Access } from '#server/access/access.ts'
import type { House } from '#server/access/house.ts'
import { refusalAtGate } from '#server/http/gate.ts'
import { openStationServices, type StationServices } from '#server/rail/station-services.ts'
import { attachSockets } from '#server/sockets/attach.ts'
import type { SocketHouse } from '#server/sockets/wired-house.ts'
import { accessRoom } from '#tests/support/access-room.ts'
import { LOADS, OPEN } from '#tests/support/orders.ts'
import { createRailRoom, type RailRoom } from '#tests/support/rail-room.ts'

export interface SocketRoom {
  readonly url: string
  readonly port: number
  readonly room: RailRoom
  readonly services: StationServices
  readonly httpServer: Server
  readonly logged: string[]
  readonly access: Access
  /** An adult makes the house. */
  make(): Promise<string>
  readonly house: House
  /** What proves a device of a role at the lunch line. */
  token(role: Role, station?: string): string
  /** What was handed to the rail, and by whose right. */
  readonly given: readonly { readonly id: string; readonly by: Role; readonly adult?: string }[]
  /** A forecast is made: the newest, told to those who follow. */
  forecast(forecast: StationForecast): void
  /** A guest of the lunch was forgotten, whose name these commands brought. */
  forgotten(commands: readonly string[]): void
  stopTaking(): void
  closeSockets(): Promise<void>
}

/** A server with its sockets on any free port, over stores in memory; the lunch service is open. */
export const createSocketRoom = async ({
  mostMessagesASecond = MOST_MESSAGES_A_SECOND,
  port: wanted = 0,
} = {}): Promise<SocketRoom> => {
  const room = await createRailRoom()
  const services = await openStationServices(room.ports)
  await services.submit('s-lunch', 'open', OPEN, 'lead')
  for (const [index, load] of LOADS.entries())
    await services.submit('s-lunch', `load-${index}`, load, 'lead')
  const httpServer = createServer((_, response) => response.end('a page'))
  const logged: string[] = []
  const given: { id: string; by: Role; adult?: string }[] = []
  const proved = accessRoom({ now: () => room.time.clock.now() })
  const { access } = proved
  const forecasts: {
    newest: StationForecast | null
    listeners: ((forecast: StationForecast) => void)[]
  } = { newest: null, listeners: [] }
  const forgetters: ((service: string, commands: readonly string[]) => void)[] = []
  let taking = true
  const station = { station: 'alder-hall', document: { name: 'Alder Hall' } }
  const own: SocketHouse = {
    services: {
      ...services,
      submit: (service, id, command, by, adult) => {
        given.push({ id, by, ...(adult === undefined ? {} : { adult }) })
        return services.submit(service, id, command, by, adult)
      },
    },
    guests: room.guests,
    forecasts: {
      newest: (service) => (forecasts.newest?.service === service ? forecasts.newest : null),
      onForecast: (listener) => forecasts.listeners.push(listener),
    },
    keeping: { onForgotten: (listener) => forgetters.push(listener) },
    stations: { find: () => station, first: () => station },
  }
  const sockets = attachSockets({
    httpServer,
    houses: {
      find: (which) => (which === 'demo' ? null : own),
      onOpened: (listener) => listener('own', own),
      onClosing: () => undefined,
    },
    access,
    build: 'build-1',
    now: () => room.time.clock.now(),
    isAllowed: (request) =>
      refusalAtGate(request, 'socket', { secure: false, extraHosts: [] }) === null,
    onProved: () => undefined,
    isTaking: () => taking,
    mostMessagesASecond,
    logger: pino({ level: 'trace' }, { write: (line) => logged.push(line) }),
  })
  httpServer.listen(wanted, '127.0.0.1')
  await once(httpServer, 'listening')
  const { port } = httpServer.address() as AddressInfo
  let closing: Promise<void> | null = null
  const closeSockets = () => {
    closing ??= sockets.close()
    return closing
  }
  const url = `http://127.0.0.1:${port}`
  tokens.set(url, proved.token)
  onTestFinished(async () => {
    await closeSockets()
    services.close()
    httpServer.closeAllConnections()
    httpServer.close()
  })
  return {
    url,
    port,
    room,
    services,
    httpServer,
    logged,
    access,
    make: proved.make,
    house: proved.house,
    token: proved.token,
    given,
    forecast: (forecast) => {
      forecasts.newest = forecast
      for (const listener of forecasts.listeners) listener(forecast)
    },
    forgotten: (commands) => {
      for (const listener of forgetters) listener('s-lunch', commands)
    },
    stopTaking: () => {
      taking = false
    },
    closeSockets,
  }
}

export interface Screen {
  readonly socket: Socket
  readonly welcome: Welcome
  /** Everything that the server sent by itself, in order: name and message. */
  readonly heard: readonly (readonly [name: string, message: unknown])[]
  of(name: string): readonly unknown[]
  follow(position?: number, service?: string): Promise<Followed>
  /** A command message as it should be, or with other fields. */
  give(id: string, command: Command, change?: object): Promise<Answer>
  /** Anything at all under the name of a command. */
  say(message: unknown): Promise<Answer>
}

export interface Connecting {
  readonly auth?: object
  readonly headers?: Readonly<Record<string, string>>
}

/** By the address of a room: what proves a device of a role there. */
const tokens = new Map<string, (role: Role) => string>()

/** A plain socket.io client that isn't connected yet, proved for its role. */
export const knock = (url: string, role: Role, { auth, headers = {} }: Connecting = {}): Socket => {
  const socket = io(url, {
    auth: auth ?? { protocol: PROTOCOL, role, token: tokens.get(url)?.(role) },
    transports: ['websocket'],
    forceNew: true,
    reconnection: false,
    extraHeaders: { ...headers },
  })
  onTestFinished(() => {
    socket.disconnect()
  })
  return socket
}

/** Whether a client is let in; the words with which it isn't. */
export const isLetIn = (socket: Socket): Promise<true | string> =>
  new Promise((settle) => {
    socket.once('connect', () => settle(true))
    socket.once('connect_error', (error) => settle(error.message))
  })

/** A screen that is connected and was welcomed. */
export const connectScreen = async (
  url: string,
  role: Role,
  connecting?: Connecting,
): Promise<Screen> => {
  const socket = knock(url, role, connecting)
  const heard: [string, unknown][] = []
  socket.onAny((name: string, message: unknown) => heard.push([name, message]))
  const welcome = await new Promise<Welcome>((settle, fail) => {
    socket.once('welcome', settle)
    socket.once('connect_error', fail)
  })
  const ask = <Reply>(name: string, message: unknown): Promise<Reply> =>
    socket.timeout(5_000).emitWithAck(name, message)
  return {
    socket,
    welcome,
    heard,
    of: (name) => heard.filter((one) => one[0] === name).map((one) => one[1]),
    follow: (position = 0, service = 's-lunch') => ask('follow', { service, position }),
    give: (id, command, change = {}) =>
      ask('command', { protocol: PROTOCOL, id, service: 's-lunch', command, ...change }),
    say: (message) => ask('command', message),
  }
}
