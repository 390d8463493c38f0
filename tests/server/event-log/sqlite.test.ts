import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createSqliteLog, openLogDatabase, openSqliteLog } from '#server/event-log/sqlite.ts'
import { registerLogContract } from '#tests/server/event-log/contract.ts'
import {
  type NoteAnswer,
  type NoteEntry,
  type NoteLog,
  noteAnswer,
  noteEntries,
  noteEntry,
} from '#tests/server/event-log/notes.ts'
import { storeFaultOf } from '#tests/support/store-fault.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

let folder = ''
let opened = 0

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'level-scoop-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

registerLogContract('SQLite', () => {
  opened += 1
  return openSqliteLog({ path: join(folder, `log-${opened}.db`) })
})

const openAt = (path: string): NoteLog => openSqliteLog<NoteEntry, NoteAnswer>({ path })

describe('the SQLite log, its file', () => {
  it('[L11] entries, answers and the order of services outlive a closing', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const before = openAt(path)
    await before.append('supper', 0, noteEntries(1, 2), [noteAnswer('first', 1)])
    await before.append('lunch', 0, noteEntries(1, 1), [])
    await before.close()
    const after = openAt(path)
    expect(await after.read('supper', 0)).toEqual(noteEntries(1, 2))
    expect(await after.answerTo('supper', 'first')).toEqual(noteAnswer('first', 1))
    expect(await after.services()).toEqual(['supper', 'lunch'])
    expect(after.commits()).toBe(0)
    await after.close()
  })

  it('[L27] the bytes of what was erased are in none of the files, and it opens as whole', async () => {
    const path = temporaryFolder()
    const log = openAt(join(path, 'log.db'))
    const timesIn = (word: string) =>
      readdirSync(path)
        .map((file) => readFileSync(join(path, file)).toString('latin1').split(word).length - 1)
        .reduce((sum, one) => sum + one, 0)
    // Of different lengths, so that pages split and leave copies in their gaps.
    for (let at = 0; at < 60; at += 1) {
      const note = (word: string) => `${word} ${'x'.repeat((at * 131) % 900)}`
      await log.append('lunch', at, noteEntries(at + 1, at + 1, note('Erasable')), [
        noteAnswer(`lunch ${at}`, at, note('Erasable')),
      ])
      await log.append('supper', at, noteEntries(at + 1, at + 1, note('Keepsake')), [])
    }
    expect(timesIn('Erasable')).toBeGreaterThanOrEqual(120)
    await log.erase(['lunch'])
    expect([timesIn('Erasable'), timesIn('Keepsake') >= 60]).toEqual([0, true])
    await log.close()
    expect([timesIn('Erasable'), timesIn('Keepsake')]).toEqual([0, 60])
    const again = openAt(join(path, 'log.db'))
    expect(await again.services()).toEqual(['supper'])
    await again.close()
  })

  it('[L17] a stream that lost an entry is told as damaged', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const log = openAt(path)
    await log.append('lunch', 0, noteEntries(1, 5), [])
    await log.close()
    const tampered = new Database(path)
    tampered.exec('DELETE FROM entries WHERE position = 3')
    tampered.close()
    expect(storeFaultOf(() => openAt(path))).toEqual({
      code: 'damaged',
      path,
      detail: 'entries missing of lunch',
    })
  })

  it('[L17] a service that lost all its entries is told as damaged', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const log = openAt(path)
    await log.append('lunch', 0, noteEntries(1, 5), [])
    await log.close()
    const tampered = new Database(path)
    tampered.exec('DELETE FROM entries')
    tampered.close()
    expect(storeFaultOf(() => openAt(path)).code).toBe('damaged')
  })

  it('[L18] after an error of the store nothing more is appended, and what was written stays', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const database = openLogDatabase(path)
    const log = createSqliteLog<NoteEntry, NoteAnswer>(database)
    await log.append('lunch', 0, noteEntries(1, 1), [])
    const pages = Number(database.pragma('page_count', { simple: true }))
    database.pragma(`max_page_count = ${pages + 1}`)
    const large = noteEntry(2, 'x'.repeat(50_000))
    const full = { code: 'unwritable', path, reason: 'full' }
    await expect(log.append('lunch', 1, [large], [noteAnswer('large', 2)])).rejects.toMatchObject({
      fault: full,
    })
    database.pragma('max_page_count = 1000000')
    await expect(log.append('lunch', 1, noteEntries(2, 2), [])).rejects.toMatchObject({
      fault: full,
    })
    expect(await log.read('lunch', 0)).toEqual(noteEntries(1, 1))
    expect(await log.answerTo('lunch', 'large')).toBeNull()
    await log.close()
    const again = openAt(path)
    expect(await again.append('lunch', 1, noteEntries(2, 2), [])).toBe('committed')
    await again.close()
  })
})
