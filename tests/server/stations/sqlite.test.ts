import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { parseSign, registerStationsContract } from '#tests/server/stations/contract.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

registerStationsContract('SQLite', (parse) => {
  const house = openHouseDatabase({ path: join(temporaryFolder(), 'house.db') })
  onTestFinished(() => closeDurableDatabase(house))
  return createSqliteStations({ house, parse })
})

describe('the SQLite stations, their file', () => {
  it('[L23] revisions go on counting after a closing', async () => {
    const path = join(temporaryFolder(), 'house.db')
    const before = openHouseDatabase({ path })
    await createSqliteStations({ house: before, parse: parseSign }).put('grill', { sign: 'One' })
    closeDurableDatabase(before)
    const house = openHouseDatabase({ path })
    const stations = createSqliteStations({ house, parse: parseSign })
    expect(await stations.latest('grill')).toMatchObject({ revision: 1, document: { sign: 'One' } })
    expect(await stations.put('grill', { sign: 'Two' })).toBe(2)
    closeDurableDatabase(house)
  })
})
