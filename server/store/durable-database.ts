import { statSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import { StoreProblem, storeProblemOf } from '#server/store/store-problem.ts'

export type SqliteDatabase = Database.Database

/** Older ones can lose committed writes when a checkpoint races (SQLite's release notes, 3.51.3). */
export const oldestSqlite = '3.51.3'

export interface DurableDatabaseSetup {
  readonly path: string
  /** Kept in the file's header, so that one store is never opened as another. Positive. */
  readonly applicationId: number
  /** SQL from each version of the file to the next; version 0 is an empty file. */
  readonly versions: readonly string[]
  /** Overwrites what is deleted with zeros. */
  readonly secureDelete?: boolean
}

/** @throws {StoreProblem} `old-sqlite` below {@link oldestSqlite}; versions are dotted numbers. */
export const requireSqlite = (found: string): void => {
  const needed = oldestSqlite.split('.').map(Number)
  const parts = found.split('.').map(Number)
  const first = needed.findIndex((part, place) => (parts[place] ?? 0) !== part)
  if (first === -1) return
  if ((parts[first] ?? 0) > (needed[first] ?? 0)) return
  throw new StoreProblem({ code: 'old-sqlite', found, needed: oldestSqlite })
}

const ask = (database: SqliteDatabase, pragma: string): string =>
  String(database.pragma(pragma, { simple: true }))

const requireSetting = (
  database: SqliteDatabase,
  path: string,
  setting: string,
  expected: string,
): void => {
  const found = ask(database, setting)
  if (found !== expected) throw new StoreProblem({ code: 'not-durable', path, setting, found })
}

const requireOurs = (database: SqliteDatabase, setup: DurableDatabaseSetup): number => {
  const { path, applicationId, versions } = setup
  const version = Number(ask(database, 'user_version'))
  const application = Number(ask(database, 'application_id'))
  const objects = Number(database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get())
  const empty = objects === 0 && version === 0 && application === 0
  if (!empty && (application !== applicationId || version < 1)) {
    throw new StoreProblem({ code: 'damaged', path, detail: `application id ${application}` })
  }
  if (version > versions.length) {
    throw new StoreProblem({ code: 'newer-file', path, found: version, known: versions.length })
  }
  return version
}

const requireSound = (database: SqliteDatabase, path: string): void => {
  const detail = ask(database, 'quick_check(1)')
  if (detail !== 'ok') throw new StoreProblem({ code: 'damaged', path, detail })
}

const bringUp = (database: SqliteDatabase, setup: DurableDatabaseSetup, from: number): void => {
  database
    .transaction(() => {
      if (from === 0) {
        database.pragma(`application_id = ${setup.applicationId}`)
        database.exec('CREATE TABLE meta (key TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT')
        database.exec("INSERT INTO meta VALUES ('openings', 0)")
      }
      for (const sql of setup.versions.slice(from)) database.exec(sql)
      database.pragma(`user_version = ${setup.versions.length}`)
      database.exec("UPDATE meta SET value = value + 1 WHERE key = 'openings'")
    })
    .immediate()
}

const setUp = (database: SqliteDatabase, setup: DurableDatabaseSetup): void => {
  requireSqlite(String(database.prepare('SELECT sqlite_version()').pluck().get()))
  // Before WAL: then no -shm file exists, and a second process is told at once.
  database.pragma('locking_mode = EXCLUSIVE')
  // Before the first write, so that a file of another program stays as it is.
  const version = requireOurs(database, setup)
  requireSound(database, setup.path)
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  // On a Mac only these reach the disk itself; elsewhere they change nothing.
  database.pragma('fullfsync = ON')
  database.pragma('checkpoint_fullfsync = ON')
  // A temporary file would hold rows outside the store.
  database.pragma('temp_store = MEMORY')
  if (setup.secureDelete) database.pragma('secure_delete = ON')
  bringUp(database, setup, version)
  // Only now: this build of SQLite may fall back to NORMAL at the first write in WAL mode.
  requireSetting(database, setup.path, 'synchronous', '2')
  requireSetting(database, setup.path, 'journal_mode', 'wal')
  requireSetting(database, setup.path, 'locking_mode', 'exclusive')
}

/** SQLite says only that it cannot open the file; this says why. */
const requireFolder = (path: string): void => {
  const folder = dirname(path)
  if (statSync(folder).isDirectory()) return
  throw new StoreProblem({
    code: 'unwritable',
    path,
    at: folder,
    reason: 'below-a-file',
    detail: 'ENOTDIR',
  })
}

/**
 * Opens or creates a SQLite file as its only user: every commit is on the disk when it returns
 * (WAL, synchronous FULL, read back after the first write), the file was checked, and its schema
 * is of the newest version known. A file of another program is left as it is.
 * @throws {StoreProblem} any of its codes.
 */
export const openDurableDatabase = (setup: DurableDatabaseSetup): SqliteDatabase => {
  let database: SqliteDatabase | null = null
  try {
    requireFolder(setup.path)
    database = new Database(setup.path, { timeout: 0 })
    setUp(database, setup)
    return database
  } catch (error) {
    database?.close()
    throw storeProblemOf(error, setup.path) ?? error
  }
}

/**
 * Moves everything from the write-ahead log into the file, and empties it.
 * @throws {StoreProblem} when it could not be emptied.
 */
export const emptyWriteAheadLog = (database: SqliteDatabase): void => {
  const busy = Number(database.pragma('wal_checkpoint(TRUNCATE)', { simple: true }))
  if (busy !== 0) throw new StoreProblem({ code: 'in-use', path: database.name })
}

/**
 * Takes what was deleted out of the files: zeroed rows still lie in older copies of their pages, in
 * the write-ahead log and in gaps. Takes as long as writing the whole file anew.
 * @throws {StoreProblem} when the write-ahead log could not be emptied.
 */
export const wipeDeleted = (database: SqliteDatabase): void => {
  database.exec('VACUUM')
  emptyWriteAheadLog(database)
}

/** Empties the write-ahead log and closes; does nothing where it is closed already. */
export const closeDurableDatabase = (database: SqliteDatabase): void => {
  if (!database.open) return
  emptyWriteAheadLog(database)
  database.close()
}
