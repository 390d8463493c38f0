/** The pack list of a planned service, and what of it is packed. */
import { type PackItem, packList } from '#lib/rooms/prep/facts/pack-list.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Begins the id of each tick of a pack list: no task is called so. */
const PREFIX = 'pack-'

export const isPacking = (id: string): boolean => id.startsWith(PREFIX)

/** null where nobody planned its preparation. */
export const packOf = (state: RunningState): readonly PackItem[] | null => {
  const { plan, prep, station, expected, assemblers } = state
  return plan && prep ? packList({ station, plan, foods: prep.foods, expected, assemblers }) : null
}

export const isPacked = ({ prep }: Pick<RunningState, 'prep'>, id: string): boolean =>
  prep?.ticked[id] !== undefined
