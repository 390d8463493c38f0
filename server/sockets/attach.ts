/** The sockets' edge: who may connect, what is taken, and to whom it is shown. */
import type { Server as HttpServer, IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import { RateLimiterMemory } from 'rate-limiter-flexible'
import { Server, type Socket } from 'socket.io'
import type { WhichHouse } from '#lib/access/http.ts'
import type { Asker } from '#lib/access/rights.ts'
import {
  type Answer,
  type Followed,
  MOST_MESSAGE_BYTES,
  PROTOCOL,
  PULSE_EVERY_MS,
  type ScreenMessages,
  type ServerMessages,
} from '#lib/protocol/wire.ts'
import { followSchema, helloSchema, idOf, takeCommand } from '#lib/protocol/wire-schema.ts'
import type { NotTaken } from '#lib/service/refusal.ts'
import type { Access } from '#server/access/access.ts'
import { WITHIN_MS } from '#server/http/limits.ts'
import { addressOf } from '#server/http/peer.ts'
import { deviceOf } from '#server/sockets/asking.ts'
import { type SocketHouse, type WiredHouse, wireHouse } from '#server/sockets/wired-house.ts'

interface Caller {
  readonly asker: Asker
  /** The one house that it hears of and speaks to, as long as it is connected. */
  readonly house: WiredHouse
  /** It came to whichever house is open by default. */
  readonly isByDefault: boolean
}

/** Which houses are open, and which of them is meant. */
export interface SocketHouses {
  find(asked: WhichHouse | undefined): SocketHouse | null
  onOpened(listener: (which: WhichHouse, house: SocketHouse) => void): void
  onClosing(listener: (house: SocketHouse) => void): void
}

type Io = Server<ScreenMessages, ServerMessages, Record<string, never>, Caller>
type Connected = Socket<ScreenMessages, ServerMessages, Record<string, never>, Caller>

export interface SocketPorts {
  readonly httpServer: HttpServer
  readonly houses: SocketHouses
  readonly access: Access
  readonly build: string
  readonly now: () => number
  readonly isAllowed: (request: IncomingMessage) => boolean
  /** A device was proved on the connection of this handshake. */
  readonly onProved: (request: IncomingMessage) => void
  readonly isTaking: () => boolean
  /** Of one connection. */
  readonly mostMessagesASecond: number
  readonly logger: Logger
}

const MOST_CONNECTIONS = 500
/** A screen that doesn't take its last answer in this time is left without it. */
const CLOSE_WITHIN_MS = 1_000

export const attachSockets = (ports: SocketPorts): { close(): Promise<void> } => {
  const { houses, access, logger } = ports
  const wired = new Map<SocketHouse, WiredHouse>()
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
    if (!hello.success) {
      next(new Error('not-the-protocol'))
      return
    }
    const meant = houses.find(hello.data.house)
    const house = meant && wired.get(meant)
    const admitted = house
      ? access.admit(socket.request, hello.data)
      : ({ refusal: 'demo-closed' } as const)
    if (!house || 'refusal' in admitted) {
      next(new Error('refusal' in admitted ? admitted.refusal : 'demo-closed'))
      return
    }
    if (admitted.kind === 'proved') ports.onProved(socket.request)
    socket.data = { asker: admitted, house, isByDefault: hello.data.house === undefined }
    next()
  })

  access.devices.onGone((device) => {
    for (const socket of io.of('/').sockets.values())
      if (deviceOf(socket.data.asker) === device) socket.disconnect(true)
  })

  /** Answers that are being worked out: none is lost when the server ends in good order. */
  const underway = new Set<Promise<void>>()

  const pulse = () => {
    const byDefault = houses.find(undefined)
    for (const socket of io.of('/').sockets.values()) {
      const { asker, house, isByDefault } = socket.data
      // The first own station was published: whoever came by default is let in there anew.
      if (isByDefault && house.house !== byDefault) {
        socket.disconnect(true)
        continue
      }
      const current = house.asking.current(asker)
      socket.emit('pulse', {
        at: ports.now(),
        service: current?.service ?? null,
        position: current?.position() ?? 0,
      })
    }
  }

  houses.onOpened((which, house) => {
    wired.set(house, wireHouse(which, house, { io, access, logger, onOpened: pulse }))
  })
  houses.onClosing((house) => {
    wired.delete(house)
    for (const socket of io.of('/').sockets.values())
      if (socket.data.house.house === house) socket.disconnect(true)
  })

  const isTooMuch = (socket: Connected): Promise<boolean> =>
    limiter.consume(socket.id).then(
      () => false,
      () => true,
    )

  const onFollow = async (socket: Connected, message: unknown): Promise<Followed> => {
    if (await isTooMuch(socket)) return { kind: 'busy' }
    const asked = followSchema.safeParse(message)
    const { asker, house } = socket.data
    const rail = asked.success ? await house.asking.find(asker, asked.data.service) : null
    if (!rail || !asked.success) return { kind: 'no-such-service' }
    return house.telling.follow(socket, asker.role, rail, asked.data.position)
  }

  const onCommand = async (socket: Connected, message: unknown): Promise<Answer> => {
    if (await isTooMuch(socket))
      return { id: idOf(message), answer: 'not taken', because: { code: 'busy' } }
    const { asker, house } = socket.data
    const { services } = house.house
    const taken = takeCommand(message, asker.role)
    if (!taken.taken) return { id: taken.id, answer: 'not taken', because: taken.because }
    const { id, service, command, by, passphrase } = taken
    const not = (because: NotTaken): Answer => ({ id, answer: 'not taken', because })
    if (!ports.isTaking()) return not({ code: 'closing' })
    const hasProof = passphrase !== null
    const problem = await house.asking.problem(asker, { command, service, hasProof })
    if (problem !== null) return not({ code: problem })
    if (!hasProof) return services.submit(service, id, command, by)
    const from = { device: deviceOf(asker), address: addressOf(socket.conn.remoteAddress) }
    const tried = await access.adults.proveInCharge(passphrase, from)
    if (tried.code !== 'right') return not({ code: tried.code })
    if (!ports.isTaking()) return not({ code: 'closing' })
    return services.submit(service, id, command, by, tried.adult.id)
  }

  io.on('connection', (socket) => {
    const { asker, house } = socket.data
    const current = house.asking.current(asker)
    if (asker.kind === 'proved') socket.on('disconnect', access.devices.arrive(asker.device))
    socket.emit('welcome', {
      protocol: PROTOCOL,
      build: ports.build,
      house: house.which,
      station: house.station(asker.kind === 'proved' ? asker.station : null),
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
