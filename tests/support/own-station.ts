/** Own stations of a house without the screens that set them up: published straight into its file. */
import { join } from 'node:path'
import { pino } from 'pino'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { beginDemo } from '#server/demo/open-demo.ts'
import { demoStation } from '#server/demo-station.ts'
import { openHouse } from '#server/houses/open-house.ts'
import { createServerClock } from '#server/rail/clock.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'

/** Where the demo's files lie in a data folder. */
export const demoIn = (data: string): string => join(data, 'demo')

/** Publishes documents in a data folder that no server has open, the demo's as an own one where none is said. */
export const publishIn = async (
  data: string,
  ...documents: readonly StationDocument[]
): Promise<void> => {
  const house = openHouseDatabase({ path: join(data, 'house.db') })
  try {
    const stations = createSqliteStations({ house, parse: (json) => stationSchema.parse(json) })
    for (const one of documents.length > 0 ? documents : [demoStation])
      await stations.put(one.id, one)
  } finally {
    closeDurableDatabase(house)
  }
}

/** A real service of a station, opened and loaded as usual. @param now server's, epoch milliseconds */
export const realService = (station: StationDocument, now: number): readonly Command[] => [
  { type: 'open', station: station.id, kind: 'real' },
  ...openingCommands(station, now - 1_000),
]

/**
 * A data folder as it was before the demo was a house of its own: its line and its service, which is
 * open and loaded, lie among the own ones.
 */
export const olderFolder = async (data: string): Promise<string> => {
  const clock = createServerClock()
  const house = await openHouse({
    path: data,
    clock,
    logger: pino({ level: 'silent' }),
    fatal: (error) => {
      throw error
    },
    first: demoStation,
    begin: (services, stations) => beginDemo(services, stations.first(), clock.now()),
  })
  await house.finish()
  house.quiet()
  await house.closeStores()
  return data
}
