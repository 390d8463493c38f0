import { mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import {
  closeDurableDatabase,
  openDurableDatabase,
  requireSqlite,
  type SqliteDatabase,
} from '#server/store/durable-database.ts'
import { storeFaultOf } from '#tests/support/store-fault.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const jars = [
  'CREATE TABLE jars (number INTEGER PRIMARY KEY, label TEXT NOT NULL) STRICT',
  'CREATE TABLE lids (number INTEGER PRIMARY KEY) STRICT',
]
const setup = (path: string, versions = jars) => ({ path, applicationId: 0x4a61_7273, versions })

const setting = (database: SqliteDatabase, name: string) => database.pragma(name, { simple: true })

const fileWithJars = (path: string, count: number): void => {
  const database = openDurableDatabase(setup(path))
  const add = database.prepare('INSERT INTO jars (label) VALUES (?)')
  for (let jar = 1; jar <= count; jar += 1) add.run(`jar ${jar} `.padEnd(500, '.'))
  closeDurableDatabase(database)
}

describe('openDurableDatabase', () => {
  it('[L14] a new file syncs fully before and after the next writes, and when opened again', () => {
    const path = join(temporaryFolder(), 'jars.db')
    for (let opening = 1; opening <= 2; opening += 1) {
      const database = openDurableDatabase(setup(path))
      expect(setting(database, 'synchronous')).toBe(2)
      database.exec("INSERT INTO jars (label) VALUES ('figs')")
      expect(setting(database, 'synchronous')).toBe(2)
      expect(setting(database, 'journal_mode')).toBe('wal')
      expect(setting(database, 'locking_mode')).toBe('exclusive')
      expect(setting(database, 'fullfsync')).toBe(1)
      closeDurableDatabase(database)
    }
  })

  it('[L14] opening writes for real: each opening is counted in the file', () => {
    const path = join(temporaryFolder(), 'jars.db')
    fileWithJars(path, 1)
    const database = openDurableDatabase(setup(path))
    expect(database.prepare('SELECT value FROM meta').pluck().get()).toBe(2)
    closeDurableDatabase(database)
  })

  it('[L14] what cannot have a write-ahead log is refused as not durable', () => {
    expect(storeFaultOf(() => openDurableDatabase(setup(':memory:')))).toEqual({
      code: 'not-durable',
      path: ':memory:',
      setting: 'journal_mode',
      found: 'memory',
    })
  })

  it('[L22] a store that asks for it overwrites what it deletes', () => {
    const path = join(temporaryFolder(), 'jars.db')
    const database = openDurableDatabase({ ...setup(path), secureDelete: true })
    expect(setting(database, 'secure_delete')).toBe(1)
    closeDurableDatabase(database)
  })

  it.each(['3.7.0', '3.51.2', '3.50.9', '3.51', '2.99.99'])(
    '[L15] SQLite %s is refused',
    (found) => {
      expect(storeFaultOf(() => requireSqlite(found))).toEqual({
        code: 'old-sqlite',
        found,
        needed: '3.51.3',
      })
    },
  )

  it.each(['3.51.3', '3.51.10', '3.53.0', '4.0.0', '3.51.3.1'])(
    '[L15] SQLite %s will do',
    (found) => {
      expect(() => requireSqlite(found)).not.toThrow()
    },
  )

  it('[L16] a file of an older version is brought up, and keeps its rows', () => {
    const path = join(temporaryFolder(), 'jars.db')
    const old = openDurableDatabase(setup(path, jars.slice(0, 1)))
    old.exec("INSERT INTO jars (label) VALUES ('figs')")
    closeDurableDatabase(old)
    const database = openDurableDatabase(setup(path))
    expect(database.prepare('SELECT label FROM jars').pluck().all()).toEqual(['figs'])
    expect(database.prepare('SELECT count(*) FROM lids').pluck().get()).toBe(0)
    expect(setting(database, 'user_version')).toBe(2)
    closeDurableDatabase(database)
  })

  it('[L16] a file of a newer version is refused, and left as it is', () => {
    const path = join(temporaryFolder(), 'jars.db')
    fileWithJars(path, 1)
    const before = readFileSync(path)
    expect(storeFaultOf(() => openDurableDatabase(setup(path, jars.slice(0, 1))))).toEqual({
      code: 'newer-file',
      path,
      found: 2,
      known: 1,
    })
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  it('[L16] a bring-up that fails halfway leaves the old version whole', () => {
    const path = join(temporaryFolder(), 'jars.db')
    fileWithJars(path, 3)
    const broken = [...jars, 'CREATE TABLE labels (jar INTEGER) STRICT; not a sentence of SQL']
    expect(() => openDurableDatabase(setup(path, broken))).toThrow('syntax error')
    const database = openDurableDatabase(setup(path))
    expect(database.prepare('SELECT count(*) FROM jars').pluck().get()).toBe(3)
    expect(setting(database, 'user_version')).toBe(2)
    closeDurableDatabase(database)
  })

  it('[L17] a file that is no database is told as damaged, and left as it is', () => {
    const path = join(temporaryFolder(), 'jars.db')
    const words = 'Two jars of figs, one of plums. '.repeat(200)
    writeFileSync(path, words)
    expect(storeFaultOf(() => openDurableDatabase(setup(path))).code).toBe('damaged')
    expect(readFileSync(path, 'utf8')).toBe(words)
  })

  it('[L17] a database of another program or store is told as damaged, and left as it is', () => {
    const path = join(temporaryFolder(), 'jars.db')
    const other = new Database(path)
    other.exec('CREATE TABLE jars (number INTEGER)')
    other.close()
    const before = readFileSync(path)
    expect(storeFaultOf(() => openDurableDatabase(setup(path)))).toEqual({
      code: 'damaged',
      path,
      detail: 'application id 0',
    })
    expect(readFileSync(path).equals(before)).toBe(true)
    const ours = join(temporaryFolder(), 'jars.db')
    fileWithJars(ours, 1)
    const otherStore = { ...setup(ours), applicationId: 7 }
    expect(storeFaultOf(() => openDurableDatabase(otherStore)).code).toBe('damaged')
  })

  it.each([
    ['its header', 0],
    ['its list of tables', 2_000],
    ['pages in the middle', 3 * 4096],
    ['its last pages', 51_000],
  ])('[L17] a file with %s overwritten is told as damaged', (_, from) => {
    const path = join(temporaryFolder(), 'jars.db')
    fileWithJars(path, 100)
    const bytes = readFileSync(path)
    expect(bytes.length).toBeGreaterThan(from + 3000)
    writeFileSync(path, bytes.fill(0xa5, from, from + 3000))
    const fault = storeFaultOf(() => openDurableDatabase(setup(path)))
    expect(fault).toMatchObject({ code: 'damaged', path })
  })

  it('[L17] a file cut short is told as damaged', () => {
    const path = join(temporaryFolder(), 'jars.db')
    fileWithJars(path, 100)
    truncateSync(path, 5 * 4096)
    expect(storeFaultOf(() => openDurableDatabase(setup(path))).code).toBe('damaged')
  })

  it('[L19] where no file can be, the problem says what stands in the way', () => {
    const folder = temporaryFolder()
    const file = join(folder, 'notes.txt')
    writeFileSync(file, 'figs')
    mkdirSync(join(folder, 'jars.db'))
    const faultAt = (path: string) => storeFaultOf(() => openDurableDatabase(setup(path)))
    expect(faultAt(join(file, 'jars.db'))).toMatchObject({
      code: 'unwritable',
      at: file,
      reason: 'below-a-file',
    })
    expect(faultAt(join(folder, 'jars.db')).code).toBe('unwritable')
    expect(faultAt(join(folder, 'missing', 'jars.db')).code).toBe('unwritable')
    expect(faultAt('/proc/jars.db').code).toBe('unwritable')
  })
})
