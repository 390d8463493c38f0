/** What the lead may choose among for a missing scoop: an identical spare first. */

import {
  type Missing,
  type NearestScoop,
  type NotLent,
  nearestScoop,
  nearestScoops,
  type ScoopChoice,
} from '#lib/estimate/nearest-scoop.ts'
import { wholePortions } from '#lib/measure/portion.ts'
import { toolVolumeMl } from '#lib/measure/portion-tools.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { missingOf, toolsAtHand } from '#lib/rooms/pans/facts/stand-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

/** A portion that is so many percent off, or more, needs the lead's own yes. Common practice, no source. */
export const FAR_OFF_PERCENT = 20

/** More choices than these are no help. */
const MOST_CHOICES = 4

/** Volumes that differ by less than this share are the same size. */
const SAME = 1e-6

/** Whole percent against the portion as it should be, as it is shown: -20 is a fifth light. */
export const percentOff = (error: number): number =>
  Math.sign(error) * Math.round(Math.abs(error) * 100) + 0

export const isFarOff = (error: number): boolean => Math.abs(percentOff(error)) >= FAR_OFF_PERCENT

export interface ScoopChoices {
  /** The one to offer first at the head; empty where no tool at hand may be used. */
  readonly choices: readonly ScoopChoice[]
  readonly notLent: readonly NotLent[]
}

/** Ids of tools that stand in for other components now. */
const standingIn = (state: RunningState, component: string): ReadonlySet<string> =>
  new Set(
    Object.entries(state.standIns).flatMap(([id, { measures }]) =>
      id === component ? [] : measures.map((one) => one.id),
    ),
  )

const sparesOf = (
  state: RunningState,
  component: string,
  missing: Missing,
  isLent: (id: string) => boolean,
): readonly ScoopChoice[] => {
  const rule = findComponent(state.station, component)?.portion
  if (!rule || !('gPerCup' in rule)) return []
  const own = toolVolumeMl(rule)
  const busy = standingIn(state, component)
  const portions = wholePortions(missing.remainingMg, missing.portionMg)
  return state.station.tools
    .filter(
      ({ id, tool, usualFor }) =>
        usualFor === null &&
        tool.tool === rule.tool &&
        isLent(id) &&
        !busy.has(id) &&
        Math.abs(toolVolumeMl(tool) / own - 1) < SAME,
    )
    .map(({ id }) => ({
      isSpare: true,
      measures: [{ id, count: rule.level }],
      portionMg: missing.portionMg,
      error: 0,
      portionsLeft: portions,
      portionsBefore: portions,
    }))
}

/**
 * Identical spares that nothing else is taken with, then the nearest of what is at hand; null where
 * the component isn't portioned by volume.
 */
export const scoopChoices = (state: RunningState, component: string): ScoopChoices | null => {
  const missing = missingOf(state, component)
  if (!missing) return null
  const tools = toolsAtHand(state, component)
  const { notLent } = nearestScoop(kitchenOf(state).station, missing, tools)
  const spares = sparesOf(
    state,
    component,
    missing,
    (id) => tools.some((one) => one.id === id) && notLent.every((one) => one.id !== id),
  )
  const nearest = nearestScoops(kitchenOf(state).station, missing, tools, MOST_CHOICES)
  const isNamed = ({ measures }: NearestScoop) =>
    spares.some((one) => one.measures[0]?.id === measures[0]?.id && measures.length === 1)
  return {
    choices: [
      ...spares,
      ...nearest.filter((one) => !isNamed(one)).map((one) => ({ ...one, isSpare: false })),
    ].slice(0, Math.max(MOST_CHOICES, spares.length)),
    notLent,
  }
}
