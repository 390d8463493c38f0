import { componentOf } from '#lib/menu/find.ts'
import type { Pan } from '#lib/menu/station-document.ts'
import { panUsableMl } from '#lib/quantity/pans.ts'
import { densityGPerMl } from '#lib/quantity/portion.ts'
import type { RunningState } from '#lib/service/state.ts'

const MOST_PIECES = 500

/** Heaped, brim-full and dense food stays under this many times the usable capacity. */
const HEAPED = 1.5

/** Stands in where no capacity is known: a full-size pan, 6 in deep, to the brim. */
const LARGEST_ML = 20_000

/**
 * The most that a pan can be said to hold, in its component's unit: half again the usable capacity
 * by the component's density (1 g/mL where none is known), or 500 pieces. More is a slip of the finger.
 */
export const mostInPan = (state: RunningState, pan: Pan): number => {
  const component = componentOf(state.station, pan.component)
  if (state.portions[component.id]?.unit === 'piece') return MOST_PIECES
  const gPerMl =
    component.portion.tool === 'scoop' ? densityGPerMl(component.portion.gPerCup, 1, 'cup') : 1
  return Math.round((panUsableMl(pan.size, pan.depthIn) ?? LARGEST_ML) * gPerMl * 1000 * HEAPED)
}
