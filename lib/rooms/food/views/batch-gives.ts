/** How much a batch is thought to have given, before whoever made it says so. */

import type { RunningState } from '#lib/service/state.ts'
import { componentOf, linePansOf } from '#lib/station/find.ts'

/**
 * Portions of one load of `loads`: as the house says how it is made again; else so that all of it
 * fills the pans of the line as they are usually loaded, at least one portion.
 * @param loads at least one
 */
export const usuallyGives = (
  { station }: Pick<RunningState, 'station'>,
  component: string,
  loads: number,
): number => {
  const { remake } = componentOf(station, component)
  if (remake !== null) return remake.portionsPerLoad
  const usual = linePansOf(station, component).reduce((sum, pan) => sum + pan.usualPortions, 0)
  return Math.max(1, Math.ceil(usual / loads))
}
