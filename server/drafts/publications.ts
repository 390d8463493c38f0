/** When each revision of a station was published, and by whose passphrase. */
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export interface Publication {
  readonly station: string
  readonly revision: number
  /** Epoch milliseconds. */
  readonly at: number
  /** Id of the adult. */
  readonly adult: string
  /** What it no longer names as touching never touched in the service that is open, by their word. */
  readonly neverTouched: boolean
}

export interface Publications {
  keep(one: Publication): void
  of(station: string): readonly Publication[]
  /** Whether that was said of a revision. */
  neverTouched(station: string, revision: number): boolean
}

export const createPublications = (file: SqliteDatabase, house: string): Publications => {
  const put = file.prepare<[string, string, number, number, string, number]>(
    `INSERT OR IGNORE INTO published (house, station, revision, at, adult, never_touched)
     VALUES (?, ?, ?, ?, ?, ?)`,
  )
  const of = file.prepare<[string, string], Omit<Publication, 'neverTouched'> & { never: number }>(
    `SELECT station, revision, at, adult, never_touched AS never
     FROM published WHERE house = ? AND station = ?`,
  )
  const never = file
    .prepare<[string, string, number], number>(
      'SELECT never_touched FROM published WHERE house = ? AND station = ? AND revision = ?',
    )
    .pluck()
  return {
    keep: ({ station, revision, at, adult, neverTouched }) => {
      put.run(house, station, revision, at, adult, neverTouched ? 1 : 0)
    },
    of: (station) =>
      of
        .all(house, station)
        .map(({ never: said, ...one }) => ({ ...one, neverTouched: said === 1 })),
    neverTouched: (station, revision) => never.get(house, station, revision) === 1,
  }
}
