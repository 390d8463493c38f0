import type { KeptStation, ParseDocument, Stations } from '#server/stations/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

interface Row {
  readonly station: string
  readonly revision: number
  readonly body: string
}

/** Station documents in the house's file. */
export const createSqliteStations = <Document>(setup: {
  readonly house: SqliteDatabase
  readonly parse: ParseDocument<Document>
}): Stations<Document> => {
  const { house, parse } = setup
  const add = house
    .prepare<[string, string, string], number>(
      `INSERT INTO stations (station, revision, body)
       VALUES (?, 1 + (SELECT coalesce(max(revision), 0) FROM stations WHERE station = ?), ?)
       RETURNING revision`,
    )
    .pluck()
  const latest = house.prepare<[string], Row>(
    `SELECT station, revision, body FROM stations
     WHERE station = ? ORDER BY revision DESC LIMIT 1`,
  )
  const list = house.prepare<[], Row>(
    `SELECT newest.station, newest.revision, newest.body
     FROM stations AS first JOIN stations AS newest ON newest.station = first.station
     WHERE first.number = (SELECT min(number) FROM stations WHERE station = first.station)
       AND newest.revision = (SELECT max(revision) FROM stations WHERE station = first.station)
     ORDER BY first.number`,
  )

  const keptOf = ({ station, revision, body }: Row): KeptStation<Document> => ({
    station,
    revision,
    document: parse(JSON.parse(body)),
  })

  return {
    async put(station, document) {
      const revision = add.get(station, station, JSON.stringify(document))
      if (revision === undefined) throw new Error(`No revision for station ${station}`)
      return revision
    },
    async latest(station) {
      const row = latest.get(station)
      return row === undefined ? null : keptOf(row)
    },
    async list() {
      return list.all().map(keptOf)
    },
  }
}
