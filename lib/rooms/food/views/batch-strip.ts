/** The batches that are under way or stand ready, each with where it is and what comes next. */

import { minutesUntil } from '#lib/estimate/batch-timing.ts'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { coolingOf, isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { throwOutMoment } from '#lib/safety/time-control.ts'
import { leftOfBatch, loadsToCome } from '#lib/service/batch-loads.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

export type BatchStage =
  | 'throw-out'
  | 'off-sale'
  | 'making'
  /** Its reading meets the limit, and it isn't finished. */
  | 'cooked'
  /** It is finished and hot, and is to be cool: no reading of its cooling was taken. */
  | 'to-cool'
  | 'cooling'
  /** It waits, and its reading is asked for. */
  | 'to-read'
  | 'cooled'
  | 'ready'

export interface BatchPicture {
  readonly id: string
  readonly component: string
  readonly stage: BatchStage
  /** Of which so many are still to come. */
  readonly loads: number
  /** Portions that aren't loaded yet; null until a load is finished. */
  readonly portions: number | null
  /**
   * Making: when it is expected; to be cooled or cooling: by when its stage is reached; waiting: by when it
   * is read; on a clock: its throw-out time.
   */
  readonly at: number | null
  /** That moment is over. */
  readonly isLate: boolean
  /** By when what was cooked ahead reaches its next stage of cooling; null where it doesn't cool. */
  readonly coolAt: number | null
}

const STAGES: readonly BatchStage[] = [
  'throw-out',
  'off-sale',
  'to-read',
  'to-cool',
  'cooked',
  'making',
  'cooling',
  'ready',
  'cooled',
]

type Making = Pick<BatchState, 'component' | 'loads' | 'startedAt'>

const minutesFor = (state: RunningState, { component, loads }: Making): number | null => {
  const remake = findComponent(state.station, component)?.remake
  return remake ? minutesUntil(remake, loads) : null
}

/** When all of it is expected to stand at the line; null where the station doesn't say how long it takes. */
export const expectedAt = (state: RunningState, batch: Making): number | null => {
  const minutes = minutesFor(state, batch)
  return minutes === null ? null : batch.startedAt + minutes * 60_000
}

const pictureOf = (
  state: RunningState,
  id: string,
  batch: BatchState,
  now: number,
): BatchPicture => {
  const component = findComponent(state.station, batch.component)
  const each = state.portions[batch.component]?.amount ?? 1
  const isFinished = batch.finishedAt !== null
  const portions = isFinished ? Math.floor(leftOfBatch(batch) / each) : null
  const cooling = coolingOf(state.station, batch, now)
  const clock = batch.clock && throwOutMoment(batch.clock, batch.readings, limitsOf(state.station))
  const toCome = loadsToCome(batch)
  const cools = coolBy(state, id, now)
  const coolAt = cools && (cools.first ?? cools.second)
  const of = (stage: BatchStage, at: number | null): BatchPicture => ({
    id,
    component: batch.component,
    stage,
    loads: toCome > 0 ? toCome : batch.loads,
    portions,
    at,
    isLate: at !== null && at <= now,
    coolAt,
  })
  if (boundAt(state, 'batch', id)) return of('throw-out', null)
  if (batch.offSale) return of('off-sale', null)
  const isCooked = component !== undefined && isCookedHere(component)
  if (!isFinished || (isCooked && !batch.cooked))
    return of(isCooked && batch.cooked ? 'cooked' : 'making', expectedAt(state, batch))
  if (toCome > 0 && !cooling && clock === null) return of('making', expectedAt(state, batch))
  if (cooling && cooling.state !== 'cooled')
    return of('cooling', 'dueAt' in cooling ? cooling.dueAt : null)
  if (coolAt !== null) return of('to-cool', coolAt)
  const readBy = foodTimes(state, 'batch', id, now)?.readBy ?? null
  if (readBy !== null) return of('to-read', readBy)
  return of(cooling ? 'cooled' : 'ready', clock)
}

/** Less than a portion is left of it, and nothing is to be done with that. */
const isUsedUp = ({ stage, portions }: BatchPicture): boolean =>
  portions === 0 && (stage === 'ready' || stage === 'cooled')

/** What is to be done first comes first; what was thrown out or has no portion left is gone. */
export const batchPictures = (state: RunningState, now: number): readonly BatchPicture[] =>
  Object.entries(state.batches)
    .filter(
      ([id, batch]) =>
        boundAt(state, 'batch', id) !== undefined ||
        (batch.thrownOutAt === null && (loadsToCome(batch) > 0 || leftOfBatch(batch) > 0)),
    )
    .map(([id, batch]) => pictureOf(state, id, batch, now))
    .filter((one) => !isUsedUp(one))
    .sort((one, other) => STAGES.indexOf(one.stage) - STAGES.indexOf(other.stage))

/** Which pot a batch is of those of its component that were started in the same minute; null of one. */
export const potOf = ({ batches }: RunningState, id: string): number | null => {
  const own = batches[id]
  if (!own) return null
  const minute = (at: number) => Math.floor(at / MINUTE_MS)
  const same = Object.keys(batches).filter(
    (one) =>
      batches[one]?.component === own.component &&
      minute(batches[one].startedAt) === minute(own.startedAt),
  )
  return same.length > 1 ? 1 + same.indexOf(id) : null
}
