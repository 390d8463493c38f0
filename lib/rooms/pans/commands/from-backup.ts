/** Food that is put in out of a back-up pan: what is known of it goes along. */

import { stockOffSale } from '#lib/rooms/food/facts/off-sale.ts'
import type { HeldFood } from '#lib/service/events/food-event.ts'
import type { BatchState, HeldStock } from '#lib/service/food-state.ts'
import { componentIn, isUsable, stockOf } from '#lib/service/held-stock.ts'
import { noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component } from '#lib/station/station-document.ts'

export type FromBackup = Pick<HeldStock, 'readings'> & { readonly food: HeldFood }

/** What a back-up pan holds, as loading sees a batch: all that is known of it goes along. */
export const standIn = ({ food, readings }: FromBackup, component: string): BatchState => ({
  component,
  loads: 1,
  startedAt: food.finishedAt,
  finishedAt: food.finishedAt,
  amount: 0,
  loadsDone: 1,
  loaded: 0,
  cooking: [],
  cooked: true,
  cooling: [],
  cooledAgain: false,
  reheat: null,
  clock: food.clock,
  dateMark: food.dateMark,
  readings,
  toldAt: food.finishedAt,
  offSale: null,
  thrownOutAt: null,
  newestAt: food.finishedAt,
})

/** Its food was cooked and cooled before it was put into the back-up pan: it comes off no heat now. */
export const asCooked = (component: Component): Component => ({
  ...component,
  held: 'cold',
  food: { ...component.food, kind: 'ready' },
})

export const fromBackup = (
  state: RunningState,
  from: string,
  component: string,
): { readonly refusal: Refusal } | { readonly found: FromBackup } => {
  const pan = stockOf(state, 'backup', from)
  if (!pan || componentIn(state.station, from) !== component)
    return { refusal: noPlace({ what: 'backup', id: from }) }
  if (pan.amount <= 0) return { refusal: { code: 'nothing-there', id: from } }
  // It is read where it stands: in time or not is told there, before it goes anywhere.
  if (!pan.food || !isUsable(state, 'backup', from))
    return { refusal: stockOffSale(state, 'backup', from, component) }
  return { found: { food: pan.food, readings: pan.readings } }
}
