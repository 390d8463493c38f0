import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createInCharge } from '#server/in-charge/in-charge.ts'
import { createSqlitePassphrases } from '#server/in-charge/sqlite.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase, openDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { registerPassphrasesContract } from '#tests/server/in-charge/contract.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const open = (path: string) => {
  const house = openHouseDatabase({ path })
  onTestFinished(() => closeDurableDatabase(house))
  return house
}

registerPassphrasesContract('SQLite', () =>
  createSqlitePassphrases(open(join(temporaryFolder(), 'house.db'))),
)

/** The house's file as version 1 of it was. */
const VERSION_1 = `CREATE TABLE stations (
  number INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision > 0),
  body TEXT NOT NULL CHECK (json_valid(body)),
  UNIQUE (station, revision)
) STRICT;`

describe('the SQLite passphrase, its file', () => {
  it('[L26] is there after a closing', async () => {
    const path = join(temporaryFolder(), 'house.db')
    const before = openHouseDatabase({ path })
    const first = createInCharge({ passphrases: createSqlitePassphrases(before), cost: CHEAP })
    expect(await first.setFirst('left of the grill')).toBe('set')
    closeDurableDatabase(before)
    const again = createInCharge({ passphrases: createSqlitePassphrases(open(path)), cost: CHEAP })
    expect(await again.prove('left of the grill', 'tablet')).toBe('right')
    expect(await again.prove('right of the grill', 'tablet')).toBe('wrong-passphrase')
  })

  it('[L16][L26] a file of before has none, and keeps its stations', async () => {
    const path = join(temporaryFolder(), 'house.db')
    const old = openDurableDatabase({ path, applicationId: 0x4c53_686f, versions: [VERSION_1] })
    await createSqliteStations({ house: old, parse: (json) => json }).put('grill', { sign: 'One' })
    closeDurableDatabase(old)
    const house = open(path)
    expect(await createSqlitePassphrases(house).kept()).toBeNull()
    expect(
      await createSqliteStations({ house, parse: (json) => json }).latest('grill'),
    ).toMatchObject({ revision: 1, document: { sign: 'One' } })
  })
})
