import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Logger } from 'pino'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import { lanAddresses, ownNames } from '#server/http/addresses.ts'
import { isAllowedHost, isLoopback } from '#server/http/allowed.ts'
import { type About, type HealthSource, healthAnswer, screens } from '#server/http/health.ts'
import { answerInCharge } from '#server/http/in-charge.ts'
import {
  contentSecurityPolicy,
  type PageHashes,
  plainHeaders,
} from '#server/http/security-headers.ts'
import { sendJson, sendText } from '#server/http/sending.ts'
import type { InCharge } from '#server/in-charge/in-charge.ts'

export type Answer = (request: IncomingMessage, response: ServerResponse) => Promise<void>

export interface Pages {
  /** Next's own handler. */
  readonly answer: Answer
  readonly hashes: PageHashes
}

/**
 * Answers every request: Host first, then headers, then /health, /addresses, /allergens and the
 * passphrase of the person in charge, then the screens.
 * @param deps.port read at each request, known once the server listens
 * @param deps.pages null where the server runs without screens
 */
export const createAnswer = (deps: {
  readonly about: About
  readonly health: HealthSource
  readonly inCharge: InCharge
  readonly allergens: () => SheetAnswer
  readonly pages: Pages | null
  readonly extraHosts: readonly string[]
  readonly development: boolean
  readonly port: () => number
  readonly log: Logger
}): Answer => {
  const data: Readonly<Record<string, (request: IncomingMessage) => unknown>> = {
    '/health': ({ socket }) =>
      healthAnswer(deps.about, deps.health, isLoopback(socket.remoteAddress)),
    '/allergens': () => deps.allergens(),
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
      if (request.method === 'GET' || request.method === 'HEAD')
        sendJson(response, 200, make(request))
      else sendText(response.setHeader('Allow', 'GET, HEAD'), 405, words.readOnly)
      return
    }
    if (path === '/in-charge' || path === '/in-charge/passphrase') {
      await answerInCharge(deps, path, request, response)
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
