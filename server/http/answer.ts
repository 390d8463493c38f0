import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Logger } from 'pino'
import { houseWords as words } from '#lib/words/house-en.ts'
import { lanAddresses, ownNames } from '#server/http/addresses.ts'
import { isAllowedHost, isLoopback } from '#server/http/allowed.ts'
import { type About, type HealthSource, healthAnswer, screens } from '#server/http/health.ts'
import {
  contentSecurityPolicy,
  type PageHashes,
  plainHeaders,
} from '#server/http/security-headers.ts'

export type Answer = (request: IncomingMessage, response: ServerResponse) => Promise<void>

export interface Pages {
  /** Next's own handler. */
  readonly answer: Answer
  readonly hashes: PageHashes
}

const send = (response: ServerResponse, status: number, type: string, body: string): void => {
  response.writeHead(status, {
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
    'Cache-Control': 'no-store',
  })
  response.end(response.req.method === 'HEAD' ? undefined : body)
}

const sendText = (response: ServerResponse, status: number, body: string): void =>
  send(response, status, 'text/plain; charset=utf-8', body)

const sendJson = (response: ServerResponse, value: unknown): void =>
  send(response, 200, 'application/json; charset=utf-8', `${JSON.stringify(value)}\n`)

/**
 * Answers every request: Host first, then headers, then /health and /addresses, then the screens.
 * @param deps.port read at each request, known once the server listens
 * @param deps.pages null where the server runs without screens
 */
export const createAnswer = (deps: {
  readonly about: About
  readonly health: HealthSource
  readonly pages: Pages | null
  readonly extraHosts: readonly string[]
  readonly development: boolean
  readonly port: () => number
  readonly log: Logger
}): Answer => {
  const data: Readonly<Record<string, (request: IncomingMessage) => unknown>> = {
    '/health': ({ socket }) =>
      healthAnswer(deps.about, deps.health, isLoopback(socket.remoteAddress)),
    '/addresses': () => ({ addresses: lanAddresses(deps.port()) }),
  }
  const pagePaths = new Set<string>(Object.values(screens))

  const setPolicy = (response: ServerResponse, path: string, host: string): void => {
    const hashes = deps.pages?.hashes
    const scripts = hashes?.get(path) ?? hashes?.get('/_not-found') ?? []
    response.setHeader(
      'Content-Security-Policy',
      contentSecurityPolicy(scripts, host, deps.development),
    )
    if (pagePaths.has(path)) response.setHeader('Cache-Control', 'no-cache')
  }

  return async (request, response) => {
    const { host = '' } = request.headers
    for (const [name, value] of Object.entries(plainHeaders)) response.setHeader(name, value)
    if (!isAllowedHost(request.headers.host, ownNames(deps.extraHosts))) {
      sendText(response, 421, words.hostRefused(host.replace(/[^\w.:[\]-]/g, '?').slice(0, 100)))
      return
    }
    const path = (request.url ?? '/').replace(/[?#].*$/s, '')
    setPolicy(response, path, host.toLowerCase())
    const make = Object.hasOwn(data, path) ? data[path] : undefined
    if (make !== undefined) {
      if (request.method === 'GET' || request.method === 'HEAD') sendJson(response, make(request))
      else sendText(response.setHeader('Allow', 'GET, HEAD'), 405, words.readOnly)
      return
    }
    if (deps.pages === null) {
      sendText(response, 404, words.noScreens)
      return
    }
    try {
      await deps.pages.answer(request, response)
    } catch (problem) {
      deps.log.error({ err: problem, path }, 'a page failed')
      if (response.headersSent) response.destroy()
      else sendText(response, 500, words.failedPage)
    }
  }
}
