import { join } from 'node:path'
import { describe, expect, it, onTestFinished } from 'vitest'
import { stationSchema } from '#lib/station/schema.ts'
import { demoStation } from '#server/demo-station.ts'
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

/** The demo station as version 1 of documents had it. */
const asVersion1 = (): object => {
  const {
    allergenSet: _set,
    ownAllergens: _own,
    cautions: _cautions,
    recipes: _recipes,
    contacts: _contacts,
    backups: _backups,
    ...rest
  } = demoStation
  return {
    ...rest,
    version: 1,
    ingredients: rest.ingredients.map(({ claims: _claims, readBy: _by, ...one }) => one),
    components: rest.components.map(({ recipes: _of, ...one }) => ({
      ...one,
      ingredients: one.ingredients.length > 0 ? one.ingredients : [rest.ingredients[0]?.id],
    })),
  }
}

describe('the SQLite stations, their file', () => {
  it('[L23] a document of an older version is read as one of the newest, and stays as it was', async () => {
    const path = join(temporaryFolder(), 'house.db')
    const house = openHouseDatabase({ path })
    onTestFinished(() => closeDurableDatabase(house))
    const old = asVersion1()
    await createSqliteStations({ house, parse: (json) => json }).put('alder-hall', old)
    const stations = createSqliteStations({ house, parse: (json) => stationSchema.parse(json) })
    const read = await stations.latest('alder-hall')
    expect(read).toMatchObject({
      revision: 1,
      document: { version: 4, name: demoStation.name, contacts: null, recipes: [], backups: [] },
    })
    expect(read?.document.ingredients.map(({ claims, readBy }) => ({ claims, readBy }))).toEqual(
      demoStation.ingredients.map(() => ({ claims: {}, readBy: null })),
    )
    expect(await stations.list()).toEqual([read])
    const raw = createSqliteStations({ house, parse: (json) => json })
    expect((await raw.latest('alder-hall'))?.document).toEqual(old)
  })

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
