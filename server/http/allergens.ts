import { civilDate } from '#lib/measure/civil.ts'
import { type SheetAnswer, sheetFacts } from '#lib/rooms/care/views/allergen-sheet.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { AskedPage, AskHere } from '#server/access/asked-page.ts'
import type { Houses } from '#server/houses/houses.ts'
import type { KeptStation } from '#server/stations/port.ts'

/** A sheet of a station: of its open service; while none is, of its newest document. */
export const sheetNow = (
  at: number,
  state: ServiceState | null,
  kept: KeptStation<StationDocument> | null,
  /** When a label of it was last changed in the house; null where none was. */
  changedAt: number | null,
): SheetAnswer => {
  const last = state !== null && isRunning(state) ? sheetFacts(state) : null
  if (state?.stage === 'open' && last !== null) return { at, facts: last }
  if (kept === null) return { at, facts: last }
  const isSame = last?.station.id === kept.station && last.revision === kept.revision
  const { document: station, revision } = kept
  const asOf = isSame && last.asOf !== null ? Math.max(last.asOf, changedAt ?? 0) : null
  const servedOn = station.invented ? {} : { servedOn: civilDate(at, station.timeZone) }
  return { at, facts: { station, revision, soiled: [], lent: [], asOf, ...servedOn } }
}

/** What /allergens tells, of the station that the page is of; of the demo it says so. */
export const createAllergens =
  (deps: {
    readonly houses: Pick<Houses, 'find'>
    readonly here: AskHere
    readonly now: () => number
  }) =>
  (page: AskedPage): SheetAnswer => {
    const house = deps.houses.find(page.house)
    const { station, page: which } = deps.here(page, null)
    const kept = station === null ? null : (house?.stations.find(station) ?? null)
    const rail = station === null ? null : house?.services.current(station)
    const changedAt = kept && house ? house.labels.changedAt(kept.document) : null
    const sheet = sheetNow(deps.now(), rail?.state() ?? null, kept, changedAt)
    return which === 'demo' ? { ...sheet, demo: true } : sheet
  }
