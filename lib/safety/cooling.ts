import {
  meets,
  type SafetyLimits,
  type TemperatureLimit,
  type TimeLimit,
} from '#lib/safety/limits.ts'
import { type Reading, thatCount } from '#lib/safety/readings.ts'

export type CoolingFrom = 'cooked' | 'room'

export type CoolingState =
  /** No reading from which to count; `below`: it was read below 135 °F already, for nobody knows how long. */
  | { readonly state: 'no-start'; readonly below: boolean }
  | { readonly state: 'first-stage'; readonly startedAt: number; readonly dueAt: number }
  | { readonly state: 'second-stage'; readonly startedAt: number; readonly dueAt: number }
  | { readonly state: 'cooled'; readonly startedAt: number; readonly at: number }
  /** A stage was missed, by a reading or for want of one. */
  | { readonly state: 'missed'; readonly stage: 1 | 2; readonly startedAt: number }
  /** It was read warmer than the stage that it had passed. */
  | { readonly state: 'warmed'; readonly startedAt: number; readonly at: number }

/**
 * When the clock started: at the last reading in the first run of readings at 135 °F or more, since
 * the food passed 135 somewhere after it. Null without such a reading.
 */
const startOf = (readings: readonly Reading[], limits: SafetyLimits): number | null => {
  const below = readings.findIndex((one) => !meets(one.temperature, limits.coolingFrom))
  return readings[(below === -1 ? readings.length : below) - 1]?.at ?? null
}

/** Food that was made before anybody read it stood at room temperature since then. */
const roomStartOf = (readings: readonly Reading[], madeAt: number | null): number | null => {
  const first = readings[0]?.at
  return first === undefined ? null : Math.min(first, madeAt ?? first)
}

const warmedAfter = (
  readings: readonly Reading[],
  reached: number,
  stays: (one: Reading) => boolean,
): number | null => readings.find((one) => one.at > reached && !stays(one))?.at ?? null

/**
 * Where a batch that cools stands. Both stages are counted from the same start: to 70 °F within
 * 2 hours, and to 41 °F within 6 hours in all, so that a fast first stage lends time to the second.
 * From ingredients at room temperature: to 41 °F within 4 hours of when it was made, or of the first
 * reading where that came before (FDA Food Code 2022, 3-501.14(B)). The last millisecond still counts;
 * a stage for which no reading was taken in time is missed.
 *
 * @param madeAt when the first of it was finished, epoch milliseconds; null where nobody told. Of
 *   cooked food it isn't asked.
 */
export const coolingState = (
  taken: readonly Reading[],
  from: CoolingFrom,
  now: number,
  limits: SafetyLimits,
  madeAt: number | null,
): CoolingState => {
  const readings = thatCount(taken).filter(({ at }) => at <= now)
  const startedAt = from === 'room' ? roomStartOf(readings, madeAt) : startOf(readings, limits)
  if (startedAt === null) return { state: 'no-start', below: readings.length > 0 }
  const since = readings.filter(({ at }) => at >= startedAt)
  const isCold = (one: Reading) => meets(one.temperature, limits.coolingTo)
  const isCool = (one: Reading) => meets(one.temperature, limits.coolingFirstTo)
  const coldBy =
    startedAt + (from === 'room' ? limits.coolingFromRoomWithin : limits.coolingWithin).withinMs
  if (from === 'cooked') {
    const coolBy = startedAt + limits.coolingFirstWithin.withinMs
    const cool = since.find((one) => one.at <= coolBy && isCool(one))
    if (!cool)
      return now > coolBy
        ? { state: 'missed', stage: 1, startedAt }
        : { state: 'first-stage', startedAt, dueAt: coolBy }
    const warmed = warmedAfter(since, cool.at, isCool)
    if (warmed !== null) return { state: 'warmed', startedAt, at: warmed }
  }
  const cold = since.find((one) => one.at <= coldBy && isCold(one))
  if (!cold)
    return now > coldBy
      ? { state: 'missed', stage: 2, startedAt }
      : { state: 'second-stage', startedAt, dueAt: coldBy }
  const warmed = warmedAfter(since, cold.at, isCold)
  return warmed === null
    ? { state: 'cooled', startedAt, at: cold.at }
    : { state: 'warmed', startedAt, at: warmed }
}

export type CoolingWay = 'take-start-reading' | 'go-on' | 'reheat-and-cool-again' | 'discard'

/**
 * What may be done with a batch that cools. After a missed first stage it may be reheated to 165 °F
 * and cooled again, once, while its 2 hours for reheating aren't over (common practice, no source:
 * local code and the person in charge decide); after a missed second stage it is thrown out.
 */
export const coolingWays = (
  state: CoolingState,
  reheatedBefore: boolean,
  now: number,
  limits: SafetyLimits,
): readonly CoolingWay[] => {
  switch (state.state) {
    case 'first-stage':
    case 'second-stage':
    case 'cooled':
      return ['go-on', 'discard']
    case 'missed': {
      const total = state.startedAt + limits.coolingWithin.withinMs
      const firstOver = state.startedAt + limits.coolingFirstWithin.withinMs
      const mayReheat =
        state.stage === 1 &&
        !reheatedBefore &&
        now < Math.min(total, firstOver + limits.reheatWithin.withinMs)
      return mayReheat ? ['reheat-and-cool-again', 'discard'] : ['discard']
    }
    case 'no-start':
      return state.below ? ['discard'] : ['take-start-reading', 'discard']
    case 'warmed':
      return ['discard']
  }
}

/** When somebody who may read temperatures is there: from and up to, with both ends. */
export interface Presence {
  readonly from: number
  readonly to: number
}

/** A stage of a cooling: to what, within what time of its start, and until when that is. */
export interface CoolingStage {
  /** As `coolingState` counts: to 41 °F is 2, also where it is the only one. */
  readonly stage: 1 | 2
  readonly to: TemperatureLimit
  readonly within: TimeLimit
  /** Epoch milliseconds. */
  readonly by: number
}

/**
 * The stages of a cooling that started at a moment. Cooked food has two, both from the same start:
 * FDA Food Code 2022, 3-501.14(A). Food of ingredients at room temperature has one, from when it was
 * made: 3-501.14(B).
 */
export const coolingStages = (
  from: CoolingFrom,
  startedAt: number,
  limits: SafetyLimits,
): readonly CoolingStage[] => {
  const stage = (at: 1 | 2, to: TemperatureLimit, within: TimeLimit): CoolingStage => ({
    ...{ stage: at, to, within, by: startedAt + within.withinMs },
  })
  return from === 'room'
    ? [stage(2, limits.coolingTo, limits.coolingFromRoomWithin)]
    : [
        stage(1, limits.coolingFirstTo, limits.coolingFirstWithin),
        stage(2, limits.coolingTo, limits.coolingWithin),
      ]
}

/** Those that no reading shows yet; none where it is over, one way or the other. */
export const stagesToCome = (
  state: CoolingState,
  from: CoolingFrom,
  limits: SafetyLimits,
): readonly CoolingStage[] => {
  if (!('dueAt' in state)) return []
  const stages = coolingStages(from, state.startedAt, limits)
  return state.state === 'first-stage' ? stages : stages.filter(({ stage }) => stage === 2)
}

export type CoolingPlanned =
  | {
      readonly ok: true
      /** Each stage's reading: the latest moment at which it can be taken, and until when it could. */
      readonly stages: readonly {
        readonly stage: 1 | 2
        readonly readAt: number
        readonly by: number
      }[]
    }
  | {
      readonly ok: false
      readonly stage: 1 | 2
      readonly why: 'nobody-there' | 'too-soon'
      /** By when that stage has to be read. */
      readonly by: number
    }

const latestPresence = (present: readonly Presence[], after: number, by: number): number | null => {
  const moments = present
    .filter(({ from, to }) => from <= by && to > after)
    .map(({ to }) => Math.min(to, by))
  return moments.length === 0 ? null : Math.max(...moments)
}

/**
 * Whether stages of a cooling can be read by the people who are there after a moment, that of its last
 * reading. `fastestMs` is how long this kitchen needs at least for each stage, from the start: a reading
 * before that could only fail. Where it can't be read, it isn't cooled: use it, hold it hot, or throw it
 * out.
 */
export const planCooling = (
  toCome: readonly CoolingStage[],
  after: number,
  present: readonly Presence[],
  fastestMs: { readonly first: number; readonly total: number },
): CoolingPlanned => {
  const stages: { stage: 1 | 2; readAt: number; by: number }[] = []
  for (const { stage, by, within } of toCome) {
    const fastest = stage === 1 ? fastestMs.first : fastestMs.total
    const readAt = latestPresence(present, after, by)
    if (readAt === null) return { ok: false, stage, why: 'nobody-there', by }
    if (readAt < by - within.withinMs + fastest) return { ok: false, stage, why: 'too-soon', by }
    stages.push({ stage, readAt, by })
  }
  return { ok: true, stages }
}
