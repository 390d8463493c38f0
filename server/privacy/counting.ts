/** How much of what lib/access/kept.ts tells is there now, row by row. */
import type { ApartKind } from '#lib/access/apart.ts'
import { type HouseTable, KEPT, type Kept, type KeptId } from '#lib/access/kept.ts'
import type { KeptNow } from '#lib/access/kept-http.ts'
import { isLarderStream } from '#lib/larder/stream.ts'
import type { Guests } from '#server/guests/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

/** null where it lies in browsers. */
export type Counting = () => Promise<Readonly<Record<KeptId, KeptNow | null>>>

const COUNT: Readonly<Record<HouseTable, string>> = {
  service_records: 'SELECT count(*) FROM service_records',
  stations: 'SELECT count(*) FROM stations',
  draft_rows: 'SELECT count(*) FROM draft_rows WHERE body IS NOT NULL',
  published: 'SELECT count(*) FROM published',
  labels: 'SELECT count(*) FROM labels',
  photos: 'SELECT count(*) FROM photos',
  house: 'SELECT count(*) FROM house',
  adults: 'SELECT count(*) FROM adults',
  devices: 'SELECT count(*) FROM devices',
  join_codes: 'SELECT count(*) FROM join_codes',
  retention: 'SELECT count(*) FROM retention',
  tastings: 'SELECT count(*) FROM tastings',
  measured_yields: 'SELECT count(*) FROM measured_yields',
  yield_marks: 'SELECT count(*) FROM yield_marks',
}

export const createCounting = (ports: {
  readonly house: SqliteDatabase
  readonly guests: Pick<Guests, 'counts'>
  /** Services in the log. */
  readonly streams: () => Promise<readonly string[]>
  /** Keys of what is guarded in the log. */
  readonly guards: () => Promise<readonly string[]>
  /** When a service was opened, epoch milliseconds; null where nobody knows any more. */
  readonly openedAt: (service: string) => number | null
  readonly recorded: () => readonly { readonly openedAt: number }[]
}): Counting => {
  const rowsIn = (table: HouseTable): number =>
    ports.house.prepare<[], number>(COUNT[table]).pluck().get() ?? 0

  const since = (services: readonly string[]): number | null => {
    const known = services.flatMap((service) => ports.openedAt(service) ?? [])
    return known.length === 0 ? null : Math.min(...known)
  }

  const apart = async (kind: ApartKind): Promise<KeptNow> => {
    const own = (await ports.guests.counts()).filter((one) => one.kind === kind)
    return {
      count: own.reduce((sum, { count }) => sum + count, 0),
      oldest: since(own.map(({ service }) => service)),
    }
  }

  const nowOf = async ({ id, where }: Kept): Promise<KeptNow | null> => {
    if ('browser' in where) return null
    switch (where.file) {
      case 'guests.db':
        return apart(where.kind)
      case 'log.db': {
        if (id === 'guards') return { count: (await ports.guards()).length, oldest: null }
        const all = await ports.streams()
        const streams = all.filter((stream) => isLarderStream(stream) === (id === 'larder'))
        return { count: streams.length, oldest: since(streams) }
      }
      case 'house.db': {
        const count = where.tables.reduce((sum, table) => sum + rowsIn(table), 0)
        if (id !== 'records') return { count, oldest: null }
        const times = ports.recorded().map(({ openedAt }) => openedAt)
        return { count: times.length, oldest: times.length === 0 ? null : Math.min(...times) }
      }
      // Of the process that answers.
      default:
        return { count: 1, oldest: null }
    }
  }

  return async () => {
    const all = await Promise.all(KEPT.map(async (row) => [row.id, await nowOf(row)] as const))
    return Object.fromEntries(all) as Record<KeptId, KeptNow | null>
  }
}
