/** A station is carried over http: files and tables below /menu, for a device of the lead or of who is in charge. */
import type { IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import { mayActAs } from '#lib/access/roles-granted.ts'
import { carriedJsonSchema } from '#lib/carry/carried-schema.ts'
import { CHOSEN_ENCODINGS } from '#lib/carry/csv/bytes-to-text.ts'
import { TABLES } from '#lib/carry/csv/planned.ts'
import { MOST_TABLE_BYTES } from '#lib/carry/csv/table.ts'
import { MOST_FILE_BYTES } from '#lib/carry/read-carried.ts'
import type { Access } from '#server/access/access.ts'
import type { Carrying } from '#server/carry/carrying.ts'
import type { TableFile, Tables } from '#server/carry/tables.ts'
import type { BodyRule } from '#server/http/body.ts'
import { WITHIN_MS } from '#server/http/limits.ts'
import type { Asked, Route } from '#server/http/routes.ts'
import { sendFile, sendJson } from '#server/http/sending.ts'

const STATUS: Readonly<Record<string, number>> = {
  done: 200,
  'not-joined': 401,
  'not-yours': 403,
  'no-such-station': 404,
  stale: 409,
  'has-problems': 409,
  'wrong-file': 422,
  failed: 500,
}

interface Coded {
  readonly code: string
}

type Query = (name: string) => string

/** What is saved as a file: its text, its type and the end of its name. */
interface FileTold {
  readonly text: string
  readonly type: string
  readonly name: string
}

const FILE_BODY: BodyRule = {
  types: ['application/json'],
  mostBytes: MOST_FILE_BYTES,
  withinMs: WITHIN_MS.request,
}

const TABLE_BODY: BodyRule = { types: ['text/csv'], mostBytes: MOST_TABLE_BYTES }

const NOT_AS_ASKED: Coded = { code: 'not-as-asked' }

const sawIn = (query: Query): number | null =>
  /^\d{1,15}$/.test(query('saw')) ? Number(query('saw')) : null

const tableIn = (query: Query, bytes: Buffer): TableFile | null => {
  const what = TABLES.find((one) => one === query('what'))
  const chosen = query('encoding')
  const encoding = CHOSEN_ENCODINGS.find((one) => one === chosen) ?? null
  if (what === undefined || (chosen !== '' && encoding === null)) return null
  return { station: query('station'), what, bytes, encoding }
}

/** Rows of the table of routes. A body is read only of those who may send one. */
export const menuCarryRoutes = ({
  access,
  carrying,
  tables,
  log,
}: {
  readonly access: Pick<Access, 'deviceOf' | 'tries'>
  readonly carrying: Carrying
  readonly tables: Tables
  readonly log: Logger
}): readonly Route[] => {
  const refusal = (request: IncomingMessage): Coded | null => {
    const device = access.deviceOf(request)
    if (device !== null && mayActAs(device.role, 'lead')) return null
    access.tries.refused()
    return { code: device === null ? 'not-joined' : 'not-yours' }
  }

  const isFile = (told: Coded | FileTold): told is FileTold => 'text' in told && 'name' in told

  const route = (
    method: Route['method'],
    path: string,
    act: (query: Query, body: Buffer) => Coded | FileTold,
    body?: BodyRule,
  ): Route => ({
    path,
    method,
    ...(body === undefined ? {} : { body }),
    refuses: (request) => {
      const told = refusal(request)
      return told && { status: STATUS[told.code] ?? 400, told }
    },
    answer: ({ request, response, body: bytes }: Asked) => {
      const { searchParams } = new URL(request.url ?? '/', 'http://station')
      try {
        const told = act((name) => searchParams.get(name) ?? '', bytes)
        if (isFile(told)) sendFile(response, told)
        else sendJson(response, STATUS[told.code] ?? 400, told)
      } catch (error) {
        log.error({ err: error, path }, 'what is carried was not answered')
        sendJson(response, 500, { code: 'failed' })
      }
    },
  })

  return [
    route('GET', '/menu/schema', () => ({
      text: `${JSON.stringify(carriedJsonSchema(), null, 2)}\n`,
      type: 'application/schema+json',
      name: 'carried-station.schema.json',
    })),
    route('GET', '/menu/export', (query) => {
      const told = carrying.file(query('station'))
      if (told.code !== 'done') return told
      return { text: told.text, type: 'application/json', name: `${query('station')}.station.json` }
    }),
    route(
      'POST',
      '/menu/import/look',
      (query, body) => carrying.look(body.toString('utf8'), query('into')),
      FILE_BODY,
    ),
    route(
      'POST',
      '/menu/import',
      (query, body) => {
        const saw = sawIn(query)
        return saw === null
          ? NOT_AS_ASKED
          : carrying.take(body.toString('utf8'), query('into'), saw)
      },
      FILE_BODY,
    ),
    route('GET', '/menu/csv', (query) => {
      const what = TABLES.find((one) => one === query('what'))
      if (what === undefined) return NOT_AS_ASKED
      const told = tables.file(query('station'), what)
      if (told.code !== 'done') return told
      return { text: told.text, type: 'text/csv', name: `${query('station')}.${what}.csv` }
    }),
    route(
      'POST',
      '/menu/csv/look',
      (query, body) => {
        const file = tableIn(query, body)
        return file === null ? NOT_AS_ASKED : tables.look(file)
      },
      TABLE_BODY,
    ),
    route(
      'POST',
      '/menu/csv',
      (query, body) => {
        const [file, saw] = [tableIn(query, body), sawIn(query)]
        return file === null || saw === null ? NOT_AS_ASKED : tables.take(file, saw)
      },
      TABLE_BODY,
    ),
  ]
}
