import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import {
  type NoteAnswer,
  type NoteEntry,
  type NoteLog,
  noteAnswer,
  noteEntries,
} from '#tests/server/event-log/notes.ts'
import { runChild } from '#tests/support/child.ts'
import { storeFaultOf } from '#tests/support/store-fault.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const appending = fileURLToPath(new URL('appending-child.ts', import.meta.url))
const opening = fileURLToPath(new URL('opening-child.ts', import.meta.url))
const tracer = ['/usr/bin/strace', '/usr/local/bin/strace'].find((path) => existsSync(path))

const openAt = (path: string): NoteLog => openSqliteLog<NoteEntry, NoteAnswer>({ path })

const syncsOf = (trace: string, file: string): number =>
  trace.split('\n').filter((line) => /\bf(data)?sync\(/.test(line) && line.includes(`/${file}>`))
    .length

describe('the SQLite log and processes', () => {
  it('[L13] a second process is told at once that the file is in use', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const log = openAt(path)
    const second = await runChild(opening, [path])
    expect(second.output.split('\n')[0]).toBe('in-use')
    expect(second.output).toContain(`another program has ${path} open`)
    expect(await log.append('lunch', 0, noteEntries(1, 1), [])).toBe('committed')
    await log.close()
    expect((await runChild(opening, [path])).output.trim()).toBe('opened')
  }, 60_000)

  it('[L13] a second connection of the same process is told as well', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const log = openAt(path)
    expect(storeFaultOf(() => openAt(path))).toEqual({ code: 'in-use', path })
    await log.close()
    await openAt(path).close()
  })

  it('[L13] there is no shared-memory file beside the log', async () => {
    const folder = temporaryFolder()
    const log = openAt(join(folder, 'log.db'))
    await log.append('lunch', 0, noteEntries(1, 1), [])
    expect(readdirSync(folder).sort()).toEqual(['log.db', 'log.db-wal'])
    await log.close()
    expect(readdirSync(folder)).toEqual(['log.db'])
  })

  it('[L11] all that was committed is there after the process was killed', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const killed = await runChild(appending, [path, '40', 'be killed'])
    expect(killed.signal).toBe('SIGKILL')
    const log = openAt(path)
    expect(await log.read('lunch', 0)).toEqual(noteEntries(1, 120))
    expect(await log.answerTo('lunch', 'turn-39')).toEqual(noteAnswer('turn-39', 120))
    expect(await log.append('lunch', 120, noteEntries(121, 121), [])).toBe('committed')
    await log.close()
  }, 60_000)

  it('[L11] killed at any moment, no append is there by halves and none that was told is missing', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const killed = await runChild(appending, [path, '1000000'], {
      onOutput: (output, kill) => {
        if (output.split('\n').length > 200) kill()
      },
    })
    expect(killed.signal).toBe('SIGKILL')
    const told = killed.output.split('\n').length - 1
    const log = openAt(path)
    const head = await log.head('lunch')
    expect(head % 3).toBe(0)
    expect(head / 3).toBeGreaterThanOrEqual(told)
    expect(await log.read('lunch', 0)).toEqual(noteEntries(1, head))
    const last = head / 3 - 1
    expect(await log.answerTo('lunch', `turn-${last}`)).toEqual(noteAnswer(`turn-${last}`, head))
    expect(await log.answerTo('lunch', `turn-${last + 1}`)).toBeNull()
    await log.close()
  }, 60_000)

  it('[L12] 50 appends are at least 50 syncs of the write-ahead log', async (context) => {
    if (tracer === undefined) context.skip('syncs are counted with strace, which is not here')
    const before = [tracer ?? '', '-f', '-y', '-e', 'trace=fsync,fdatasync']
    const folder = temporaryFolder()
    const runs = [0, 50].map((times) =>
      runChild(appending, [join(folder, `log-${times}.db`), `${times}`, 'be killed'], { before }),
    )
    const [opened, appended] = await Promise.all(runs)
    const syncsToOpen = syncsOf(opened?.errors ?? '', 'log-0.db-wal')
    expect(appended?.output.trim().split('\n')).toHaveLength(50)
    expect(syncsToOpen).toBeGreaterThanOrEqual(1)
    const syncs = syncsOf(appended?.errors ?? '', 'log-50.db-wal')
    expect(syncs - syncsToOpen).toBeGreaterThanOrEqual(50)
  }, 120_000)
})
