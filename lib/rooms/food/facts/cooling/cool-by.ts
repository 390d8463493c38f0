/** By when a pot that is cooked ahead has to be cool, from its cooking on. */
import { isDayBefore } from '#lib/rooms/food/facts/cooling/day-before.ts'
import { coolingOf, isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { meets } from '#lib/safety/limits.ts'
import { thatCount } from '#lib/safety/readings.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export interface CoolBy {
  /** 70 °F by then, epoch milliseconds; null where a reading shows that it got there. */
  readonly first: number | null
  /** 41 °F by then. */
  readonly second: number
  /** The reading that it is counted from. */
  readonly since: number
  /** False: no reading of its cooling was taken, and it is counted from its cooking. */
  readonly isStarted: boolean
}

/**
 * Cold food that is cooked always cools; hot food where its plan has it cooked ahead, or it is cooked on
 * a day before the doors open: nobody holds it hot over night.
 */
const isToCool = (state: RunningState, component: string, cookedAt: number): boolean => {
  const found = findComponent(state.station, component)
  if (!found || !isCookedHere(found)) return false
  if (found.held === 'cold') return true
  const choice = state.prep?.foods.find((one) => one.component === component)
  return (state.stage === 'planned' && choice?.ahead === true) || isDayBefore(state, cookedAt)
}

/**
 * The last reading that shows it at 135 °F or above; of several loads the first one, since each has its
 * own and the first has waited longest.
 */
const lastHot = (state: RunningState, { loads, cooking }: BatchState): number | null => {
  const { coolingFrom } = limitsOf(state.station)
  const hot = thatCount(cooking).filter(({ temperature }) => meets(temperature, coolingFrom))
  return (loads > 1 ? hot[0] : hot.at(-1))?.at ?? null
}

/**
 * Both stages of FDA Food Code 3-501.14(A): to 70 °F within 2 hours, to 41 °F within 6 in all. Until a
 * reading of its cooling is taken they are counted from its cooking, which is never too late.
 *
 * @returns null where it doesn't cool, is cool, or isn't served any more
 */
export const coolBy = (state: RunningState, id: string, now: number): CoolBy | null => {
  const batch = state.batches[id]
  if (!batch || batch.thrownOutAt !== null || batch.offSale || batch.clock) return null
  const limits = limitsOf(state.station)
  const ends = (since: number) => ({
    since,
    first: since + limits.coolingFirstWithin.withinMs,
    second: since + limits.coolingWithin.withinMs,
  })
  const cooling = coolingOf(state.station, batch, now)
  switch (cooling?.state) {
    case 'first-stage':
      return { ...ends(cooling.startedAt), isStarted: true }
    case 'second-stage':
      return { since: cooling.startedAt, first: null, second: cooling.dueAt, isStarted: true }
    case undefined: {
      const since = batch.cooked && !batch.lot ? lastHot(state, batch) : null
      if (since === null || !isToCool(state, batch.component, since)) return null
      return { ...ends(since), isStarted: false }
    }
    default:
      return null
  }
}
