import type { Guests } from '#server/guests/port.ts'
import {
  closeDurableDatabase,
  emptyWriteAheadLog,
  openDurableDatabase,
} from '#server/store/durable-database.ts'

const versions = [
  `CREATE TABLE names (
     service TEXT NOT NULL,
     command TEXT NOT NULL,
     name TEXT NOT NULL,
     PRIMARY KEY (service, command)
   ) STRICT, WITHOUT ROWID;`,
]

/**
 * Opens or creates the file of names, as its only user.
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
  const add = database.prepare<[string, string, string]>(
    'INSERT INTO names (service, command, name) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
  )
  const names = database.prepare<[string], { command: string; name: string }>(
    'SELECT command, name FROM names WHERE service = ? ORDER BY command',
  )
  const services = database
    .prepare<[], string>('SELECT DISTINCT service FROM names ORDER BY service')
    .pluck()
  const removeOne = database.prepare<[string, string]>(
    'DELETE FROM names WHERE service = ? AND command = ?',
  )
  const removeAll = database.prepare<[string]>('DELETE FROM names WHERE service = ?')

  const removeOrphans = database.transaction((service: string, keep: ReadonlySet<string>) => {
    const orphans = names.all(service).filter(({ command }) => !keep.has(command))
    for (const { command } of orphans) removeOne.run(service, command)
    return orphans.length
  })

  /** Zeroed rows still lie in older copies of their pages: in the write-ahead log and in gaps. */
  const wipe = () => {
    database.exec('VACUUM')
    emptyWriteAheadLog(database)
  }

  return {
    async put(service, command, name) {
      add.run(service, command, name)
    },
    async namesOf(service) {
      return Object.fromEntries(names.all(service).map(({ command, name }) => [command, name]))
    },
    async services() {
      return services.all()
    },
    async sweep(service, keep) {
      const removed = removeOrphans.immediate(service, keep)
      if (removed > 0) wipe()
      return removed
    },
    async forget(service) {
      removeAll.run(service)
      wipe()
    },
    async close() {
      closeDurableDatabase(database)
    },
  }
}
