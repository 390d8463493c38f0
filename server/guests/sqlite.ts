import type { ApartKind } from '#lib/access/apart.ts'
import type { ApartCount, Guests } from '#server/guests/port.ts'
import {
  closeDurableDatabase,
  openDurableDatabase,
  wipeDeleted,
} from '#server/store/durable-database.ts'

const versions = [
  `CREATE TABLE names (
     service TEXT NOT NULL,
     command TEXT NOT NULL,
     name TEXT NOT NULL,
     PRIMARY KEY (service, command)
   ) STRICT, WITHOUT ROWID;`,
  // Names and initials of before can't be told apart: they go at the close, as they were to.
  `CREATE TABLE apart (
     service TEXT NOT NULL,
     command TEXT NOT NULL,
     kind TEXT NOT NULL CHECK (kind IN ('name', 'reasons', 'text', 'initials')),
     body TEXT NOT NULL,
     PRIMARY KEY (service, command, kind)
   ) STRICT, WITHOUT ROWID;
   INSERT INTO apart SELECT service, command, 'name', name FROM names;
   DROP TABLE names;`,
  // What tasters can't eat; of guests it is in the order itself.
  `CREATE TABLE apart_now (
     service TEXT NOT NULL,
     command TEXT NOT NULL,
     kind TEXT NOT NULL CHECK (kind IN ('name', 'reasons', 'text', 'initials', 'needs')),
     body TEXT NOT NULL,
     PRIMARY KEY (service, command, kind)
   ) STRICT, WITHOUT ROWID;
   INSERT INTO apart_now SELECT service, command, kind, body FROM apart;
   DROP TABLE apart;
   ALTER TABLE apart_now RENAME TO apart;`,
]

interface Row {
  readonly command: string
  readonly kind: ApartKind
  readonly body: string
}

/**
 * Opens or creates the file of what is said of people, as its only user.
 * @throws {StoreProblem} any of its codes.
 */
export const openGuests = (setup: { readonly path: string }): Guests => {
  // 'LSgu' in ASCII.
  const database = openDurableDatabase({
    path: setup.path,
    applicationId: 0x4c53_6775,
    versions,
    secureDelete: true,
  })
  const add = database.prepare<[string, string, string, string]>(
    'INSERT INTO apart (service, command, kind, body) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING',
  )
  const rows = database.prepare<[string], Row>(
    'SELECT command, kind, body FROM apart WHERE service = ? ORDER BY command',
  )
  const services = database
    .prepare<[], string>('SELECT DISTINCT service FROM apart ORDER BY service')
    .pluck()
  const counts = database.prepare<[], ApartCount>(
    'SELECT service, kind, count(*) AS count FROM apart GROUP BY service, kind ORDER BY service, kind',
  )
  const remove = database.prepare<[string, string, string]>(
    'DELETE FROM apart WHERE service = ? AND command = ? AND kind = ?',
  )

  const putAll = database.transaction(
    (service: string, command: string, said: Parameters<Guests['put']>[2]) => {
      for (const { kind, body } of said) add.run(service, command, kind, body)
    },
  )

  const removeWhere = database.transaction((service: string, goes: (row: Row) => boolean) => {
    const gone = rows.all(service).filter(goes)
    for (const { command, kind } of gone) remove.run(service, command, kind)
    return gone.length
  })

  const removed = (service: string, goes: (row: Row) => boolean): number => {
    const count = removeWhere.immediate(service, goes)
    if (count > 0) wipeDeleted(database)
    return count
  }

  return {
    async put(service, command, said) {
      putAll.immediate(service, command, said)
    },
    async of(service, kind) {
      const found = rows.all(service).filter((row) => row.kind === kind)
      return Object.fromEntries(found.map(({ command, body }) => [command, body]))
    },
    async services() {
      return services.all()
    },
    async counts() {
      return counts.all()
    },
    async sweep(service, keep) {
      return removed(service, ({ command }) => !keep.has(command))
    },
    async forget(service, kinds, commands) {
      return removed(
        service,
        ({ command, kind }) =>
          kinds.includes(kind) && (commands === undefined || commands.includes(command)),
      )
    },
    async close() {
      closeDurableDatabase(database)
    },
  }
}
