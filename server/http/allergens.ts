import { civilDate } from '#lib/measure/civil.ts'
import { type SheetAnswer, sheetFacts } from '#lib/rooms/care/views/allergen-sheet.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'

/** What /allergens tells of a station: of its open service; while none is, of its newest document. */
export const createAllergens =
  (deps: {
    /** Of the station's newest service. */
    readonly state: (station: string) => ServiceState | null
    readonly stations: Pick<KnownStations, 'first'>
    /** When a label of a document was last changed in the house. */
    readonly changedAt: (document: StationDocument) => number | null
    readonly now: () => number
  }) =>
  (): SheetAnswer => {
    const at = deps.now()
    const kept = deps.stations.first()
    const state = kept && deps.state(kept.station)
    const last = state !== null && isRunning(state) ? sheetFacts(state) : null
    if (state?.stage === 'open' && last !== null) return { at, facts: last }
    if (kept === null) return { at, facts: last }
    const isSame = last?.station.id === kept.station && last.revision === kept.revision
    const { document: station, revision } = kept
    const sinceLast = deps.changedAt(station) ?? 0
    const asOf = isSame && last.asOf !== null ? Math.max(last.asOf, sinceLast) : null
    return {
      at,
      facts: {
        station,
        revision,
        soiled: [],
        lent: [],
        asOf,
        ...(station.invented ? {} : { servedOn: civilDate(at, station.timeZone) }),
      },
    }
  }
