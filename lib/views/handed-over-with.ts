/** Builds that were handed over with food which was found bad later, for the person in charge. */
import type { FoundBecause, HandedOverBuild, HandedOverOf } from '#lib/service/handed-over-event.ts'
import { componentIn, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface HandedOverList {
  readonly what: HandedOverOf
  readonly id: string
  readonly component: string
  readonly because: FoundBecause
  readonly since: number
  /** The first that was handed over at the head. */
  readonly builds: readonly HandedOverBuild[]
}

/** Of a pan, a back-up pan or a batch; null where there is nobody to answer for. */
export const handedOverListOf = (
  state: RunningState,
  what: HandedOverOf,
  id: string,
): HandedOverList | null => {
  const entry = state.toTell[throwOutKey(what, id)]
  if (!entry) return null
  const component = state.batches[id]?.component ?? componentIn(state.station, id) ?? id
  const builds = [...entry.builds].sort((one, other) => one.at - other.at)
  return { ...entry, component, builds }
}

/**
 * Lists to answer for, the oldest food first. Not told as long as a reading is only missed and may
 * still be made good: its pan says it, while something is in it.
 */
export const handedOverLists = (state: RunningState): readonly HandedOverList[] =>
  Object.values(state.toTell)
    .filter(({ what, id, because }) => {
      const isOnlyLate = because === 'reading-missed' && (what === 'pan' || what === 'backup')
      const stock = isOnlyLate ? stockOf(state, what, id) : undefined
      return !(stock && stock.amount > 0 && stock.offSale?.why === 'reading-missed')
    })
    .flatMap(({ what, id }) => handedOverListOf(state, what, id) ?? [])
    .sort((one, other) => one.since - other.since)
