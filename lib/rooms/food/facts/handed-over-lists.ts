/** Builds that were handed over with food which was found bad later, for the person in charge. */

import type {
  FoundBecause,
  HandedOverBuild,
  HandedOverOf,
} from '#lib/service/events/handed-over-event.ts'
import { isOfStock, keyOf, stockOf } from '#lib/service/held-stock.ts'
import { componentAt } from '#lib/service/place.ts'
import { onShelf } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Food of a pan or a batch, the shelf of made food, or what a guest had before it was made again. */
export type HandedOverKind = 'food' | 'shelf' | 'build'

export interface HandedOverList {
  readonly what: HandedOverOf
  readonly id: string
  /** Of which component it is; the name of the build, or of the shelf, where it is of one of those. */
  readonly component: string
  readonly because: FoundBecause
  readonly since: number
  /** The first that was handed over at the head. */
  readonly builds: readonly HandedOverBuild[]
}

/** Of a pan, a back-up pan, a batch or the shelf; null where there is nobody to answer for. */
export const handedOverListOf = (
  state: RunningState,
  what: HandedOverOf,
  id: string,
): HandedOverList | null => {
  const entry = state.toTell[keyOf(what, id)]
  if (!entry) return null
  const component = componentAt(state, what, id) ?? id
  const builds = [...entry.builds].sort((one, other) => one.at - other.at)
  return { ...entry, component, builds }
}

/** A reading is only missed and may still be made good: its pan says it, or the shelf. */
const isToldByReading = (
  state: RunningState,
  list: Pick<HandedOverList, 'what' | 'id' | 'because'>,
): boolean => {
  if (list.because !== 'reading-missed') return false
  if (list.what === 'shelf') return state.shelf?.missed !== undefined && onShelf(state).length > 0
  const stock = isOfStock(list) ? stockOf(state, list.what, list.id) : undefined
  return stock !== undefined && stock.amount > 0 && stock.offSale?.why === 'reading-missed'
}

/**
 * Lists to answer for, the oldest food first. Not told as long as a reading is only missed and may
 * still be made good, while something is in its pan, or stands on the shelf.
 */
export const handedOverLists = (state: RunningState): readonly HandedOverList[] =>
  Object.values(state.toTell)
    .filter((one) => !isToldByReading(state, one))
    .flatMap(({ what, id }) => handedOverListOf(state, what, id) ?? [])
    .sort((one, other) => one.since - other.since)
