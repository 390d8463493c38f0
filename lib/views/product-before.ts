/** Pans that hold a product from before its label changed: they count as both until changed. */
import { findPan } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import { pansHolding } from '#lib/service/mixing.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Whether an ingredient only stands for what some pans still hold: nobody reads its label. */
export const isBefore = (ingredient: string): boolean => /--before(-\d+)?$/.test(ingredient)

const namesOf = (station: StationDocument, pans: readonly string[]): readonly string[] => {
  const components = pans.map((pan) => findPan(station, pan)?.component ?? pan)
  return [...new Set(components)].map(nameIn(station))
}

/** Names of the components of which a pan still holds an ingredient from before. */
export const pansBefore = (
  { station, mixing }: RunningState,
  ingredient: string,
): readonly string[] => namesOf(station, mixing[ingredient]?.pans ?? [])

/** Names of the components of which a pan holds food made with an ingredient. */
export const pansWith = (state: RunningState, ingredient: string): readonly string[] =>
  namesOf(state.station, pansHolding(state, ingredient))

/** Whether a pan still holds any product from before its label changed. */
export const holdsBefore = ({ mixing }: RunningState, pan: string): boolean =>
  Object.values(mixing).some((one) => one.pans.includes(pan))
