/** Own stations of a house without the screens that set them up: published straight into its file. */
import { join } from 'node:path'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
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
