import { componentIn } from '#lib/service/held-stock.ts'
import { componentAt } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What a place holds, or what was taken out of one, by its name. */
export const foodName = (state: RunningState, what: string, id: string): string =>
  sayBuild(nameIn(state.station)(componentAt(state, what, id) ?? id))

/** Whole portions in a pan of the line. */
export const portionsIn = (state: RunningState, pan: string): number => {
  const each = state.portions[componentIn(state.station, pan) ?? '']?.amount ?? 1
  return Math.round((state.pans[pan]?.amount ?? 0) / each)
}
