import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { stationSchema } from '#lib/menu/schema.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'

/** The station that a new data folder starts with. */
export const demoStation: StationDocument = stationSchema.parse(demo)
