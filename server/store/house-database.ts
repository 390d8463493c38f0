import { openDurableDatabase, type SqliteDatabase } from '#server/store/durable-database.ts'

/** SQL from each version of the file to the next. */
export const houseVersions = [
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
  // The one passphrase of before becomes an adult's.
  `CREATE TABLE house (
     one INTEGER PRIMARY KEY CHECK (one = 1),
     id TEXT NOT NULL,
     made_at INTEGER,
     floor INTEGER NOT NULL
   ) STRICT;
   INSERT INTO house VALUES (1, lower(hex(randomblob(6))), NULL, 0);
   CREATE TABLE adults (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     key TEXT NOT NULL UNIQUE,
     role TEXT NOT NULL CHECK (role IN ('lead', 'in-charge')),
     n INTEGER NOT NULL CHECK (n > 1),
     r INTEGER NOT NULL CHECK (r > 0),
     p INTEGER NOT NULL CHECK (p > 0),
     salt BLOB NOT NULL CHECK (length(salt) >= 16),
     hash BLOB NOT NULL CHECK (length(hash) >= 32)
   ) STRICT;
   INSERT INTO adults
     SELECT 'a-' || lower(hex(randomblob(6))), 'Person in charge', 'person in charge', 'in-charge',
       n, r, p, salt, hash
     FROM passphrases WHERE holder = 'in-charge';
   DROP TABLE passphrases;
   CREATE TABLE devices (
     id TEXT PRIMARY KEY,
     token BLOB NOT NULL UNIQUE CHECK (length(token) = 32),
     name TEXT NOT NULL,
     role TEXT NOT NULL,
     station TEXT NOT NULL,
     adult TEXT,
     joined_at INTEGER NOT NULL,
     seen_at INTEGER NOT NULL,
     removed_at INTEGER
   ) STRICT;
   CREATE TABLE join_codes (
     hash BLOB PRIMARY KEY CHECK (length(hash) = 32),
     role TEXT NOT NULL,
     station TEXT NOT NULL,
     made_at INTEGER NOT NULL
   ) STRICT, WITHOUT ROWID;`,
  `CREATE TABLE retention (
     key TEXT PRIMARY KEY,
     body TEXT NOT NULL CHECK (json_valid(body))
   ) STRICT, WITHOUT ROWID;`,
  // Rows of drafts: an empty station is the house, a body of null is a row that was removed.
  `CREATE TABLE draft_rows (
     number INTEGER PRIMARY KEY,
     house TEXT NOT NULL,
     station TEXT NOT NULL,
     entity TEXT NOT NULL,
     body TEXT CHECK (body IS NULL OR json_valid(body)),
     revision INTEGER NOT NULL CHECK (revision > 0),
     UNIQUE (house, station, entity)
   ) STRICT;
   CREATE TABLE published (
     house TEXT NOT NULL,
     station TEXT NOT NULL,
     revision INTEGER NOT NULL CHECK (revision > 0),
     at INTEGER NOT NULL,
     adult TEXT NOT NULL,
     PRIMARY KEY (house, station, revision)
   ) STRICT, WITHOUT ROWID;`,
  // An empty product is the one in use; a body of null that nobody has read it.
  `CREATE TABLE labels (
     house TEXT NOT NULL,
     ingredient TEXT NOT NULL,
     product TEXT NOT NULL,
     version INTEGER NOT NULL CHECK (version >= 0),
     body TEXT NOT NULL CHECK (json_valid(body)),
     same INTEGER NOT NULL CHECK (same IN (0, 1)),
     read_at INTEGER,
     adult TEXT,
     PRIMARY KEY (house, ingredient, product, version)
   ) STRICT, WITHOUT ROWID;`,
  // Whether somebody opened the demo beside it, or closed it; null where nobody said.
  'ALTER TABLE house ADD COLUMN demo_open INTEGER;',
  `CREATE TABLE photos (
     number INTEGER PRIMARY KEY,
     house TEXT NOT NULL,
     hash TEXT NOT NULL CHECK (length(hash) = 64),
     body BLOB NOT NULL,
     at INTEGER NOT NULL,
     UNIQUE (house, hash)
   ) STRICT;`,
  // Whether who published it said that what it no longer names never touched.
  `ALTER TABLE published ADD COLUMN never_touched INTEGER NOT NULL DEFAULT 0
     CHECK (never_touched IN (0, 1));`,
  // A batch that is made to be tried, and what own batches made of their cards.
  `CREATE TABLE tastings (
     number INTEGER PRIMARY KEY,
     id TEXT NOT NULL UNIQUE,
     station TEXT NOT NULL,
     body TEXT NOT NULL CHECK (json_valid(body))
   ) STRICT;
   CREATE TABLE measured_yields (
     number INTEGER PRIMARY KEY,
     station TEXT NOT NULL,
     component TEXT NOT NULL,
     card TEXT NOT NULL CHECK (length(card) = 64),
     on_day TEXT NOT NULL,
     ratio REAL NOT NULL CHECK (ratio > 0),
     factor REAL CHECK (factor > 0),
     typed TEXT,
     load_portions INTEGER CHECK (load_portions > 0),
     tasting TEXT NOT NULL,
     UNIQUE (tasting, component)
   ) STRICT;`,
  // That a saved yield counts no more, or after all: no row of yields is changed by it.
  `CREATE TABLE yield_marks (
     number INTEGER PRIMARY KEY,
     station TEXT NOT NULL,
     yields TEXT NOT NULL,
     is_out INTEGER NOT NULL CHECK (is_out IN (0, 1)),
     at INTEGER NOT NULL,
     command TEXT NOT NULL UNIQUE
   ) STRICT;`,
]

/** 'LSho' in ASCII. */
export const HOUSE_ID = 0x4c53_686f

/**
 * Opens or creates the file of what outlives a service, as its only user. Its adapters share the
 * connection; whoever opened it closes it, with `closeDurableDatabase`.
 * @throws {StoreProblem} any of its codes.
 */
export const openHouseDatabase = (setup: { readonly path: string }): SqliteDatabase =>
  openDurableDatabase({ path: setup.path, applicationId: HOUSE_ID, versions: houseVersions })
