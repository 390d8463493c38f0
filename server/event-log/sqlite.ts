import { createAdvance } from '#server/event-log/advance.ts'
import {
  type CheckedAppend,
  checkedAppend,
  isOfSomething,
} from '#server/event-log/checked-append.ts'
import type { Appended, EventLog, Guard, LogEntry, StreamAppend } from '#server/event-log/port.ts'
import {
  closeDurableDatabase,
  openDurableDatabase,
  type SqliteDatabase,
  wipeDeleted,
} from '#server/store/durable-database.ts'
import { StoreProblem, storeProblemOf } from '#server/store/store-problem.ts'

const versions = [
  `CREATE TABLE services (
     number INTEGER PRIMARY KEY,
     service TEXT NOT NULL UNIQUE
   ) STRICT;
   CREATE TABLE entries (
     service TEXT NOT NULL,
     position INTEGER NOT NULL CHECK (position > 0),
     body TEXT NOT NULL CHECK (json_valid(body)),
     PRIMARY KEY (service, position)
   ) STRICT, WITHOUT ROWID;
   CREATE TABLE answers (
     service TEXT NOT NULL,
     command TEXT NOT NULL,
     fingerprint TEXT NOT NULL,
     body TEXT NOT NULL CHECK (json_valid(body)),
     PRIMARY KEY (service, command)
   ) STRICT, WITHOUT ROWID;`,
  `CREATE TABLE guards (
     key TEXT PRIMARY KEY,
     version INTEGER NOT NULL CHECK (version > 0)
   ) STRICT, WITHOUT ROWID;`,
]

const prepareAll = (database: SqliteDatabase) => ({
  head: database
    .prepare<[string], number | null>('SELECT max(position) FROM entries WHERE service = ?')
    .pluck(),
  services: database.prepare<[], string>('SELECT service FROM services ORDER BY number').pluck(),
  read: database
    .prepare<[string, number, number], string>(
      'SELECT body FROM entries WHERE service = ? AND position > ? ORDER BY position LIMIT ?',
    )
    .pluck(),
  answer: database.prepare<[string, string], { fingerprint: string; body: string }>(
    'SELECT fingerprint, body FROM answers WHERE service = ? AND command = ?',
  ),
  addService: database.prepare<[string]>('INSERT INTO services (service) VALUES (?)'),
  addEntry: database.prepare<[string, number, string]>(
    'INSERT INTO entries (service, position, body) VALUES (?, ?, ?)',
  ),
  addAnswer: database.prepare<[string, string, string, string]>(
    'INSERT INTO answers (service, command, fingerprint, body) VALUES (?, ?, ?, ?)',
  ),
  guard: database.prepare<[string], number>('SELECT version FROM guards WHERE key = ?').pluck(),
  guards: database.prepare<[], string>('SELECT key FROM guards ORDER BY key').pluck(),
  raiseGuard: database.prepare<[string, number]>(
    `INSERT INTO guards (key, version) VALUES (?, ?)
     ON CONFLICT (key) DO UPDATE SET version = excluded.version`,
  ),
  erase: [
    database.prepare<[string]>('DELETE FROM entries WHERE service = ?'),
    database.prepare<[string]>('DELETE FROM answers WHERE service = ?'),
    database.prepare<[string]>('DELETE FROM services WHERE service = ?'),
  ],
})

/** A sound file may still have lost rows; a stream with a hole must not be folded. */
const requireWhole = (database: SqliteDatabase, path: string): void => {
  const broken = database
    .prepare<[], string>(
      `SELECT service FROM entries GROUP BY service HAVING count(*) <> max(position)
       UNION SELECT service FROM services WHERE service NOT IN (SELECT service FROM entries)
       UNION SELECT service FROM entries WHERE service NOT IN (SELECT service FROM services)`,
    )
    .pluck()
    .get()
  if (broken === undefined) return
  throw new StoreProblem({ code: 'damaged', path, detail: `entries missing of ${broken}` })
}

/** The log over an open database of its own schema; {@link openSqliteLog} is the usual way in. */
export const createSqliteLog = <Entry extends LogEntry, Answer>(
  database: SqliteDatabase,
): EventLog<Entry, Answer> => {
  const sql = prepareAll(database)
  const advance = createAdvance()
  let commits = 0
  let failed: unknown = null

  const write = database.transaction(({ streams, guards }: CheckedAppend): Appended => {
    for (const { service, after, answers } of streams) {
      if ((sql.head.get(service) ?? 0) !== after) return 'conflict'
      for (const { command } of answers)
        if (sql.answer.get(service, command) !== undefined) return 'conflict'
    }
    for (const { key, expected } of guards)
      if ((sql.guard.get(key) ?? 0) !== expected) return 'conflict'
    for (const { key, raisedTo } of guards) sql.raiseGuard.run(key, raisedTo)
    for (const { service, after, entries, answers } of streams) {
      if (after === 0 && entries.length > 0) sql.addService.run(service)
      for (const { position, body } of entries) sql.addEntry.run(service, position, body)
      for (const { command, fingerprint, body } of answers)
        sql.addAnswer.run(service, command, fingerprint, body)
    }
    return 'committed'
  })

  const eraseAll = database.transaction((services: readonly string[]): number =>
    services
      .flatMap((service) => sql.erase.map((from) => from.run(service).changes))
      .reduce((gone, one) => gone + one, 0),
  )

  const commit = (checked: CheckedAppend): Appended => {
    // A sync that failed once may seem to work when tried again.
    if (failed !== null) throw failed
    try {
      return write.immediate(checked)
    } catch (error) {
      failed = storeProblemOf(error, database.name) ?? error
      throw failed
    }
  }

  const appendAll = async (
    streams: readonly StreamAppend<LogEntry, unknown>[],
    guards?: readonly Guard[],
  ): Promise<Appended> => {
    const checked = checkedAppend(streams, guards)
    const appended = commit(checked)
    if (appended === 'conflict' || !isOfSomething(checked)) return appended
    commits += 1
    for (const { service, after, entries } of streams)
      if (entries.length > 0) advance.tell(service, after + entries.length)
    return appended
  }

  const log = <Kind extends LogEntry, Told>(): EventLog<Kind, Told> => ({
    append: (service, after, entries, answers, guards) =>
      appendAll([{ service, after, entries, answers }], guards),
    appendAll,
    as: () => log(),
    async guard(key) {
      return sql.guard.get(key) ?? 0
    },
    async guards() {
      return sql.guards.all()
    },
    async read(service, after, limit) {
      // Rows were checked when written: a replay parses JSON and no more.
      return sql.read.all(service, after, limit ?? -1).map((body): Kind => JSON.parse(body))
    },
    async answerTo(service, command) {
      const found = sql.answer.get(service, command)
      if (found === undefined) return null
      return { command, fingerprint: found.fingerprint, answer: JSON.parse(found.body) }
    },
    async head(service) {
      return sql.head.get(service) ?? 0
    },
    async services() {
      return sql.services.all()
    },
    async erase(services) {
      if (failed !== null) throw failed
      try {
        if (eraseAll.immediate(services) > 0) wipeDeleted(database)
      } catch (error) {
        failed = storeProblemOf(error, database.name) ?? error
        throw failed
      }
    },
    onAdvance: advance.onAdvance,
    commits: () => commits,
    async close() {
      closeDurableDatabase(database)
    },
  })
  return log()
}

/** Opens the log's file, alone and durable. @throws {StoreProblem} any of its codes. */
export const openLogDatabase = (path: string): SqliteDatabase => {
  // 'LSlg' in ASCII.
  const database = openDurableDatabase({
    path,
    applicationId: 0x4c53_6c67,
    versions,
    secureDelete: true,
  })
  try {
    requireWhole(database, path)
    return database
  } catch (error) {
    database.close()
    throw error
  }
}

/**
 * Opens or creates the log of all services in one SQLite file, as its only user.
 * An append is one transaction and one sync, however many commands it holds.
 * @throws {StoreProblem} any of its codes.
 */
export const openSqliteLog = <Entry extends LogEntry, Answer>(setup: {
  readonly path: string
}): EventLog<Entry, Answer> => createSqliteLog(openLogDatabase(setup.path))
