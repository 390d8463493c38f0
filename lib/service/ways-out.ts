/** What may be done with food that is off sale. */
import { findComponent } from '#lib/menu/find.ts'
import { type CoolingWay, coolingWays } from '#lib/safety/cooling.ts'
import { type WayOut, waysOut } from '#lib/safety/holding.ts'
import { batchHeldBy } from '#lib/service/batch-watch.ts'
import type { StockPlace } from '#lib/service/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { coolingOf, practiceOf } from '#lib/service/food-now.ts'
import { componentIn, stockOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Of a pan or a batch that waits; a batch whose cooling missed a stage has ways of its own. */
export const waysFor = (
  state: RunningState,
  what: StockPlace['what'],
  id: string,
  now: number,
): readonly WayOut[] => {
  const { station } = state
  const batch = what === 'batch' ? state.batches[id] : undefined
  const stock = what === 'batch' ? undefined : stockOf(state, what, id)
  const heldBy = batch ? batchHeldBy(station, batch, now) : stock?.food?.heldBy
  const offSale = (batch ?? stock)?.offSale
  const component = findComponent(station, batch?.component ?? componentIn(station, id) ?? '')
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
