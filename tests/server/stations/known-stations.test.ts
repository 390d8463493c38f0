import { describe, expect, it } from 'vitest'
import { filled, unlabelled } from '#lib/station/filled.ts'
import { type Label, labelOf, UNREAD_LABEL } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { openKnownStations } from '#server/stations/known-stations.ts'
import { createMemoryStations } from '#tests/support/memory-stations.ts'

/** A house in which one label changed: of pita, its third. */
const createRoom = async (before: readonly StationDocument[] = [demoStation]) => {
  const stations = createMemoryStations({ parse: (json) => stationSchema.parse(json) })
  for (const document of before) await stations.put(document.id, document)
  const house = new Map<string, Label>()
  const known = await openKnownStations({
    stations,
    labels: {
      begin: (document) => {
        for (const one of document.ingredients)
          if (one.readOn !== null && !house.has(one.id)) house.set(one.id, labelOf(one))
      },
      filled: (document) =>
        filled(document, (id, product) =>
          product === null ? { label: house.get(id) ?? null } : null,
        ),
      versionsIn: ({ ingredients }) => (ingredients.length > 0 ? { pita: 3 } : {}),
    },
  })
  return { stations, known, house }
}

describe('the stations as the rail knows them', () => {
  it('[R20] the newest of each is known without asking the store', async () => {
    const { known } = await createRoom()
    expect(known.first()).toMatchObject({ station: 'alder-hall', revision: 1, labels: { pita: 3 } })
    expect(known.find('alder-hall')?.document).toEqual(demoStation)
    expect(known.find('nowhere')).toBeNull()
    expect(known.all().map(({ station }) => station)).toEqual(['alder-hall'])
  })

  it('[R21] is filled with the house’s labels as they are when it is asked for', async () => {
    const { known, house } = await createRoom()
    house.set('pita', UNREAD_LABEL)
    const pita = known.find('alder-hall')?.document.ingredients.find((one) => one.id === 'pita')
    expect(pita).toEqual({ id: 'pita', name: 'Pita bread', ...UNREAD_LABEL })
  })

  it('[R21] is put without labels, and those of what the house has none of are the house’s', async () => {
    const { known, stations, house } = await createRoom([])
    house.set('pita', UNREAD_LABEL)
    expect(await known.put(demoStation)).toBe(1)
    expect((await stations.latest('alder-hall'))?.document).toEqual(unlabelled(demoStation))
    expect(house.get('brown-rice')?.readOn).toBe('2026-11-20')
    const document = known.find('alder-hall')?.document
    expect(document?.ingredients.find((one) => one.id === 'pita')?.readOn).toBeNull()
    expect(await known.put({ ...demoStation, name: 'Second' })).toBe(2)
    expect(known.find('alder-hall')).toMatchObject({ revision: 2, document: { name: 'Second' } })
  })
})
