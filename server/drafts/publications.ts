/** When each revision of a station was published, and by whose passphrase. */
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export interface Publication {
  readonly station: string
  readonly revision: number
  /** Epoch milliseconds. */
  readonly at: number
  /** Id of the adult. */
  readonly adult: string
}

export interface Publications {
  keep(one: Publication): void
  of(station: string): readonly Publication[]
}

export const createPublications = (file: SqliteDatabase, house: string): Publications => {
  const put = file.prepare<[string, string, number, number, string]>(
    'INSERT OR IGNORE INTO published (house, station, revision, at, adult) VALUES (?, ?, ?, ?, ?)',
  )
  const of = file.prepare<[string, string], Publication>(
    'SELECT station, revision, at, adult FROM published WHERE house = ? AND station = ?',
  )
  return {
    keep: ({ station, revision, at, adult }) => {
      put.run(house, station, revision, at, adult)
    },
    of: (station) => of.all(house, station),
  }
}
