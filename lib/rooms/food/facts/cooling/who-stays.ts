/** Who stays while it cools: asked by the limit that its own food has. */
import { comesOffHeat, coolingOf, firstDoneAt } from '#lib/rooms/food/facts/food-now.ts'
import {
  type CoolingFrom,
  type CoolingStage,
  type CoolingState,
  coolingStages,
  planCooling,
  stagesToCome,
} from '#lib/safety/cooling.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export interface CoolingStay {
  /** Until then somebody said to be there, epoch milliseconds. */
  readonly until: number
  /** Its stage goes on for longer: it is read before, or somebody says anew who stays. */
  readonly isTooShort: boolean
}

/** null where nothing cools, or nobody said so, as in an older log. `now` in epoch milliseconds. */
export const coolingStay = (
  station: StationDocument,
  batch: BatchState,
  now: number,
): CoolingStay | null => {
  const { presentUntil: until } = batch
  const cooling = coolingOf(station, batch, now)
  if (until === undefined || batch.offSale || !cooling || !('dueAt' in cooling)) return null
  return { until, isTooShort: until < cooling.dueAt }
}

/** By which paragraph a component cools: off the heat, or from room temperature. */
export const coolsFrom = (component: Component): CoolingFrom =>
  comesOffHeat(component) ? 'cooked' : 'room'

/**
 * What a cooling that isn't begun comes to, were it read first at a moment: cooked food is counted from
 * that reading, food from room temperature from when it was made.
 */
export const stagesFrom = (
  station: StationDocument,
  component: Component,
  batch: BatchState | null,
  readAt: number,
): readonly CoolingStage[] => {
  const from = coolsFrom(component)
  const madeAt = from === 'room' && batch ? (firstDoneAt(batch) ?? readAt) : readAt
  return coolingStages(from, Math.min(madeAt, readAt), limitsOf(station))
}

/**
 * Hours from now to the end of the last stage, a begun one counted whole, 1 to 12: what is proposed once
 * somebody says that they stay.
 */
export const hoursToStay = (stages: readonly CoolingStage[], now: number): number => {
  const by = Math.max(...stages.map((one) => one.by))
  return Math.max(1, Math.min(12, Math.ceil((by - now) / HOUR_MS)))
}

/** Food can't pass a stage at once: a reading before this could only fail. Common practice, no source. */
const NO_SOONER = { first: 0, total: 0 }

/** A cooling, and who said to be there. */
export interface Stayed {
  readonly cooling: CoolingState
  readonly from: CoolingFrom
  /** It was read then, or it is asked: who was gone by then reads nothing more. Epoch milliseconds. */
  readonly after: number
  readonly presentUntil: number | undefined
}

/**
 * Why nobody would be there to read what is to come of a cooling; null where somebody stays, and where
 * nothing is to be read of it any more: it is cold, or it was missed.
 */
export const notPresent = (
  state: RunningState,
  batch: string,
  { cooling, from, after, presentUntil = after }: Stayed,
): Refusal | null => {
  const toCome = stagesToCome(cooling, from, limitsOf(state.station))
  const plan = planCooling(toCome, after, [{ from: after, to: presentUntil }], NO_SOONER)
  return plan.ok
    ? null
    : { code: 'cannot-cool', batch, stage: plan.stage, why: plan.why, by: plan.by }
}
