import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { mostMg } from '#lib/measure/pan-rules.ts'
import { panUsableMl } from '#lib/measure/pans.ts'
import { densityGPerMl } from '#lib/measure/portion.ts'
import { findBackup } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findPan } from '#lib/station/find.ts'
import type { Component, Pan } from '#lib/station/station-document.ts'

const MOST_PIECES = 500

/** Heaped, brim-full and dense food stays under this many times the usable capacity. */
const HEAPED = 1.5

/** Stands in where no capacity is known: a full-size pan, 6 in deep, to the brim. */
const LARGEST_ML = 20_000

const gPerMlOf = (component: Component): number | null =>
  'gPerCup' in component.portion ? densityGPerMl(component.portion.gPerCup, 1, 'cup') : null

/**
 * What a pan of the line or a back-up pan holds at most, usable and not to the brim, in its
 * component's unit; null where its capacity, or how heavy the food is, isn't known.
 */
export const holdsAtMost = (state: RunningState, id: string): number | null => {
  const pan = findPan(state.station, id)
  const backup = findBackup(state.station, id)
  const place = state.containers[id] ?? pan ?? backup
  const component = componentOf(state.station, pan?.component ?? backup?.component ?? '')
  if (!place || state.portions[component.id]?.unit === 'piece') return null
  const own = state.containers[id] ? null : (pan?.capacityFlOz ?? null)
  return mostMg(
    place.size,
    place.depthIn,
    gPerMlOf(component),
    own === null ? null : mlFrom(own, 'flOz'),
  )
}

/** What the empty pan weighs, milligrams; null where nobody weighed it. */
export const tareOf = (state: RunningState, id: string): number | null =>
  (
    state.containers[id] ??
    findPan(state.station, id) ??
    findBackup(state.station, id) ?? { tareMg: null }
  ).tareMg

/**
 * The most that a pan can be said to hold, in its component's unit: half again the usable capacity
 * by the component's density (1 g/mL where none is known), or 500 pieces. More is a slip of the finger.
 */
export const mostInPan = (
  state: RunningState,
  pan: Pick<Pan, 'component' | 'size' | 'depthIn'>,
): number => {
  const component = componentOf(state.station, pan.component)
  if (state.portions[component.id]?.unit === 'piece') return MOST_PIECES
  const gPerMl = gPerMlOf(component) ?? 1
  return Math.round((panUsableMl(pan.size, pan.depthIn) ?? LARGEST_ML) * gPerMl * 1000 * HEAPED)
}
