/** What is known of food at a moment: its limits, its batches, when it is read next, its ways out. */

import { type CoolingState, coolingState } from '#lib/safety/cooling.ts'
import {
  type HeldBy,
  type HoldingState,
  holdingState,
  READING_PRACTICE,
  type ReadingPractice,
} from '#lib/safety/holding.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { type BatchRecord, firstOut, type LoadProblem, loadProblem } from '#lib/safety/load.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { type Reheated, reheated } from '#lib/safety/reheating.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt, componentIn, type StockKind, stockOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export const practiceOf = ({ safety }: StationDocument): ReadingPractice => ({
  ...READING_PRACTICE,
  everyMs: safety.readings.everyMin * MINUTE_MS,
  askBeforeMs: safety.readings.askBeforeMin * MINUTE_MS,
})

/** What stands in the cold room is read once a day. Common practice, no source: the code sets no interval. */
const COLD_ROOM_MS = 24 * HOUR_MS

/**
 * How often what was read last at a moment is read: what waits cold for a service that is planned
 * stands in the cold room until that opens, and nobody is there at night.
 */
export const practiceFor = (
  { station, plan, stage, openedAt }: Pick<RunningState, 'station' | 'plan' | 'stage' | 'openedAt'>,
  heldBy: 'hot' | 'cold',
  lastAt: number,
): ReadingPractice => {
  const practice = practiceOf(station)
  const isAhead = plan !== undefined && (stage === 'planned' || lastAt < openedAt)
  return isAhead && heldBy === 'cold'
    ? { ...practice, everyMs: Math.max(practice.everyMs, COLD_ROOM_MS) }
    : practice
}

/** Whether it is cooked here, so that its batch shows what it was cooked to. */
export const isCookedHere = (component: Component): boolean =>
  component.held !== 'dry' && foodKindOf(component) !== 'not-cooked'

/**
 * Whether it is made here, cooked or not, so that nothing of it is loaded without its batch: only what
 * the document calls ready, and has no recipe for, comes out of a pack.
 */
export const needsBatch = ({ held, food, recipes }: Component): boolean =>
  held !== 'dry' && (food.kind !== 'ready' || recipes.length > 0)

/** Whether nothing of it is loaded without a reading. */
export const needsReading = (heldBy: HeldBy): boolean => heldBy === 'hot' || heldBy === 'cold'

/** How a component is held where it is loaded: as the document says, or by time alone. */
export const heldAs = (component: Component, told: HeldBy | undefined): HeldBy =>
  component.held === 'dry' ? 'dry' : (told ?? component.held)

/** Whether a batch of it was hot, cooked here or bought in and held so: it cools from 135 °F down. */
export const comesOffHeat = (component: Component): boolean =>
  component.held === 'hot' || foodKindOf(component) !== 'not-cooked'

/**
 * For so long after the last word about it, food that is told of later than it happened isn't counted
 * as missed: whoever tells it has the time to tell the rest. Common practice, no source.
 */
export const TELLING_MS = HOUR_MS

/**
 * Where a batch stands in its cooling; null where it never was cooled. A stage that was over when its
 * cooling was told is judged by the moments that were told, while the rest may still be told.
 */
export const coolingOf = (
  station: StationDocument,
  batch: BatchState,
  now: number,
): CoolingState | null => {
  const component = findComponent(station, batch.component)
  const newest = batch.cooling.at(-1)
  if (!newest || !component) return null
  const from = comesOffHeat(component) ? 'cooked' : 'room'
  const limits = limitsOf(station)
  const of = (at: number) => coolingState(batch.cooling, from, at, limits, firstDoneAt(batch))
  const told = of(Math.min(newest.at, now))
  const isBeingTold =
    'dueAt' in told && told.dueAt < batch.toldAt && now < batch.toldAt + TELLING_MS
  return isBeingTold ? told : of(now)
}

/** When the first of a batch was done, epoch milliseconds; null while none of it is. */
export const firstDoneAt = ({ firstDone, finishedAt }: BatchState): number | null =>
  firstDone ?? finishedAt

const reheatedOf = (station: StationDocument, { reheat }: BatchState): Reheated | null => {
  const last = reheat?.readings.at(-1)
  if (!reheat || !last) return null
  return reheated(
    { what: 'cooked-here', ...reheat },
    last.at,
    limitsOf(station),
    station.safety.reheatOn,
  )
}

/**
 * A batch as loading sees it; of food that no batch is known of, what its reading shows. Cooked food
 * that goes into cold without a record of its cooling isn't shown to have cooled.
 */
export const batchRecordOf = (
  station: StationDocument,
  component: Component,
  batch: BatchState | null,
  heldBy: HeldBy,
  readings: readonly Reading[],
  now: number,
): BatchRecord => {
  const kind = foodKindOf(component)
  const cooking = { kind, cookedIn: component.food.cookedIn, readings: batch?.cooking ?? [] }
  if (!batch) {
    const at = Math.min(now, ...readings.map((one) => one.at))
    return {
      startedAt: at,
      finishedAt: at,
      cooking: { ...cooking, kind: 'not-cooked' },
      cooling: null,
      reheat: null,
      readings: [],
      clock: null,
      dateMark: null,
      offSale: false,
      thrownOutAt: null,
    }
  }
  const uncooled: CoolingState | null =
    comesOffHeat(component) && heldBy === 'cold' ? { state: 'no-start', below: false } : null
  return {
    startedAt: batch.startedAt,
    finishedAt: batch.finishedAt,
    cooking,
    cooling: coolingOf(station, batch, now) ?? uncooled,
    reheat: reheatedOf(station, batch),
    readings: batch.readings,
    clock: batch.clock,
    dateMark: batch.dateMark,
    offSale: batch.offSale !== null,
    thrownOutAt: batch.thrownOutAt,
  }
}

/** Why food can't be loaded now, with these readings of it; null where it can. */
export const loadProblemOf = (
  state: RunningState,
  component: Component,
  batch: BatchState | null,
  into: { readonly heldBy: HeldBy; readonly readings: readonly Reading[]; readonly now: number },
): LoadProblem | null => {
  const { station } = state
  const { heldBy, readings, now } = into
  return loadProblem(
    batchRecordOf(station, component, batch, heldBy, readings, now),
    { heldBy, roast: component.food.roast, readings, now },
    limitsOf(station),
    practiceOf(station),
  )
}

/** Finished batches of a component of which some is left, what must go first first. */
export const batchesInOrder = (state: RunningState, component: string): readonly string[] =>
  firstOut(
    Object.entries(state.batches).flatMap(([id, batch]) =>
      batch.component === component &&
      batch.finishedAt !== null &&
      batch.thrownOutAt === null &&
      batch.offSale === null &&
      boundAt(state, 'batch', id) === undefined &&
      leftOfBatch(batch) > 0
        ? [
            {
              batch: id,
              throwOutAt: batch.clock?.throwOutAt ?? null,
              dateMark: batch.dateMark,
              finishedAt: batch.finishedAt,
            },
          ]
        : [],
    ),
  ).map(({ batch }) => batch)

const isRoast = (state: RunningState, id: string): boolean => {
  const component = componentIn(state.station, id)
  return component !== undefined && findComponent(state.station, component)?.food.roast === true
}

/**
 * What is known of a hot or cold pan; null where it is held by neither, or empty.
 * @param more readings beside those that are recorded
 */
export const holdingOf = (
  state: RunningState,
  what: StockKind,
  id: string,
  now: number,
  more: readonly Reading[] = [],
): HoldingState | null => {
  const stock = stockOf(state, what, id)
  const heldBy = stock?.food?.heldBy
  if (!stock || stock.amount <= 0 || (heldBy !== 'hot' && heldBy !== 'cold')) return null
  return holdingState(
    {
      heldBy,
      roast: isRoast(state, id),
      since: stock.since,
      readings: [...stock.readings, ...more],
    },
    state.rushes,
    now,
    limitsOf(state.station),
    practiceOf(state.station),
  )
}
