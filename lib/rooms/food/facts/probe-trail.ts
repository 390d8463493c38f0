/**
 * What a probe carries: the order of readings in the log, by the name on the probe. A wiped probe moves
 * an allergen, so that one which nobody said was washed, rinsed and sanitized carries all it was in.
 */

import type { Reading } from '#lib/safety/readings.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import type { Probed } from '#lib/service/events/probed.ts'
import type { ProbedFood } from '#lib/service/food-state.ts'
import { findBackup } from '#lib/service/held-stock.ts'
import { findBatch } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

type Used = Pick<Reading, 'probe' | 'cleaned'>

/** One probe, however its name is typed. */
export const probeKey = (probe: string): string => probe.trim().toLowerCase()

/** Whatever was loaded on the line: what a probe may have been in where nobody followed it. */
export const anyFood = ({ accounts }: RunningState): readonly ProbedFood[] =>
  Object.entries(accounts).flatMap(([component, { loaded }]) =>
    loaded > 0 ? [{ component, behind: false }] : [],
  )

/** What a probe was in since it was last said to be cleaned. */
export const probeTrail = (state: RunningState, probe: string | null): readonly ProbedFood[] => {
  if (!state.probes || probe === null) return anyFood(state)
  const key = probeKey(probe)
  return Object.hasOwn(state.probes, key) ? (state.probes[key] ?? []) : []
}

/** What it brings into food of a component that is kept apart; null where it brings nothing there. */
export const carriedInto = (
  state: RunningState,
  component: string,
  { probe, cleaned }: Used,
): readonly string[] | null => {
  if (cleaned === true) return null
  const foreign = probeTrail(state, probe).filter(
    (one) => one.component !== component || !one.behind,
  )
  if (foreign.length === 0) return null
  const others = foreign.map((one) => one.component).filter((one) => one !== component)
  return [...new Set(others)].sort()
}

/** A batch may go into a protected back-up pan yet, and what a probe leaves in it goes along. */
const broughtIntoBatch = (state: RunningState, id: string, used: Used): Probed => {
  const component = findBatch(state, id)?.component
  const isKept = state.station.backups.some((one) => one.protected && one.component === component)
  const brought = component !== undefined && isKept ? carriedInto(state, component, used) : null
  return brought ? { brought } : {}
}

/**
 * As fields of an event: what a reading brings into a protected back-up pan, whose protection it ends, or
 * into a batch that may go there.
 */
export const broughtBy = (state: RunningState, { what, id }: Place, used: Used | null): Probed => {
  if (used && what === 'batch') return broughtIntoBatch(state, id, used)
  const backup = what === 'backup' ? state.backupPans[id] : undefined
  if (!used || !backup?.guarded || backup.amount <= 0) return {}
  const brought = carriedInto(state, backup.component, used)
  return brought ? { brought } : {}
}

/** As a field of an event: what is in a batch by a probe, and goes along into a protected back-up pan. */
export const carriedAlong = (
  state: RunningState,
  id: string,
  batch: string | null,
): { readonly carries?: readonly string[] } => {
  const carries = batch === null ? undefined : findBatch(state, batch)?.probedWith
  return carries && findBackup(state.station, id)?.protected ? { carries } : {}
}

/** Of what is put into an empty back-up pan that the document calls protected: as of a reading of it. */
export const broughtWithLoad = (state: RunningState, id: string, used: Used | null): Probed => {
  const place = findBackup(state.station, id)
  const brought = used && place?.protected ? carriedInto(state, place.component, used) : null
  return brought ? { brought } : {}
}
