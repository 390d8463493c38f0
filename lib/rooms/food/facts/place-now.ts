/** What is known of a place of food at a moment: how it is kept, and when it was and will be read. */

import {
  batchHeldBy,
  batchReadBy,
  waitingOf,
  watchedSince,
} from '#lib/rooms/food/facts/batch-watch.ts'
import { holdingOf } from '#lib/rooms/food/facts/food-now.ts'
import type { HeldBy, HoldingState } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { nextMonitoring } from '#lib/safety/time-control.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { stockOf } from '#lib/service/held-stock.ts'
import { findBatch, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

/** By what its food is kept; null where nobody knows, or while a batch is cooked or cools. */
export const heldByAt = (state: RunningState, { what, id }: Place, now: number): HeldBy | null => {
  if (what !== 'batch') return stockOf(state, what, id)?.food?.heldBy ?? null
  const batch = findBatch(state, id)
  if (batch?.clock) return 'time'
  return batch ? batchHeldBy(state.station, batch, now) : null
}

/** How hot or cold food is watched where it stands or waits. */
export interface Watch {
  /** Of its last reading in limits by a moment, epoch milliseconds; null where there is none. */
  readonly goodAt: (by: number) => number | null
  /** Since when it is watched, where nobody read it yet. */
  readonly since: number | null
  /** @param more readings beside those that are recorded */
  readonly stateAt: (now: number, more: readonly Reading[]) => HoldingState | null
}

export const watchOf = (state: RunningState, place: Placed, heldBy: 'hot' | 'cold'): Watch => {
  const { what, id, readings, newest } = place
  if (what !== 'batch')
    return {
      goodAt: (by) => readings.filter(({ at }) => at <= by).at(-1)?.at ?? null,
      since: null,
      stateAt: (now, more) => holdingOf(state, what, id, now, more),
    }
  const batch = findBatch(state, id)
  return {
    goodAt: () => newest?.at ?? null,
    // What was read while it waits proves nothing of the time before: only what it was made to does.
    since: batch ? watchedSince(state.station, { ...batch, readings: [] }, heldBy) : null,
    stateAt: (now, more) => waitingOf(state, id, now, more),
  }
}

/** From when on its next reading is missed, epoch milliseconds; null where none is asked for. */
export const missedFrom = (state: RunningState, place: Placed, now: number): number | null => {
  const { what, id, offSale, food, readings } = place
  if (offSale !== null || !food) return null
  if (what === 'batch') return batchReadBy(state, id, now)
  if (food.clock) return nextMonitoring(food.clock, readings)
  const holding = holdingOf(state, what, id, now)
  if (!holding || holding.state === 'out') return null
  return holding.state === 'missed' ? holding.since : holding.next.dueAt
}
