import type { EntityKey, Row } from '#lib/editor/draft.ts'
import { type DraftRows, type KeptRow, OF_THE_HOUSE } from '#server/drafts/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

interface Kept {
  readonly entity: string
  readonly body: string | null
  readonly revision: number
}

const rowIn = (body: string | null): Row | null =>
  body === null ? null : (JSON.parse(body) as Row)

/** Drafts in the house's file. */
export const createSqliteDrafts = (file: SqliteDatabase, house: string): DraftRows => {
  const stations = file
    .prepare<[string, string], string>(
      `SELECT station FROM draft_rows WHERE house = ? AND station <> ?
       GROUP BY station ORDER BY min(number)`,
    )
    .pluck()
  const of = file.prepare<[string, string], Kept>(
    'SELECT entity, body, revision FROM draft_rows WHERE house = ? AND station = ? ORDER BY number',
  )
  const newest = file
    .prepare<[string], number>('SELECT coalesce(max(revision), 0) FROM draft_rows WHERE house = ?')
    .pluck()
  const put = file.prepare<[string, string, string, string | null, number]>(
    `INSERT INTO draft_rows (house, station, entity, body, revision) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (house, station, entity)
     DO UPDATE SET body = excluded.body, revision = excluded.revision`,
  )
  const revision = (): number => newest.get(house) ?? 0

  return {
    stations: () => stations.all(house, OF_THE_HOUSE),
    of: (station) =>
      of.all(house, station).map(
        (one): KeptRow => ({
          entity: one.entity as EntityKey,
          row: rowIn(one.body),
          revision: one.revision,
        }),
      ),
    newest: revision,
    save: file.transaction((changes): number => {
      const next = revision() + 1
      for (const { station, entity, row } of changes)
        put.run(house, station, entity, row === null ? null : JSON.stringify(row), next)
      return next
    }).immediate as DraftRows['save'],
  }
}
