/** Scoops that stand in for another component's: what both pans share until both are changed. */

import type { Stamp } from '#lib/service/events/event.ts'
import type { ScoopMissed } from '#lib/service/events/stock-event.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { LentScoop } from '#lib/service/stock-state.ts'
import { pansOf } from '#lib/station/find.ts'

type Lent = RunningState['lent']

/** The components that share a lent scoop with one. */
export const sharingWith = ({ lent }: RunningState, component: string): readonly string[] => [
  ...new Set(
    Object.values(lent).flatMap(({ component: borrower, by }) =>
      borrower === component ? [by] : by === component ? [borrower] : [],
    ),
  ),
]

/** Folded: a scoop is lent, and touches every pan of both. */
export const afterLending = (
  { station, lent }: RunningState,
  { component, lentBy = [], at, position }: ScoopMissed & Stamp,
): Lent => ({
  ...lent,
  ...Object.fromEntries(
    lentBy.map((by) => {
      const pans = pansOf(station)
        .filter((pan) => pan.component === component || pan.component === by)
        .map(({ id }) => id)
      const key = `${component}/${by}`
      const known = lent[key]
      const from = known ?? { since: at, sinceIn: position }
      return [
        key,
        {
          component,
          by,
          pans,
          since: from.since,
          ...(from.sinceIn === undefined ? {} : { sinceIn: from.sinceIn }),
        },
      ]
    }),
  ),
})

/** Whether a tool that is used for one component has been in another and wasn't washed since. */
const carriesInto = (state: RunningState, component: string, from: string): boolean => {
  const used = state.standIns[component]?.measures ?? []
  return state.station.tools.some(
    ({ id, usualFor }) =>
      (usualFor === component || used.some((one) => one.id === id)) &&
      (usualFor === from || state.toolsIn[id]?.includes(from)),
  )
}

/** Nothing ends a lending but clean pans: of a component without one, that its own scoop is back. */
const isOver = ({ standIns }: RunningState, { component, pans }: LentScoop): boolean =>
  pans.length === 0 && standIns[component] === undefined

const withoutOver = (state: RunningState, entries: readonly (readonly [string, LentScoop])[]) =>
  Object.fromEntries(entries.filter(([, one]) => !isOver(state, one)))

/** Folded: a scoop is back. */
export const afterReturn = (state: RunningState): Lent =>
  withoutOver(state, Object.entries(state.lent))

/** Folded: a pan of the line is clean. A scoop that goes on into it unwashed touches it again. */
export const afterCleaning = (state: RunningState, pan: string): Lent => {
  const of = componentIn(state.station, pan)
  if (of === undefined || Object.keys(state.lent).length === 0) return state.lent
  const cleaned = (one: LentScoop): LentScoop => {
    const other = one.component === of ? one.by : one.component
    return !one.pans.includes(pan) || carriesInto(state, of, other)
      ? one
      : { ...one, pans: one.pans.filter((id) => id !== pan) }
  }
  return withoutOver(
    state,
    Object.entries(state.lent).map(([key, one]) => [key, cleaned(one)] as const),
  )
}
