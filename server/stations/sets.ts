/** Lines of other trades to begin from: invented, with labels that nobody has read. */
import breakfast from '#fixtures/stations/breakfast.json' with { type: 'json' }
import grainBowl from '#fixtures/stations/grain-bowl.json' with { type: 'json' }
import potatoBar from '#fixtures/stations/potato-bar.json' with { type: 'json' }
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface StationSet {
  /** What a station is said to begin from. */
  readonly from: string
  readonly document: StationDocument
}

const set = (from: string, document: unknown): StationSet => ({
  from,
  document: stationSchema.parse(document),
})

export const STATION_SETS: readonly StationSet[] = [
  set('grain-bowl', grainBowl),
  set('potato-bar', potatoBar),
  set('breakfast', breakfast),
]
