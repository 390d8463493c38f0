/** What a batch can be started of. */

import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'
import type { Component } from '#lib/station/station-document.ts'

/** Whether no pan of it holds anything: how long it lasts says nothing then. */
export const isEmpty = ({ station, pans }: RunningState, component: string): boolean => {
  const own = linePansOf(station, component)
  return own.length > 0 && own.every(({ id }) => (pans[id]?.amount ?? 0) === 0)
}

/**
 * In the order of the document: what the house says how to make again; and what goes into no pan
 * without a batch of it, though nobody said how long that takes, while its pans are empty, or where
 * nothing of the station has that said.
 */
export const canStart = (state: RunningState): readonly Component[] => {
  const { components } = state.station
  const isSaidOfNone = components.every(({ remake }) => remake === null)
  return components.filter(
    (one) => one.remake !== null || (needsBatch(one) && (isSaidOfNone || isEmpty(state, one.id))),
  )
}

/** Loads that its plan has of a component and nobody has started, none of the larder's; null where it has none planned. */
export const loadsPlanned = (
  { prep, batches }: Pick<RunningState, 'prep' | 'batches'>,
  component: string,
): number | null => {
  const food = prep?.foods.find((one) => one.component === component)
  if (!food) return null
  const started = Object.values(batches)
    .filter((one) => one.component === component && one.thrownOutAt === null && !one.lot)
    .reduce((sum, { loads }) => sum + loads, 0)
  return Math.max(0, food.loads - started)
}

/**
 * Those of them that wait for their first batch: their pans are empty and nobody makes it. Of a planned
 * service those of whose loads some aren't started.
 */
export const toStart = (state: RunningState): readonly string[] => {
  if (state.stage === 'planned' && state.prep !== undefined)
    return canStart(state)
      .map(({ id }) => id)
      .filter((id) => (loadsPlanned(state, id) ?? 0) > 0)
  const made = new Set(Object.values(state.batches).map(({ component }) => component))
  return canStart(state)
    .filter((one) => needsBatch(one) && isEmpty(state, one.id) && !made.has(one.id))
    .map(({ id }) => id)
}

/** null where none waits. */
export const firstToStart = (state: RunningState): string | null => toStart(state)[0] ?? null
