import type { KeptRecord, ServiceRecords } from '#server/records/port.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

interface Row {
  readonly revision: number
  readonly body: string
}

/** Service records in the house's file. Only this server writes them, so they are read as they were put. */
export const createSqliteRecords = (house: SqliteDatabase): ServiceRecords => {
  const add = house
    .prepare<[string, string, number, string, string], number>(
      `INSERT INTO service_records (service, station, opened_at, revision, body)
       VALUES (?, ?, ?, 1 + (SELECT coalesce(max(revision), 0) FROM service_records WHERE service = ?), ?)
       RETURNING revision`,
    )
    .pluck()
  const list = house.prepare<[], Row>(
    `SELECT revision, body FROM service_records AS one
     WHERE revision = (SELECT max(revision) FROM service_records WHERE service = one.service)
     ORDER BY opened_at, number`,
  )
  return {
    async put(record) {
      const { service, station, openedAt } = record
      const revision = add.get(service, station, openedAt, service, JSON.stringify(record))
      if (revision === undefined) throw new Error(`No revision for the record of ${service}`)
      return revision
    },
    async list() {
      return list
        .all()
        .map(({ revision, body }): KeptRecord => ({ revision, record: JSON.parse(body) }))
    },
  }
}
