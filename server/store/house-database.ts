import { openDurableDatabase, type SqliteDatabase } from '#server/store/durable-database.ts'

const versions = [
  `CREATE TABLE stations (
     number INTEGER PRIMARY KEY,
     station TEXT NOT NULL,
     revision INTEGER NOT NULL CHECK (revision > 0),
     body TEXT NOT NULL CHECK (json_valid(body)),
     UNIQUE (station, revision)
   ) STRICT;`,
  `CREATE TABLE passphrases (
     holder TEXT PRIMARY KEY,
     n INTEGER NOT NULL CHECK (n > 1),
     r INTEGER NOT NULL CHECK (r > 0),
     p INTEGER NOT NULL CHECK (p > 0),
     salt BLOB NOT NULL CHECK (length(salt) >= 16),
     hash BLOB NOT NULL CHECK (length(hash) >= 32)
   ) STRICT, WITHOUT ROWID;`,
  `CREATE TABLE service_records (
     number INTEGER PRIMARY KEY,
     service TEXT NOT NULL,
     station TEXT NOT NULL,
     opened_at INTEGER NOT NULL,
     revision INTEGER NOT NULL CHECK (revision > 0),
     body TEXT NOT NULL CHECK (json_valid(body)),
     UNIQUE (service, revision)
   ) STRICT;`,
]

/**
 * Opens or creates the file of what outlives a service, as its only user. Its adapters share the
 * connection; whoever opened it closes it, with `closeDurableDatabase`.
 * @throws {StoreProblem} any of its codes.
 */
export const openHouseDatabase = (setup: { readonly path: string }): SqliteDatabase =>
  // 'LSho' in ASCII.
  openDurableDatabase({ path: setup.path, applicationId: 0x4c53_686f, versions })
