import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Logger } from 'pino'
import type { SheetAnswer } from '#lib/rooms/care/views/allergen-sheet.ts'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import type { Access } from '#server/access/access.ts'
import type { AskedPage } from '#server/access/asked-page.ts'
import { accessRoutes } from '#server/http/access.ts'
import { lanAddresses } from '#server/http/addresses.ts'
import { askedPage } from '#server/http/asked-page.ts'
import { type BodyRefusal, hasBody } from '#server/http/body.ts'
import { demoRoutes, type SetDemoOpen } from '#server/http/demo.ts'
import type { Edge, Refused } from '#server/http/edge.ts'
import { type About, type HealthSource, healthAnswer, screens } from '#server/http/health.ts'
import { isPagePart } from '#server/http/page-parts.ts'
import { addressOf, forgetForwarding, isFromHere } from '#server/http/peer.ts'
import { privacyRoutes } from '#server/http/privacy.ts'
import { createRouteTable, type Route, reads } from '#server/http/routes.ts'
import { contentSecurityPolicy, headersOf, type PageHashes } from '#server/http/security-headers.ts'
import { sendJson, sendText } from '#server/http/sending.ts'

export interface Pages {
  /** Next's own handler. */
  readonly answer: (request: IncomingMessage, response: ServerResponse) => Promise<void>
  readonly hashes: PageHashes
}

/** @param waits the sender waits to be told to go on before it sends a body */
export type Answer = (
  request: IncomingMessage,
  response: ServerResponse,
  waits?: boolean,
) => Promise<void>

const STATUS = {
  'not-as-asked': 400,
  'other-origin': 403,
  'too-slow': 408,
  'too-large': 413,
  'other-host': 421,
  'too-often': 429,
  busy: 503,
} as const satisfies Readonly<Record<BodyRefusal | Refused['because'], number>>

/**
 * Answers every request: the edge first (Host, Origin, rate), then the table of routes with its
 * methods and bodies, then the screens. What no row and no screen is, is not there.
 * @param deps.port read at each request, known once the server listens
 * @param deps.pages null where the server runs without screens
 */
export const createAnswer = (deps: {
  readonly about: About
  readonly health: HealthSource
  readonly access: Access
  readonly keeping: Parameters<typeof privacyRoutes>[1]
  readonly allergens: (page: AskedPage) => SheetAnswer
  readonly setDemoOpen: SetDemoOpen
  /** What else is answered. */
  readonly routes: readonly Route[]
  readonly pages: Pages | null
  readonly edge: Edge
  readonly development: boolean
  readonly port: () => number
  readonly log: Logger
}): Answer => {
  const { edge, log } = deps
  const { secure } = edge.site
  const table = createRouteTable([
    reads('/health', ({ request, response }) => {
      const isNear = isFromHere(request)
      sendJson(response, 200, healthAnswer(deps.about, deps.health, isNear))
    }),
    reads('/allergens', ({ request, response }) =>
      sendJson(response, 200, deps.allergens(askedPage(request))),
    ),
    reads('/addresses', ({ response }) =>
      sendJson(response, 200, { addresses: lanAddresses(deps.port(), secure) }),
    ),
    ...accessRoutes({
      access: deps.access,
      addresses: () => lanAddresses(deps.port(), secure).map(({ url }) => url),
      secure,
      more: [
        ...privacyRoutes(deps.access, deps.keeping),
        ...demoRoutes(deps.access, deps.setDemoOpen),
      ],
      log,
    }),
    ...deps.routes,
  ])
  const pagePaths = new Set<string>(Object.values(screens))
  const headers = Object.entries(headersOf(secure))

  const setPolicy = (response: ServerResponse, path: string, host: string): void => {
    const hashes = deps.pages?.hashes
    const scripts = hashes?.get(path) ?? hashes?.get('/_not-found') ?? []
    response.setHeader(
      'Content-Security-Policy',
      contentSecurityPolicy(scripts, host, { secure, development: deps.development }),
    )
    if (pagePaths.has(path)) response.setHeader('Cache-Control', 'no-cache')
  }

  const refuse = (
    response: ServerResponse,
    { because, again }: { because: keyof typeof STATUS; again: number },
    host = '',
  ): void => {
    // What wasn't read to its end would be taken for the next request.
    response.setHeader('Connection', 'close')
    if (again > 0) response.setHeader('Retry-After', Math.ceil(again / 1000))
    const status = STATUS[because]
    if (because === 'other-host')
      sendText(response, status, words.hostRefused(host.replace(/[^\w.:[\]-]/g, '?').slice(0, 100)))
    else sendJson(response, status, { code: because })
  }

  const answerRoute = async (
    route: Route,
    request: IncomingMessage,
    response: ServerResponse,
    waits: boolean,
  ): Promise<void> => {
    const from = addressOf(request.socket.remoteAddress)
    const refused = route.refuses?.(request) ?? null
    if (refused !== null) {
      // What wasn't read to its end would be taken for the next request.
      if (hasBody(request)) response.setHeader('Connection', 'close')
      sendJson(response, refused.status, refused.told)
      return
    }
    if (route.body === undefined) {
      if (hasBody(request)) refuse(response, { because: 'not-as-asked', again: 0 })
      else await route.answer({ request, response, body: Buffer.alloc(0), from })
      return
    }
    const goOn = waits ? () => response.writeContinue() : undefined
    const body = await edge.bodies.read(request, route.body, goOn)
    if (body.read) await route.answer({ request, response, body: body.bytes, from })
    else refuse(response, { because: body.because, again: 0 })
  }

  const answerPage = async (
    path: string,
    request: IncomingMessage,
    response: ServerResponse,
  ): Promise<void> => {
    if (deps.pages === null) {
      sendText(response, 404, words.noScreens)
      return
    }
    if (hasBody(request)) {
      refuse(response, { because: 'not-as-asked', again: 0 })
      return
    }
    // No path that isn't a screen's is looked for; the page that says so is a screen too.
    const isKnown = pagePaths.has(path) || isPagePart(path, deps.development)
    if (!isKnown) request.url = '/_not-found'
    forgetForwarding(request)
    await deps.pages.answer(request, response)
  }

  return async (request, response, waits = false) => {
    const { host = '' } = request.headers
    const method = request.method ?? ''
    const isRead = method === 'GET' || method === 'HEAD'
    for (const [name, value] of headers) response.setHeader(name, value)
    const refused = await edge.refusal(request, isRead ? 'read' : 'act')
    if (refused !== null) {
      refuse(response, refused, host)
      return
    }
    const path = (request.url ?? '/').replace(/[?#].*$/s, '')
    setPolicy(response, path, host.toLowerCase())
    const found = table.find(path, method)
    try {
      if (found !== null && 'path' in found) await answerRoute(found, request, response, waits)
      else if (found !== null || !isRead) {
        response.setHeader('Connection', 'close').setHeader('Allow', found?.allow ?? 'GET, HEAD')
        const readOnly = found === null || found.allow === 'GET, HEAD'
        sendText(response, 405, readOnly ? words.readOnly : words.writeOnly)
      } else await answerPage(path, request, response)
    } catch (problem) {
      if (request.readableAborted) return
      log.error({ err: problem, path }, 'a request failed')
      if (response.headersSent) response.destroy()
      else if (found === null) sendText(response, 500, words.failedPage)
      else sendJson(response, 500, { code: 'failed' })
    }
  }
}
