import { join } from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { createSqliteRecords } from '#server/records/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { registerRecordsContract } from '#tests/server/records/contract.ts'
import { recordOf } from '#tests/support/records.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

registerRecordsContract('SQLite', () => {
  const house = openHouseDatabase({ path: join(temporaryFolder(), 'house.db') })
  onTestFinished(() => closeDurableDatabase(house))
  return createSqliteRecords(house)
})

it('[Z47] a record outlives the server', async () => {
  const path = join(temporaryFolder(), 'house.db')
  const house = openHouseDatabase({ path })
  await createSqliteRecords(house).put(recordOf(1, 3))
  closeDurableDatabase(house)
  const again = openHouseDatabase({ path })
  onTestFinished(() => closeDurableDatabase(again))
  expect(await createSqliteRecords(again).list()).toEqual([{ revision: 1, record: recordOf(1, 3) }])
})
