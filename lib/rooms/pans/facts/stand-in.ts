/** What stands in for a missing scoop, as this service's station has its tools. */

import {
  type Measures,
  type Missing,
  type Nearest,
  nearestScoop,
  type ToolAtHand,
} from '#lib/estimate/nearest-scoop.ts'
import { densityGPerMl } from '#lib/measure/portion.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

/** Tools that could stand in for a component's own, with what each has been in. */
export const toolsAtHand = (state: RunningState, component: string): readonly ToolAtHand[] =>
  state.station.tools
    .filter(({ usualFor }) => usualFor !== component)
    .map((one) => ({
      id: one.id,
      tool: one.tool,
      touched: [
        ...new Set([
          ...(one.usualFor === null ? [] : [one.usualFor]),
          ...(state.toolsIn[one.id] ?? []),
        ]),
      ],
      allergenOnly: false,
    }))

/** Components whose own scoop a stand-in of another is, or that it has been in since it was washed. */
export const lendersOf = (
  state: RunningState,
  component: string,
  measures: readonly Measures[],
): readonly string[] =>
  [
    ...new Set(
      toolsAtHand(state, component)
        .filter(({ id }) => measures.some((one) => one.id === id))
        .flatMap(({ touched }) => touched),
    ),
  ]
    .filter((by) => by !== component)
    .sort()

/** Grams per millilitre of a component that is portioned by volume; null for any other. */
export const densityOf = (state: RunningState, component: string): number | null => {
  const rule = findComponent(state.station, component)?.portion
  return rule && 'gPerCup' in rule ? densityGPerMl(rule.gPerCup, 1, 'cup') : null
}

/** What a component lacks while its scoop is missing; null where it isn't portioned by volume. */
export const missingOf = (state: RunningState, component: string): Missing | null => {
  const gPerMl = densityOf(state, component)
  const usual = state.standIns[component]?.usual ?? state.portions[component]
  if (gPerMl === null || usual?.unit !== 'mg') return null
  const remainingMg = Math.max(0, levelOf(state, component).remaining)
  return { portionMg: usual.amount, gPerMl, component, remainingMg }
}

/** The nearest legal combination; null where the component isn't portioned by volume. */
export const standInFor = (
  state: RunningState,
  component: string,
  tools: readonly ToolAtHand[] = toolsAtHand(state, component),
): Nearest | null => {
  const missing = missingOf(state, component)
  return missing && nearestScoop(kitchenOf(state).station, missing, tools)
}
