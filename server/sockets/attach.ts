/** The sockets' edge: who may connect, what is taken, and to whom it is shown. */
import type { Server as HttpServer, IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import { RateLimiterMemory } from 'rate-limiter-flexible'
import { Server, type Socket } from 'socket.io'
import type { Asker } from '#lib/access/rights.ts'
import {
  type Answer,
  type Followed,
  MOST_MESSAGE_BYTES,
  PROTOCOL,
  PULSE_EVERY_MS,
  type ScreenMessages,
  type ServerMessages,
  type Welcome,
} from '#lib/protocol/wire.ts'
import { followSchema, helloSchema, idOf, takeCommand } from '#lib/protocol/wire-schema.ts'
import type { NotTaken } from '#lib/service/refusal.ts'
import type { Access } from '#server/access/access.ts'
import type { Forecasts } from '#server/forecast/forecasts.ts'
import type { Guests } from '#server/guests/port.ts'
import { WITHIN_MS } from '#server/http/limits.ts'
import { addressOf } from '#server/http/peer.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import { createAsking, deviceOf } from '#server/sockets/asking.ts'
import { createTelling } from '#server/sockets/telling.ts'

interface Caller {
  readonly asker: Asker
}

type Io = Server<ScreenMessages, ServerMessages, Record<string, never>, Caller>
type Connected = Socket<ScreenMessages, ServerMessages, Record<string, never>, Caller>

export interface SocketPorts {
  readonly httpServer: HttpServer
  readonly services: StationServices
  readonly guests: Guests
  readonly access: Access
  readonly forecasts: Forecasts
  readonly station: () => Welcome['station']
  readonly build: string
  readonly now: () => number
  readonly isAllowed: (request: IncomingMessage) => boolean
  /** A device was proved on the connection of this handshake. */
  readonly onProved: (request: IncomingMessage) => void
  readonly isTaking: () => boolean
  /** A guest was forgotten: the commands that brought a name. */
  readonly onForgotten: (listener: (service: string, commands: readonly string[]) => void) => void
  /** Of one connection. */
  readonly mostMessagesASecond: number
  readonly logger: Logger
}

const MOST_CONNECTIONS = 500
/** A screen that doesn't take its last answer in this time is left without it. */
const CLOSE_WITHIN_MS = 1_000

export const attachSockets = (ports: SocketPorts): { close(): Promise<void> } => {
  const { services, guests, access, logger } = ports
  const asking = createAsking(ports)
  const limiter = new RateLimiterMemory({ points: ports.mostMessagesASecond, duration: 1 })
  const io: Io = new Server(ports.httpServer, {
    transports: ['websocket'],
    serveClient: false,
    pingInterval: 5_000,
    pingTimeout: 5_000,
    maxHttpBufferSize: MOST_MESSAGE_BYTES,
    perMessageDeflate: false,
    connectTimeout: WITHIN_MS.hello,
    allowRequest: (request, decide) => {
      const full = io.engine.clientsCount >= MOST_CONNECTIONS
      decide(null, !full && ports.isAllowed(request))
    },
  })

  io.use((socket, next) => {
    const hello = helloSchema.safeParse(socket.handshake.auth)
    const admitted = hello.success
      ? access.admit(socket.request, hello.data)
      : { refusal: 'not-the-protocol' }
    if ('refusal' in admitted) {
      next(new Error(admitted.refusal))
      return
    }
    if (admitted.kind === 'proved') ports.onProved(socket.request)
    socket.data = { asker: admitted }
    next()
  })

  access.devices.onGone((device) => {
    for (const socket of io.of('/').sockets.values())
      if (deviceOf(socket.data.asker) === device) socket.disconnect(true)
  })

  /** Answers that are being worked out: none is lost when the server ends in good order. */
  const underway = new Set<Promise<void>>()

  const pulse = () => {
    for (const socket of io.of('/').sockets.values()) {
      const current = asking.current(socket.data.asker)
      socket.emit('pulse', {
        at: ports.now(),
        service: current?.service ?? null,
        position: current?.position() ?? 0,
      })
    }
  }

  const telling = createTelling({
    io,
    guests,
    newest: (service) => ports.forecasts.newest(service),
    logger,
  })

  const isTooMuch = (socket: Connected): Promise<boolean> =>
    limiter.consume(socket.id).then(
      () => false,
      () => true,
    )

  const onFollow = async (socket: Connected, message: unknown): Promise<Followed> => {
    if (await isTooMuch(socket)) return { kind: 'busy' }
    const asked = followSchema.safeParse(message)
    const { asker } = socket.data
    const rail = asked.success ? await asking.find(asker, asked.data.service) : null
    if (!rail || !asked.success) return { kind: 'no-such-service' }
    return telling.follow(socket, asker.role, rail, asked.data.position)
  }

  const onCommand = async (socket: Connected, message: unknown): Promise<Answer> => {
    if (await isTooMuch(socket))
      return { id: idOf(message), answer: 'not taken', because: { code: 'busy' } }
    const { asker } = socket.data
    const taken = takeCommand(message, asker.role)
    if (!taken.taken) return { id: taken.id, answer: 'not taken', because: taken.because }
    const { id, service, command, by, passphrase } = taken
    const not = (because: NotTaken): Answer => ({ id, answer: 'not taken', because })
    if (!ports.isTaking()) return not({ code: 'closing' })
    const hasProof = passphrase !== null
    const problem = await asking.problem(asker, { command, service, hasProof })
    if (problem !== null) return not({ code: problem })
    if (!hasProof) return services.submit(service, id, command, by)
    const from = { device: deviceOf(asker), address: addressOf(socket.conn.remoteAddress) }
    const tried = await access.adults.proveInCharge(passphrase, from)
    if (tried.code !== 'right') return not({ code: tried.code })
    if (!ports.isTaking()) return not({ code: 'closing' })
    return services.submit(service, id, command, by, tried.adult.id)
  }

  io.on('connection', (socket) => {
    const { asker } = socket.data
    const current = asking.current(asker)
    if (asker.kind === 'proved') socket.on('disconnect', access.devices.arrive(asker.device))
    socket.emit('welcome', {
      protocol: PROTOCOL,
      build: ports.build,
      station: ports.station(),
      service: current?.service ?? null,
      device: deviceOf(asker),
      at: ports.now(),
    })
    const answering =
      <Reply>(answer: (message: unknown) => Promise<Reply>) =>
      (...parts: unknown[]) => {
        const reply = parts.at(-1)
        if (typeof reply !== 'function') return
        const answered = answer(parts.length > 1 ? parts[0] : undefined)
          .then(
            (value) => reply(value),
            (error: unknown) => logger.error({ err: error }, 'a message failed'),
          )
          .finally(() => underway.delete(answered))
        underway.add(answered)
      }
    socket.on(
      'follow',
      answering((message) => onFollow(socket, message)),
    )
    socket.on(
      'command',
      answering((message) => onCommand(socket, message)),
    )
    socket.on('error', (error) => logger.warn({ err: error }, 'a socket failed'))
  })

  services.onShow((rail, events) => {
    telling.happened(rail, events)
    if (events.some((event) => event.type === 'serviceOpened')) pulse()
  })

  ports.forecasts.onForecast(telling.forecast)
  ports.onForgotten(telling.forgotten)

  const pulsing = setInterval(pulse, PULSE_EVERY_MS)

  return {
    close: async () => {
      clearInterval(pulsing)
      await Promise.allSettled(underway)
      // Below socket.io, whose own way tells screens to stay away, drops what isn't written yet,
      // and waits for every http connection.
      const gone = [...io.of('/').sockets.values()].map(
        ({ conn }) => new Promise<void>((settle) => conn.once('close', () => settle())),
      )
      for (const socket of io.of('/').sockets.values()) socket.conn.close()
      const tooLong = new Promise<void>((settle) => setTimeout(settle, CLOSE_WITHIN_MS).unref())
      await Promise.race([Promise.all(gone), tooLong])
      io.engine.close()
    },
  }
}
