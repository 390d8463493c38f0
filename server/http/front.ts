/** The one door of the server: connections, requests and handshakes pass here or nowhere. */
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import type { Socket } from 'node:net'
import type { Duplex } from 'node:stream'
import type { Logger } from 'pino'
import type { Edge } from '#server/http/edge.ts'
import { MOST_HEADERS, WITHIN_MS } from '#server/http/limits.ts'

/** For whoever creates the server that listens: bytes of headers, and how long TLS may take. */
export const listenerOptions = {
  maxHeaderSize: MOST_HEADERS.bytes,
  headersTimeout: WITHIN_MS.headers,
  requestTimeout: WITHIN_MS.request,
  keepAliveTimeout: WITHIN_MS.keepAlive,
  connectionsCheckingInterval: 1_000,
  requireHostHeader: true,
  insecureHTTPParser: false,
} as const

/** The only address at which a WebSocket is opened. */
const SOCKET_PATH = '/socket.io/'

const STATUS = {
  'not-as-asked': '400 Bad Request',
  'other-origin': '403 Forbidden',
  'no-such-path': '404 Not Found',
  'too-large': '414 URI Too Long',
  'other-host': '421 Misdirected Request',
  'too-often': '429 Too Many Requests',
} as const

const refuse = (socket: Duplex, because: keyof typeof STATUS): void => {
  socket.on('error', () => undefined)
  socket.end(`HTTP/1.1 ${STATUS[because]}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`)
}

type Upgrade = (request: IncomingMessage, socket: Duplex, head: Buffer) => void

/**
 * Lays the edge over a server that doesn't listen yet, in front of what listens for handshakes.
 * @param more handshakes at other addresses are left to who listens later, as live rebuilds do
 */
export const openFront = (deps: {
  readonly httpServer: Server
  readonly edge: Edge
  readonly answer: (
    request: IncomingMessage,
    response: ServerResponse,
    waits: boolean,
  ) => Promise<void>
  readonly more: boolean
  readonly log: Logger
}): void => {
  const { httpServer, edge, log } = deps
  const upgrades = httpServer.listeners('upgrade') as Upgrade[]
  httpServer.removeAllListeners('upgrade')
  httpServer.removeAllListeners('request')
  httpServer.timeout = WITHIN_MS.idle
  httpServer.maxHeadersCount = MOST_HEADERS.count

  const onRequest =
    (waits: boolean) =>
    (request: IncomingMessage, response: ServerResponse): void => {
      deps.answer(request, response, waits).catch((problem: unknown) => {
        log.error({ err: problem }, 'a request failed')
        response.destroy()
      })
    }

  const onUpgrade = async (
    request: IncomingMessage,
    socket: Duplex,
    head: Buffer,
  ): Promise<void> => {
    const path = (request.url ?? '').replace(/[?#].*$/s, '')
    if (path !== SOCKET_PATH && deps.more) return
    socket.on('error', () => undefined)
    const refused = await edge.refusal(request, 'socket')
    if (refused !== null) {
      refuse(socket, refused.because)
      return
    }
    if (path !== SOCKET_PATH || request.method !== 'GET') {
      refuse(socket, 'no-such-path')
      return
    }
    if (!edge.sockets.admit(request.socket)) return
    for (const upgrade of upgrades) upgrade.call(httpServer, request, socket, head)
  }

  httpServer.on('connection', (socket: Socket) => edge.connections.admit(socket))
  httpServer.on('request', onRequest(false))
  httpServer.on('checkContinue', onRequest(true))
  httpServer.on('upgrade', (request, socket, head) => {
    onUpgrade(request, socket, head).catch((problem: unknown) => {
      log.error({ err: problem }, 'a handshake failed')
      socket.destroy()
    })
  })
}
