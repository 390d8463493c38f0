/** What of a component can still be served, and what is on its way, in portions. */

import { minutesUntil } from '#lib/estimate/batch-timing.ts'
import type { Arriving, Supply } from '#lib/estimate/run-out.ts'
import { afterLoad, afterTakenAway, type StockBelief, servings } from '#lib/estimate/scoop-bias.ts'
import { batchesInOrder } from '#lib/rooms/food/facts/food-now.ts'
import { behindOf } from '#lib/rooms/pans/facts/behind.ts'
import { LOAD_SD } from '#lib/rooms/pans/facts/beliefs.ts'
import { leftOfBatch, loadsToCome } from '#lib/service/batch-loads.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { isUsable, stockOf, stockPlacesOf, usableIn } from '#lib/service/held-stock.ts'
import { minuteAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent, pansOf } from '#lib/station/find.ts'

/** A load that is late is there in so many minutes at the earliest. Common practice, no source. */
const WALK_MINUTES = 2

/** What stands ready behind the line, in back-up pans and finished batches, in the component's unit. */
export const readyBehind = (state: RunningState, component: string): number =>
  batchesInOrder(state, component).reduce(
    (sum, id) => {
      const batch = state.batches[id]
      return sum + (batch ? leftOfBatch(batch) : 0)
    },
    behindOf(state, component, 'all'),
  )

/** Part of what its pans on the line hold that may be sold now, 0 to 1. */
const onSale = (state: RunningState, component: string): number => {
  let all = 0
  let sold = 0
  for (const { id, component: of } of pansOf(state.station)) {
    const pan = state.pans[id]
    if (of !== component || !pan) continue
    all += pan.amount
    sold += usableIn(state, 'pan', id)
  }
  return all > 0 ? sold / all : 1
}

/** Loads that aren't finished, of any batch, by the minute of the day at which each is expected. */
export const underwayOf = (
  state: RunningState,
  component: string,
  now: number,
): readonly Arriving[] => {
  const remake = findComponent(state.station, component)?.remake ?? null
  if (!remake) return []
  return Object.values(state.batches)
    .filter((one) => one.component === component)
    .flatMap((batch) =>
      Array.from({ length: loadsToCome(batch) }, (_, index): Arriving => {
        const load = batch.loadsDone + index
        const ready = minuteAt(state, batch.startedAt) + minutesUntil(remake, load + 1)
        return {
          at: Math.max(ready, minuteAt(state, now) + WALK_MINUTES),
          portions: remake.portionsPerLoad,
        }
      }),
    )
    .sort((one, other) => one.at - other.at)
}

/** What of it is thrown out, by the minute of the day at which it is. */
const endingOf = (state: RunningState, component: string, each: number): readonly Arriving[] => {
  const pans = stockPlacesOf(state, component).flatMap(({ what, id }) => {
    const stock = isUsable(state, what, id) ? stockOf(state, what, id) : null
    const until = stock ? lastsUntil(state, stock) : null
    return stock && until !== null ? [{ at: until, portions: stock.amount / each }] : []
  })
  const batches = batchesInOrder(state, component).flatMap((id) => {
    const batch = state.batches[id]
    const ends = [batch?.clock?.throwOutAt, batch?.dateMark?.endsAt].filter((at) => at != null)
    return batch && ends.length > 0
      ? [{ at: Math.min(...ends), portions: leftOfBatch(batch) / each }]
      : []
  })
  return [...pans, ...batches].map(({ at, portions }) => ({ at: minuteAt(state, at), portions }))
}

/** With its standard deviation, tickets apart, as the component is really scooped. */
export const supplyOf = (state: RunningState, component: string, now: number): Supply | null => {
  const portion = state.portions[component]
  const belief = state.beliefs[component]
  if (!portion || !belief) return null
  const share = onSale(state, component)
  const there: StockBelief = share < 1 ? afterTakenAway(belief, belief.left * (1 - share)) : belief
  const behind = readyBehind(state, component) / portion.amount
  const sd = portion.unit === 'piece' ? 0 : LOAD_SD
  const { mean, sd: spread } = servings(afterLoad(there, behind, sd * behind))
  const owed = (state.accounts[component]?.onTickets ?? 0) / portion.amount
  const ending = endingOf(state, component, portion.amount * (1 + belief.bias))
  return {
    mean: Math.max(0, mean - owed),
    sd: spread,
    arriving: underwayOf(state, component, now).map(({ at, portions }) => ({
      at,
      portions: portions / (1 + belief.bias),
    })),
    ...(ending.length > 0 ? { ending } : {}),
  }
}
