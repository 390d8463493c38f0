import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Guests } from '#server/guests/port.ts'
import { openGuests } from '#server/guests/sqlite.ts'
import { closeDurableDatabase, openDurableDatabase } from '#server/store/durable-database.ts'
import { registerGuestsContract } from '#tests/server/guests/contract.ts'
import { storeFaultOf } from '#tests/support/store-fault.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

let folder = ''
let opened = 0

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'level-scoop-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

registerGuestsContract('SQLite', () => {
  opened += 1
  return openGuests({ path: join(folder, `guests-${opened}.db`) })
})

/** How often a word's bytes lie in the files of a folder, also where no row points to them. */
const timesIn = (path: string, word: string): number =>
  readdirSync(path)
    .map((file) => readFileSync(join(path, file)).toString('latin1').split(word).length - 1)
    .reduce((sum, times) => sum + times, 0)

/**
 * Names of two services in mixed order and lengths. Of these, splitting pages leaves copies in the
 * gaps between rows, which overwriting deleted rows alone does not reach.
 */
const putMany = async (guests: Guests): Promise<void> => {
  for (let name = 0; name < 300; name += 1) {
    const [service, word] = name % 2 === 1 ? ['lunch', 'Forgettable'] : ['supper', 'Keepsake']
    const command = `${(name * 7919) % 10_007}`.padStart(6, '0')
    await guests.put(service, command, [
      { kind: 'name', body: `${word} ${'x'.repeat((name * 31) % 200)}` },
    ])
  }
}

describe('the SQLite names, their file', () => {
  it('[L20] names outlive a closing', async () => {
    const path = join(temporaryFolder(), 'guests.db')
    const before = openGuests({ path })
    await before.put('lunch', 'c1', [{ kind: 'name', body: 'Ida' }])
    await before.close()
    const after = openGuests({ path })
    expect(await after.of('lunch', 'name')).toEqual({ c1: 'Ida' })
    await after.close()
  })

  it('[L13] the file has one user at a time', async () => {
    const path = join(temporaryFolder(), 'guests.db')
    const guests = openGuests({ path })
    expect(storeFaultOf(() => openGuests({ path }))).toEqual({ code: 'in-use', path })
    await guests.close()
  })

  it('[L22] the bytes of a forgotten service are in none of the files, those of others are', async () => {
    const path = temporaryFolder()
    const guests = openGuests({ path: join(path, 'guests.db') })
    await putMany(guests)
    expect(timesIn(path, 'Forgettable')).toBeGreaterThanOrEqual(150)
    await guests.forget('lunch', ['name'])
    expect(readdirSync(path).sort()).toEqual(['guests.db', 'guests.db-wal'])
    expect(timesIn(path, 'Forgettable')).toBe(0)
    expect(timesIn(path, 'Keepsake')).toBeGreaterThanOrEqual(150)
    await guests.close()
    expect(timesIn(path, 'Forgettable')).toBe(0)
    expect(timesIn(path, 'Keepsake')).toBe(150)
  }, 30_000)

  it('[L21] the bytes of a swept name are in none of the files', async () => {
    const path = temporaryFolder()
    const guests = openGuests({ path: join(path, 'guests.db') })
    await guests.put('lunch', 'kept', [{ kind: 'name', body: 'Keepsake' }])
    await guests.put('lunch', 'orphan', [{ kind: 'name', body: 'Forgettable' }])
    expect(timesIn(path, 'Forgettable')).toBeGreaterThanOrEqual(1)
    await guests.sweep('lunch', new Set(['kept']))
    expect([timesIn(path, 'Forgettable'), timesIn(path, 'Keepsake')]).toEqual([0, 1])
    await guests.close()
  })

  it('[L16] what a file of before has counts as names, to be gone at the close', async () => {
    const path = join(temporaryFolder(), 'guests.db')
    const before = openDurableDatabase({
      path,
      applicationId: 0x4c53_6775,
      versions: [
        'CREATE TABLE names (service TEXT NOT NULL, command TEXT NOT NULL, name TEXT NOT NULL, PRIMARY KEY (service, command)) STRICT, WITHOUT ROWID;',
      ],
    })
    before.exec("INSERT INTO names VALUES ('lunch', 'c1', 'Ida'), ('lunch', 'c2', 'KT')")
    closeDurableDatabase(before)
    const guests = openGuests({ path })
    expect(await guests.of('lunch', 'name')).toEqual({ c1: 'Ida', c2: 'KT' })
    await guests.close()
  })
})
