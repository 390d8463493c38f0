/** What may be done with food that is off sale. */

import { coolingOf, practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { heldByAt } from '#lib/rooms/food/facts/place-now.ts'
import { type CoolingWay, coolingWays } from '#lib/safety/cooling.ts'
import { type WayOut, waysOut } from '#lib/safety/holding.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

/** Of a pan or a batch that waits; a batch whose cooling missed a stage has ways of its own. */
export const waysFor = (
  state: RunningState,
  what: PlaceKind,
  id: string,
  now: number,
): readonly WayOut[] => {
  const { station } = state
  const placed = placeOf(state, { what, id })
  const heldBy = heldByAt(state, { what, id }, now)
  const offSale = placed?.offSale
  const component = findComponent(station, placed?.component ?? '')
  if (!offSale || offSale.why === 'cooling-missed' || !component) return [{ way: 'discard' }]
  if (heldBy !== 'hot' && heldBy !== 'cold') return [{ way: 'discard' }]
  return waysOut(
    {
      heldBy,
      lastGoodAt: offSale.lastGoodAt,
      reheatable: component.food.reheatable,
      timeProcedure: station.safety.timeProcedure,
    },
    now,
    limitsOf(station),
    practiceOf(station),
  )
}

/** What may be done with a batch whose cooling missed a stage. */
export const batchWays = (state: RunningState, id: string, now: number): readonly CoolingWay[] => {
  const batch = state.batches[id]
  const cooling = batch && coolingOf(state.station, batch, now)
  if (!batch || !cooling) return ['discard']
  return coolingWays(cooling, batch.cooledAgain, now, limitsOf(state.station))
}
