import { type SheetAnswer, sheetFacts } from '#lib/rooms/care/views/allergen-sheet.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'

/** What /allergens tells: of the open service; while none is, of the station's newest document. */
export const createAllergens =
  (deps: {
    readonly state: () => ServiceState | null
    readonly stations: Pick<KnownStations, 'first'>
    readonly now: () => number
  }) =>
  (): SheetAnswer => {
    const at = deps.now()
    const state = deps.state()
    const last = state !== null && isRunning(state) ? sheetFacts(state) : null
    if (state?.stage === 'open' && last !== null) return { at, facts: last }
    const kept = deps.stations.first()
    if (kept === null) return { at, facts: last }
    const isSame = last?.station.id === kept.station && last.revision === kept.revision
    const { document: station, revision } = kept
    return {
      at,
      facts: { station, revision, soiled: [], lent: [], asOf: isSame ? last.asOf : null },
    }
  }
