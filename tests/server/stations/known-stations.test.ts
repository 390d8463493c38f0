import { describe, expect, it } from 'vitest'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { openKnownStations } from '#server/stations/known-stations.ts'
import type { Stations } from '#server/stations/port.ts'
import { createMemoryStations } from '#tests/support/memory-stations.ts'

const named = (name: string): StationDocument => ({ ...demoStation, name })

/** A service that has made the document's revision. */
const at = (revision: number, name: string): ServiceState => ({
  ...NOT_OPENED,
  revision,
  station: named(name),
})

const createRoom = async (change: Partial<Stations<StationDocument>> = {}) => {
  const stations = createMemoryStations({ parse: (json) => stationSchema.parse(json) })
  await stations.put(demoStation.id, demoStation)
  const faults: unknown[] = []
  const known = await openKnownStations({
    stations: { ...stations, ...change },
    fatal: (error) => faults.push(error),
  })
  return { stations, known, faults }
}

describe('the stations as the rail knows them', () => {
  it('[R20] the newest of each is known without asking the store', async () => {
    const { known } = await createRoom()
    expect(known.first()).toMatchObject({ station: 'alder-hall', revision: 1 })
    expect(known.find('alder-hall')?.document).toEqual(demoStation)
    expect(known.newestRevision('alder-hall')).toBe(1)
    expect(known.find('nowhere')).toBeNull()
    expect(known.newestRevision('nowhere')).toBeNull()
  })

  it('[R21] what a service made is known at once, and kept under its revision', async () => {
    const { known, stations, faults } = await createRoom()
    known.take(at(2, 'Second'))
    expect(known.newestRevision('alder-hall')).toBe(2)
    expect(known.find('alder-hall')?.document.name).toBe('Second')
    known.take(at(4, 'Fourth'))
    await known.idle()
    expect(await stations.latest('alder-hall')).toMatchObject({
      revision: 4,
      document: { name: 'Fourth' },
    })
    expect(faults).toEqual([])
  })

  it('[R21] what is not ahead, or no service, changes nothing', async () => {
    const { known, stations } = await createRoom()
    known.take(at(1, 'First'))
    known.take(NOT_OPENED)
    await known.idle()
    expect(await stations.latest('alder-hall')).toMatchObject({
      revision: 1,
      document: { name: demoStation.name },
    })
  })

  it('[R22] a store that can not keep it is a fault, told once', async () => {
    const failure = Object.assign(new Error('disk I/O error'), { code: 'SQLITE_IOERR_WRITE' })
    const { known, faults } = await createRoom({ putAs: () => Promise.reject(failure) })
    known.take(at(2, 'Second'))
    await known.idle()
    expect(faults).toEqual([failure])
  })
})
