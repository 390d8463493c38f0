import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** The station that a new data folder starts with. */
export const demoStation: StationDocument = stationSchema.parse(demo)
