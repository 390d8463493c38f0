/** A row below /menu: only for a device that leads or is in charge, answered by a code. */
import type { IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import type { z } from 'zod'
import { mayActAs } from '#lib/access/roles-granted.ts'
import type { MenuRefusal } from '#lib/editor/http.ts'
import type { Access } from '#server/access/access.ts'
import type { Asked, Route } from '#server/http/routes.ts'
import { sendJson } from '#server/http/sending.ts'

type Code = MenuRefusal | 'done'

const STATUS: Readonly<Partial<Record<string, number>>> = {
  done: 200,
  'not-joined': 401,
  'not-it': 403,
  'not-yours': 403,
  'no-such-station': 404,
  'no-such-revision': 404,
  'no-such-set': 404,
  'no-such-ingredient': 404,
  'no-such-product': 404,
  stale: 409,
  'has-problems': 409,
  'step-refused': 409,
  'too-large': 413,
  'too-many-tries': 429,
  failed: 500,
}

export interface MenuRoute {
  readonly path: string
  readonly method: 'GET' | 'POST'
  readonly mostBytes: number
  act(asked: MenuAsked): MenuCoded | Promise<MenuCoded>
}

/** What is answered: a code and what goes with it; codes beside the editor's own are refusals. */
export interface MenuCoded {
  readonly code: string
}

export interface MenuAsked {
  readonly request: IncomingMessage
  /** Of the address; empty where it isn't said. */
  readonly query: (name: string) => string
  /** JSON, parsed; undefined where it is none. */
  readonly body: unknown
}

const parseJson = (body: Buffer): unknown => {
  try {
    return JSON.parse(body.toString('utf8'))
  } catch {
    return undefined
  }
}

/** An address that is only read. */
export const shows = (path: string, act: MenuRoute['act']): MenuRoute => ({
  path,
  method: 'GET',
  mostBytes: 0,
  act,
})

const MOST_BYTES = 1_048_576

/** An address that takes a body of a shape. */
export const takesMenu = <Body>(
  path: string,
  schema: z.ZodType<Body>,
  act: (body: Body, request: IncomingMessage) => MenuCoded | Promise<MenuCoded>,
): MenuRoute => ({
  path,
  method: 'POST',
  mostBytes: MOST_BYTES,
  act: ({ body, request }) => {
    const parsed = schema.safeParse(body)
    return parsed.success
      ? act(parsed.data, request)
      : ({ code: 'not-as-asked' } satisfies { code: Code })
  },
})

/** The rows as they stand in the table of routes. */
export const menuRoutes = (
  access: Pick<Access, 'deviceOf' | 'tries'>,
  log: Logger,
  rows: readonly MenuRoute[],
): readonly Route[] => {
  const answerOf = (row: MenuRoute, { request, body }: Asked) => {
    const device = access.deviceOf(request)
    if (device === null || !mayActAs(device.role, 'lead')) {
      access.tries.refused()
      return { code: device === null ? 'not-joined' : 'not-yours' }
    }
    const { searchParams } = new URL(request.url ?? '/', 'http://station')
    return row.act({
      request,
      query: (name) => searchParams.get(name) ?? '',
      body: row.method === 'GET' ? undefined : parseJson(body),
    })
  }
  return rows.map((row) => ({
    path: row.path,
    method: row.method,
    ...(row.method === 'POST'
      ? { body: { types: ['application/json'], mostBytes: row.mostBytes } }
      : {}),
    answer: async (asked) => {
      try {
        const told = await answerOf(row, asked)
        sendJson(asked.response, STATUS[told.code] ?? 400, told)
      } catch (error) {
        log.error({ err: error, path: row.path }, 'the set-up was not answered')
        sendJson(asked.response, 500, { code: 'failed' })
      }
    },
  }))
}
