/** Which days and hours a label says: when food was made, and when it is thrown out. */
import { civilDate, minuteOfDay } from '#lib/measure/civil.ts'
import { coolsFrom } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf, firstDoneAt, needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import type { CoolingFrom, CoolingState } from '#lib/safety/cooling.ts'
import { dateMark, stampOf } from '#lib/safety/date-marks.ts'
import {
  MINUTE_MS,
  type SafetyLimits,
  type TemperatureLimit,
  type TimeLimit,
} from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { findBatch, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component, StationDocument, Well } from '#lib/station/station-document.ts'

/** When it was made; `hour` is false where only the day is known, by the plan. */
export interface Made {
  readonly at: number
  readonly hour: boolean
}

/** Of a discard time what it follows from; without one what a hand writes there. */
export type Discard =
  | { readonly at: number; readonly because: 'clock' | 'date' | 'day' | 'service-ends' }
  /** So many days of which the first is day 1; so long after a reading; what its maker prints; none. */
  | { readonly at: null; readonly because: 'days' | 'makers-date' | 'not-planned' | 'frozen' }
  | { readonly at: null; readonly because: 'reading'; readonly within: TimeLimit }

export interface LabelDates {
  /** What is bought in is opened; what is made here is made. */
  readonly first: 'made' | 'opened'
  readonly made: Made | null
  /** The day is the plan's: it isn't made yet. */
  readonly isPlanned: boolean
  readonly discard: Discard
}

export interface CoolingStage {
  readonly limit: TemperatureLimit
  readonly within: TimeLimit
  /** null where its clock hasn't started. */
  readonly by: number | null
}

export interface LabelCooling {
  /** It starts with a reading that nobody has taken yet; null where one was, or none is asked. */
  readonly start: TemperatureLimit | null
  /** What is still to be read. */
  readonly stages: readonly CoolingStage[]
  /** What was read, oldest first. */
  readonly read: readonly Reading[]
}

/** A day ends at midnight: its last minute is said, since midnight is of two days. */
export const lastMinute = (endsAt: number, timeZone: string): number =>
  minuteOfDay(endsAt, timeZone) === 0 ? endsAt - MINUTE_MS : endsAt

/** The end of the last day of cold food that is prepared on a day; null where it has none. */
const markFrom = (station: StationDocument, at: number): number | null => {
  const { timeZone } = station
  const preparedOn = civilDate(at, timeZone)
  const mark = dateMark({ preparedOn, freezings: [], useBy: null }, limitsOf(station))
  return mark.mark === 'last-day' ? stampOf(mark.lastDay, timeZone).endsAt : null
}

/** When the plan has it begun, epoch milliseconds: that day is day 1; null where nobody planned it. */
const plannedAt = (state: RunningState, component: string): number | null => {
  const begun = (preparedOf(state)?.tasks ?? []).flatMap((task) =>
    task.component === component && (task.kind === 'make' || task.kind === 'cook')
      ? [task.from]
      : [],
  )
  return begun.length === 0 ? null : Math.min(...begun)
}

/** What is thrown out when, of food for which no clock and no date runs yet. */
const unbound = (
  state: RunningState,
  component: Component,
  held: Component['held'] | Well['held'],
  madeAt: number | null,
): Discard => {
  if (held === 'dry' || component.held === 'dry') return { at: null, because: 'makers-date' }
  if (held === 'time')
    return { at: null, because: 'reading', within: limitsOf(state.station).timeOnly4h }
  if (held === 'hot')
    return state.plan
      ? { at: state.plan.closesAt, because: 'service-ends' }
      : { at: null, because: 'not-planned' }
  const at = madeAt === null ? null : markFrom(state.station, madeAt)
  return at === null ? { at: null, because: 'days' } : { at, because: 'date' }
}

const boundBy = ({ food }: Placed, at: number): 'clock' | 'date' | 'day' =>
  food?.dateMark?.endsAt === at ? 'date' : food?.dayEndsAt === at ? 'day' : 'clock'

const oldestOf = (state: RunningState, batches: readonly string[]): BatchState | null =>
  batches
    .flatMap((id) => findBatch(state, id) ?? [])
    .sort((one, other) => one.startedAt - other.startedAt)[0] ?? null

/**
 * Of food at a place, or of what is to come there where it is empty. Where a clock or a date runs it is
 * theirs, as on the screens; cold food of a batch that nobody dated has the day on which it was begun as
 * day 1, as when it is set aside; hot food ends with its service, since nothing else bounds it.
 */
export const datesOf = (
  state: RunningState,
  component: Component,
  held: Component['held'] | Well['held'],
  place: Placed | null,
): LabelDates => {
  const first = needsBatch(component) ? 'made' : 'opened'
  const isThere = place !== null && (place.stage === 'standing' || place.stage === 'waiting')
  const batch = place && isThere ? oldestOf(state, place.batches) : null
  const until = place && isThere ? lastsUntil(state, place) : null
  if (place && isThere) {
    const madeAt = batch && (batch.finishedAt ?? batch.startedAt)
    const otherwise = unbound(state, component, held, batch?.startedAt ?? null)
    // A hot pan ends with its service, though its food was dated before.
    const isBound =
      until !== null && !(held === 'hot' && otherwise.at !== null && otherwise.at < until)
    return {
      first,
      made: madeAt === null ? null : { at: madeAt, hour: true },
      isPlanned: false,
      discard: isBound ? { at: until, because: boundBy(place, until) } : otherwise,
    }
  }
  const making = place?.stage === 'making' ? oldestOf(state, place.batches) : null
  const at = making?.startedAt ?? plannedAt(state, component.id)
  return {
    first,
    made: at === null ? null : { at, hour: false },
    isPlanned: at !== null && making === null,
    discard: unbound(state, component, held, at),
  }
}

/** Of what comes out of several pans alike: the earliest, and a time clock before any day. */
export const earliestOf = (all: readonly LabelDates[]): LabelDates | undefined => {
  const bound = all
    .filter(({ discard }) => discard.at !== null)
    .sort((one, other) => (one.discard.at ?? 0) - (other.discard.at ?? 0))
  const clocked = all.find(({ discard }) => discard.because === 'reading')
  const [first] = bound
  return first?.discard.because === 'clock' ? first : (clocked ?? first ?? all[0])
}

const stage = (
  limits: SafetyLimits,
  which: 'first' | 'total' | 'room',
  startedAt: number | null,
): CoolingStage => {
  const within = {
    first: limits.coolingFirstWithin,
    total: limits.coolingWithin,
    room: limits.coolingFromRoomWithin,
  }[which]
  return {
    limit: which === 'first' ? limits.coolingFirstTo : limits.coolingTo,
    within,
    by: startedAt === null ? null : startedAt + within.withinMs,
  }
}

/**
 * What is still to be read of food that cools, by where its cooling is; null before its first reading.
 *
 * @param madeAt when the first of it was made, epoch milliseconds: of food from room temperature its 4
 *   hours run from then, read or not (FDA Food Code 2022, 3-501.14(B)); null where nobody told
 */
export const coolingToRead = (
  from: CoolingFrom,
  now: CoolingState | null,
  read: readonly Reading[],
  limits: SafetyLimits,
  madeAt: number | null = null,
): LabelCooling | null => {
  const unread = from === 'room' && now === null ? madeAt : null
  const startedAt = now !== null && 'startedAt' in now ? now.startedAt : unread
  if (now !== null && ['cooled', 'missed', 'warmed'].includes(now.state)) return null
  if (from === 'room')
    return {
      start: null,
      stages: [stage(limits, 'room', startedAt)],
      read,
    }
  return {
    start: startedAt === null ? limits.coolingFrom : null,
    stages: [
      ...(now?.state === 'second-stage' ? [] : [stage(limits, 'first', startedAt)]),
      stage(limits, 'total', startedAt),
    ],
    read,
  }
}

/** Of a batch that cools, or that is planned to: cooked ahead, or chilled from room temperature. */
export const coolingOfBatch = (
  state: RunningState,
  component: Component,
  batch: BatchState | null,
  now: number,
): LabelCooling | null => {
  const limits = limitsOf(state.station)
  const choice = state.prep?.foods.find((one) => one.component === component.id)
  const isCooked = component.food.kind !== 'ready' && component.food.kind !== 'not-cooked'
  const from = coolsFrom(component)
  if (batch !== null && batch.cooling.length > 0)
    return coolingToRead(from, coolingOf(state.station, batch, now), batch.cooling, limits)
  const isToCool =
    choice?.ahead === true ||
    choice?.fromRoom === true ||
    (isCooked && component.held === 'cold' && needsBatch(component))
  const madeAt = batch && firstDoneAt(batch)
  return isToCool ? coolingToRead(from, null, [], limits, madeAt) : null
}
