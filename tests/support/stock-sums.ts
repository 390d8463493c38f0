/** What a component's pans hold in all, and what of it is free. */

import { behindOf, owedBehind } from '#lib/rooms/pans/facts/behind.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { allStock, componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What its pans hold, on the line and behind it, sold or not. */
export const held = (state: RunningState, component: string): number =>
  allStock(state)
    .filter(({ id }) => componentIn(state.station, id) === component)
    .reduce((sum, { stock }) => sum + stock.amount, 0)

/** What is free to be sold, on the line and behind it. */
export const free = (state: RunningState, component: string): number =>
  levelOf(state, component).remaining + behindOf(state, component) - owedBehind(state, component)
