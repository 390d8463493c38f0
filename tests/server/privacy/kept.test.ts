import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { APART } from '#lib/access/apart.ts'
import { KEPT, type KeptRow } from '#lib/access/kept.ts'
import { CREW, isSent } from '#lib/access/seen/classes.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const ROWS: readonly KeptRow[] = KEPT

/** Of SQLite and of the store itself. */
const OF_THE_STORE = ['meta', 'sqlite_sequence']

const tablesIn = (path: string): readonly string[] => {
  const database = new Database(path, { readonly: true })
  try {
    return database
      .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
      .pluck()
      .all()
  } finally {
    database.close()
  }
}

describe('what is kept', () => {
  test('[G8] has a row for each table of each file, and no row for what isn’t there', async () => {
    const data = temporaryFolder()
    await (await startComposedStation(data)).end()
    const files = readdirSync(data).filter((name) => name.endsWith('.db'))
    expect(files.length).toBeGreaterThanOrEqual(3)
    const there = files.flatMap((file) =>
      tablesIn(join(data, file))
        .filter((table) => !OF_THE_STORE.includes(table))
        .map((table) => `${file} ${table}`),
    )
    const told = ROWS.flatMap(({ where }) =>
      'tables' in where ? where.tables.map((table) => `${where.file} ${table}`) : [],
    )
    expect([...new Set(told)].sort()).toEqual([...there].sort())
    expect(told.filter((one) => !one.startsWith('guests.db')).length).toBe(there.length - 1)
  })

  test('[G8] has a row for each kind that is set apart, and for each file of the folder', async () => {
    const kinds = ROWS.flatMap(({ where }) => ('kind' in where ? [where.kind] : []))
    expect(kinds.sort()).toEqual([...APART].sort())
    const data = temporaryFolder()
    const server = await startComposedStation(data)
    const files = new Set(readdirSync(data).map((name) => name.replace(/-(wal|shm)$/, '')))
    const told = ROWS.flatMap(({ where }) => ('file' in where ? [where.file] : []))
    expect([...files].filter((file) => !told.some((one) => one === file))).toEqual([])
    await server.end()
    const untilStop = ROWS.flatMap(({ where, until }) =>
      until === 'stop' && 'file' in where ? [where.file] : [],
    )
    expect(untilStop).toContain('scripts-token')
    expect(readdirSync(data).filter((name) => untilStop.some((one) => one === name))).toEqual([])
  })

  test('[G8] of guests goes at the close and when they are forgotten, and is shown to whom it is sent', () => {
    for (const row of ROWS) expect(row.forgets, row.id).toBe(row.until === 'close')
    // Asked for with a passphrase, and sent to nobody.
    expect(ROWS.find(({ id }) => id === 'reasons')?.sees).toEqual(['in-charge'])
    expect(CREW.filter((role) => isSent(role, 'reason'))).toEqual([])
    for (const [id, sent] of [
      ['names', 'name'],
      ['initials', 'initials'],
      ['streams', 'needs'],
    ] as const)
      expect(ROWS.find((row) => row.id === id)?.sees, id).toEqual(
        CREW.filter((role) => isSent(role, sent)),
      )
    expect(ROWS.filter(({ sees }) => sees.includes('pick-up'))).toEqual([])
  })
})
