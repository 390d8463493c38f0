/** Who may in, over http: /access and below. Answers are codes; every one is told in PROTOCOL.md. */
import type { IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import { z } from 'zod'
import type { AccessRefusal } from '#lib/access/http.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'
import type { Access } from '#server/access/access.ts'
import { setCookie } from '#server/access/caller.ts'
import type { Device } from '#server/access/house.ts'
import { askedPage } from '#server/http/asked-page.ts'
import type { Asked, Route } from '#server/http/routes.ts'
import { sendJson } from '#server/http/sending.ts'

const STATUS: Readonly<Record<AccessRefusal | 'done', number>> = {
  done: 200,
  'not-as-asked': 400,
  'too-short': 400,
  'too-long': 400,
  'too-common': 400,
  'same-passphrase': 400,
  'name-taken': 400,
  'no-name': 400,
  'not-joined': 401,
  'not-it': 403,
  'not-yours': 403,
  'other-origin': 403,
  'made-already': 409,
  'no-house': 409,
  'too-many': 409,
  'last-one': 409,
  'too-large': 413,
  'too-many-tries': 429,
  failed: 500,
}

/** Counted as kept out; wrong and too many tries are counted where they are tried. */
const TOLD_THE_LEAD: ReadonlySet<string> = new Set(['not-joined', 'not-yours'])

export interface Answered {
  readonly code: AccessRefusal | 'done'
  /** Of the caller from now on; null takes away what it had. */
  readonly token?: string | null
}

/** One address below /access. */
export interface AccessRoute {
  readonly path: string
  readonly method: 'GET' | 'POST'
  /** The least role of a device that may ask; null: anybody, whom it tells apart itself. */
  readonly by: Role | null
  act(
    request: IncomingMessage,
    /** The device that asks, which may act as `by`; null where anybody may. */
    device: Device | null,
    body: unknown,
  ): Answered | Promise<Answered>
}

const text = z.string().max(MOST_PASSPHRASE_UNITS)
const adult = z.strictObject({ name: text, passphrase: text })

const BODIES = {
  make: z.strictObject({ secret: text, lead: adult, inCharge: adult }),
  signOn: adult,
  join: z.strictObject({ code: text, name: text }),
  codes: z.strictObject({ role: z.enum(ROLES), station: text.optional() }),
  remove: z.strictObject({ device: text }),
  move: z.strictObject({ device: text, station: text }),
  adults: z.strictObject({
    name: text,
    passphrase: text,
    role: z.enum(['lead', 'in-charge']),
    proof: text,
  }),
  passphrase: z.strictObject({ name: text, before: text, passphrase: text }),
  removeAdult: z.strictObject({ adult: text, proof: text }),
  nothing: z.strictObject({}),
}

/** An address that takes a body of that shape from a device that may act as a role, or from anybody. */
export const takes = <Body, By extends Role | null>(
  path: string,
  by: By,
  schema: z.ZodType<Body>,
  act: (
    body: Body,
    request: IncomingMessage,
    device: By extends Role ? Device : null,
  ) => Answered | Promise<Answered>,
): AccessRoute => ({
  path,
  method: 'POST',
  by,
  act: (request, device, body) => {
    const parsed = schema.safeParse(body)
    if (!parsed.success) return { code: 'not-as-asked' }
    return act(parsed.data, request, device as By extends Role ? Device : null)
  },
})

const routesOf = (access: Access, addresses: () => readonly string[]): readonly AccessRoute[] => [
  {
    path: '/access',
    method: 'GET',
    by: null,
    act: (request) => ({ code: 'done', ...access.now(request, askedPage(request)) }),
  },
  {
    path: '/access/devices',
    method: 'GET',
    by: 'lead',
    act: (_, device) =>
      device ? { code: 'done', ...access.list(device) } : { code: 'not-joined' },
  },
  takes('/access/make', null, BODIES.make, (body, request) => access.make(request, body)),
  takes('/access/sign-on', null, BODIES.signOn, (body, request) => access.signOn(request, body)),
  takes('/access/join', null, BODIES.join, (body, request) => access.join(request, body)),
  takes('/access/codes', 'lead', BODIES.codes, (body, _, device) => {
    const given = access.code(device, body)
    if (given.code !== 'done') return given
    return { ...given, addresses: addresses().map((url) => `${url}join#${given.typed}`) }
  }),
  takes('/access/remove', 'lead', BODIES.remove, ({ device }) => ({
    code: access.remove(device) ? 'done' : 'not-it',
  })),
  takes('/access/station', 'lead', BODIES.move, (wanted) => ({
    code: access.move(wanted) ? 'done' : 'not-it',
  })),
  takes('/access/adults', 'lead', BODIES.adults, (body, request) => access.addAdult(request, body)),
  takes('/access/adults/remove', 'lead', BODIES.removeAdult, (body, request) =>
    access.removeAdult(request, body),
  ),
  takes('/access/passphrase', 'pick-up', BODIES.passphrase, (body, request) =>
    access.changePassphrase(request, body),
  ),
  takes('/access/sign-off', 'pick-up', BODIES.nothing, (_, __, device) => {
    access.signOff(device)
    return { code: 'done', token: null }
  }),
]

const MOST_BYTES = 16_384

const parseJson = (body: Buffer): unknown => {
  try {
    return JSON.parse(body.toString('utf8'))
  } catch {
    return undefined
  }
}

/** All below /access, each for the devices that it names. */
export const accessRoutes = ({
  access,
  addresses,
  secure,
  more,
  log,
}: {
  readonly access: Access
  /** What else is answered there. */
  readonly more: readonly AccessRoute[]
  /** Of the first page, as tablets reach it. */
  readonly addresses: () => readonly string[]
  /** TLS ends in this server. */
  readonly secure: boolean
  readonly log: Logger
}): readonly Route[] => {
  const answerOf = ({ by, method, act }: AccessRoute, { request, body }: Asked) => {
    const device = by === null ? null : access.deviceOf(request)
    if (by !== null && device === null) return { code: 'not-joined' } as const
    if (by !== null && device !== null && !mayActAs(device.role, by))
      return { code: 'not-yours' } as const
    return act(request, device, method === 'GET' ? undefined : parseJson(body))
  }
  const answer = (route: AccessRoute) => async (asked: Asked) => {
    const { response } = asked
    try {
      const { token, ...told }: Answered = await answerOf(route, asked)
      if (TOLD_THE_LEAD.has(told.code)) access.tries.refused()
      if (token !== undefined)
        response.setHeader('Set-Cookie', setCookie(access.house, token, secure))
      sendJson(response, STATUS[told.code], told)
    } catch (error) {
      log.error({ err: error, path: route.path }, 'who may in was not answered')
      sendJson(response, STATUS.failed, { code: 'failed' })
    }
  }
  return [...routesOf(access, addresses), ...more].map((route) => ({
    path: route.path,
    method: route.method,
    answer: answer(route),
    ...(route.method === 'POST'
      ? { body: { types: ['application/json'], mostBytes: MOST_BYTES } }
      : {}),
  }))
}
