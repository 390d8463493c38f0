import { MINUTE_MS, meets, type SafetyLimits } from '#lib/safety/limits.ts'
import { type Reading, thatCount } from '#lib/safety/readings.ts'

/**
 * Time alone for 4 hours (3-501.19(B)); for 4 hours and never above 70 °F, for what becomes food to
 * be controlled at room temperature, as cut produce or an opened can (its newer text); or for 6 and
 * never above 70 °F, for cold food that is read meanwhile (3-501.19(C)).
 */
export type TimeRule = '4h' | '4h-cool' | '6h'

export interface TimeClock {
  readonly rule: TimeRule
  /** When it left heat or cold, epoch milliseconds: in the prep kitchen, not at the line. */
  readonly startedAt: number
  /** From this millisecond on it is thrown out; what stands on its label. */
  readonly throwOutAt: number
}

/** Habits of time control. Common practice, no source: the code sets none. */
export interface TimePractice {
  /** A start reading is taken at most this long before the food leaves heat or cold. */
  readonly startReadingWithinMs: number
  /** Under the 6-hour rule it is read at least this often. */
  readonly monitorEveryMs: number
}

export const TIME_PRACTICE: TimePractice = {
  startReadingWithinMs: 15 * MINUTE_MS,
  monitorEveryMs: 60 * MINUTE_MS,
}

export interface ClockStart {
  readonly rule: TimeRule
  readonly from: 'hot' | 'cold' | 'room'
  /** When it left heat or cold, or at room temperature when it was cut or opened. */
  readonly leftAt: number
  readonly readings: readonly Reading[]
  /** A written procedure was prepared in advance and is on site (3-501.19(A)). */
  readonly procedure: boolean
}

const RULES_FROM: Readonly<Record<ClockStart['from'], readonly TimeRule[]>> = {
  hot: ['4h'],
  cold: ['4h', '6h'],
  room: ['4h-cool'],
}

export type ClockProblem =
  | 'no-procedure'
  | 'in-the-future'
  | 'no-start-reading'
  | 'start-out-of-limits'
  | 'rule-not-from-there'
  /** It is held otherwise than it is said to have been. */
  | 'held-otherwise'
  | 'past-throw-out'

export type ClockStarted =
  | { readonly ok: true; readonly clock: TimeClock }
  | { readonly ok: false; readonly why: ClockProblem }

/**
 * Starts the clock of food held by time alone. It needs a reading in limits, taken at most shortly
 * before it left and no later than now; the clock runs from leaving, not from now.
 */
export const startClock = (
  start: ClockStart,
  now: number,
  limits: SafetyLimits,
  practice: TimePractice = TIME_PRACTICE,
): ClockStarted => {
  const not = (why: ClockProblem): ClockStarted => ({ ok: false, why })
  if (!start.procedure) return not('no-procedure')
  if (start.leftAt > now) return not('in-the-future')
  if (!RULES_FROM[start.from].includes(start.rule)) return not('rule-not-from-there')
  const readings = thatCount(start.readings).filter(
    ({ at }) => at >= start.leftAt - practice.startReadingWithinMs && at <= now,
  )
  if (readings.length === 0) return not('no-start-reading')
  const limit = {
    hot: limits.timeOnlyStartHot,
    cold: limits.timeOnlyStartCold,
    room: limits.timeOnlyStartRoom,
  }[start.from]
  if (readings.some((one) => one.at <= start.leftAt && !meets(one.temperature, limit)))
    return not('start-out-of-limits')
  if (!readings.some((one) => meets(one.temperature, limit))) return not('start-out-of-limits')
  const rule = start.rule === '6h' ? limits.timeOnly6h : limits.timeOnly4h
  const throwOutAt = start.leftAt + rule.withinMs
  if (now >= throwOutAt) return not('past-throw-out')
  return { ok: true, clock: { rule: start.rule, startedAt: start.leftAt, throwOutAt } }
}

/**
 * When food on a clock is thrown out given what was read since: at its time, or under a rule
 * that names a warmest at the first reading above it, whichever is first. A reading doesn't need to be
 * complete to condemn.
 */
export const throwOutMoment = (
  clock: TimeClock,
  readings: readonly Reading[],
  limits: SafetyLimits,
): number => {
  if (clock.rule === '4h') return clock.throwOutAt
  return readings
    .filter(
      ({ at, temperature }) => at >= clock.startedAt && !meets(temperature, limits.timeOnlyWarmest),
    )
    .reduce((first, { at }) => Math.min(first, at), clock.throwOutAt)
}

/**
 * When the next reading of food under the 6-hour rule is due; null under the 4-hour rules, which
 * need none. From that millisecond on it is missed, and a missing reading never passes.
 */
export const nextMonitoring = (
  clock: TimeClock,
  readings: readonly Reading[],
  practice: TimePractice = TIME_PRACTICE,
): number | null => {
  if (clock.rule !== '6h') return null
  const last = thatCount(readings).at(-1)?.at ?? clock.startedAt
  return Math.max(last, clock.startedAt) + practice.monitorEveryMs
}

/**
 * Whether a build that would be finished at `finishedAt` may still take it: it is never sold past
 * its time, nor in a build that would be finished at it or after.
 */
export const mayTake = (throwOutAt: number, now: number, finishedAt: number): boolean =>
  now < throwOutAt && Math.max(now, finishedAt) < throwOutAt

/** The earliest throw-out time of several; null where none is on a clock. */
export const earliestThrowOut = (moments: readonly (number | null)[]): number | null =>
  moments.reduce<number | null>(
    (first, one) => (one === null ? first : first === null ? one : Math.min(first, one)),
    null,
  )

export interface MadeFood {
  readonly madeAt: number
  /** Throw-out time of each thing it took; null for what is held by heat or cold. */
  readonly taken: readonly (number | null)[]
  /** As what the shelf is known; none: made food is on time alone from being made. */
  readonly shelfHeld: 'hot' | 'cold' | 'none'
  /** How long made food waits to be collected: the station's own promise. */
  readonly collectWithinMs: number
}

export interface MadeUntil {
  readonly collectBy: number
  /** Never handed over from this millisecond on; null where no clock binds it. */
  readonly throwOutAt: number | null
  /** On a hot or cold shelf: as `throwOutAt`, should nothing say that it was held there since it was made. */
  readonly roomUntil?: number
}

/** The clocks of what was taken bind made food, on any shelf; the oldest governs. */
export const madeUntil = (made: MadeFood, limits: SafetyLimits): MadeUntil => {
  const room = made.madeAt + limits.timeOnly4h.withinMs
  const isHeld = made.shelfHeld !== 'none'
  const throwOutAt = earliestThrowOut([...made.taken, isHeld ? null : room])
  const collectBy = made.madeAt + made.collectWithinMs
  return {
    collectBy: throwOutAt === null ? collectBy : Math.min(collectBy, throwOutAt),
    throwOutAt,
    ...(isHeld ? { roomUntil: room } : {}),
  }
}
