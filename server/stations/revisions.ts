/** Earlier documents of a station, which are never changed. */
import type { ParseDocument } from '#server/stations/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export interface Revisions<Document> {
  /** Of a station, newest first. */
  of(station: string): readonly number[]
  /** null where there is no such revision. @throws what the given parse throws */
  at(station: string, revision: number): Document | null
}

export const createRevisions = <Document>(
  file: SqliteDatabase,
  parse: ParseDocument<Document>,
): Revisions<Document> => {
  const of = file
    .prepare<[string], number>(
      'SELECT revision FROM stations WHERE station = ? ORDER BY revision DESC',
    )
    .pluck()
  const at = file
    .prepare<[string, number], string>(
      'SELECT body FROM stations WHERE station = ? AND revision = ?',
    )
    .pluck()
  return {
    of: (station) => of.all(station),
    at: (station, revision) => {
      const body = at.get(station, revision)
      return body === undefined ? null : parse(JSON.parse(body))
    },
  }
}
