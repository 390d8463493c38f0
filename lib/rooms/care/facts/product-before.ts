/** Pans that hold a product from before its label changed: they count as both until changed. */

import { componentHeldIn, pansHolding } from '#lib/rooms/care/facts/mixing.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** Whether an ingredient only stands for what some pans still hold: nobody reads its label. */
export const isBefore = (ingredient: string): boolean => /--before(-\d+)?$/.test(ingredient)

const namesOf = (state: RunningState, pans: readonly string[]): readonly string[] => {
  const components = pans.map((pan) => componentHeldIn(state, pan) ?? pan)
  return [...new Set(components)].map(nameIn(state.station))
}

/** Names of the components of which a pan still holds an ingredient from before. */
export const pansBefore = (state: RunningState, ingredient: string): readonly string[] =>
  namesOf(state, state.mixing[ingredient]?.pans ?? [])

/** Names of the components of which a pan holds food made with an ingredient. */
export const pansWith = (state: RunningState, ingredient: string): readonly string[] =>
  namesOf(state, pansHolding(state, ingredient))

/** Whether a pan still holds any product from before its label changed. */
export const holdsBefore = ({ mixing }: RunningState, pan: string): boolean =>
  Object.values(mixing).some((one) => one.pans.includes(pan))

/** Whether washing a pan before a load says something: others, or the product before, were in it. */
export const washingMatters = (state: RunningState, pan: string): boolean =>
  (state.pans[pan]?.soiledBy.length ?? 0) > 0 ||
  holdsBefore(state, pan) ||
  Object.values(state.lent).some(({ pans }) => pans.includes(pan))
