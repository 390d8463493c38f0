import { HOUR_MS, MINUTE_MS, meets, type SafetyLimits } from '#lib/safety/limits.ts'
import { type Reading, thatCount } from '#lib/safety/readings.ts'

/** How a pan is kept: by heat, by cold, by time alone, or dry, which needs none of them. */
export type HeldBy = 'hot' | 'cold' | 'time' | 'dry'

/** How a station reads and what it does by habit. Common practice, no source: the code sets none. */
export interface ReadingPractice {
  /** From one reading to the next. */
  readonly everyMs: number
  /** How long before it is due it is asked for. */
  readonly askBeforeMs: number
  /** A reading that is moved ahead of a rush still has this much after the one before it. */
  readonly leastBetweenMs: number
  /** Hot food known to be below its limit no longer than this may be reheated. */
  readonly reheatIfOutForMs: number
}

export const READING_PRACTICE: ReadingPractice = {
  everyMs: 2 * HOUR_MS,
  askBeforeMs: 10 * MINUTE_MS,
  leastBetweenMs: 30 * MINUTE_MS,
  reheatIfOutForMs: 2 * HOUR_MS,
}

/** A rush: from, and up to but not with, epoch milliseconds. */
export interface RushWindow {
  readonly from: number
  readonly to: number
}

/** Whether a temperature keeps the limit that the pan is held by. */
export const inLimits = (
  heldBy: 'hot' | 'cold',
  reading: Reading,
  limits: SafetyLimits,
  roast = false,
): boolean =>
  meets(
    reading.temperature,
    heldBy === 'cold' ? limits.coldHolding : roast ? limits.hotHoldingRoast : limits.hotHolding,
  )

export interface NextReading {
  /** When it is asked for; a rush that is going on doesn't hide it. */
  readonly askAt: number
  /** From this millisecond on it is missed. */
  readonly dueAt: number
  readonly moved: boolean
}

/**
 * When the next reading of a pan is due. One that would fall into a rush is moved ahead of it, never
 * behind it, and stays in the rush where too little time lies between.
 */
export const nextReading = (
  lastAt: number,
  rushes: readonly RushWindow[],
  practice: ReadingPractice,
): NextReading => {
  const usual = lastAt + practice.everyMs
  let dueAt = usual
  for (let again = true; again; ) {
    const rush = rushes.find(({ from, to }) => from < dueAt && dueAt < to)
    again = rush !== undefined && rush.from - lastAt >= practice.leastBetweenMs
    if (rush && again) dueAt = rush.from
  }
  return { askAt: Math.max(lastAt, dueAt - practice.askBeforeMs), dueAt, moved: dueAt !== usual }
}

export interface HeldPan {
  readonly heldBy: 'hot' | 'cold'
  readonly roast: boolean
  /** Readings count from here on: from its load reading, or since somebody resolved it. */
  readonly since: number
  readonly readings: readonly Reading[]
}

export type HoldingState =
  | { readonly state: 'in-limits'; readonly next: NextReading }
  | { readonly state: 'ask'; readonly next: NextReading }
  /** Nobody knows: it doesn't pass, whatever the reading before it said. */
  | { readonly state: 'missed'; readonly since: number }
  | { readonly state: 'out'; readonly reading: Reading; readonly lastGoodAt: number | null }

/**
 * What is known of a pan at a moment. A reading out of limits stays until it is resolved: a better
 * one after it changes nothing. Readings that lack something, or that lie after `now`, are as good
 * as missing.
 */
export const holdingState = (
  pan: HeldPan,
  rushes: readonly RushWindow[],
  now: number,
  limits: SafetyLimits,
  practice: ReadingPractice = READING_PRACTICE,
): HoldingState => {
  const readings = thatCount(pan.readings).filter(({ at }) => at >= pan.since && at <= now)
  const newest = readings.at(-1)
  if (newest === undefined) return { state: 'missed', since: pan.since }
  const bad = readings.find((one) => !inLimits(pan.heldBy, one, limits, pan.roast))
  if (bad) {
    const lastGoodAt = readings.filter(({ at }) => at < bad.at).at(-1)?.at ?? null
    return { state: 'out', reading: bad, lastGoodAt }
  }
  const next = nextReading(newest.at, rushes, practice)
  if (now >= next.dueAt) return { state: 'missed', since: next.dueAt }
  return { state: now >= next.askAt ? 'ask' : 'in-limits', next }
}

/**
 * As `holdingState`, of food that waits to be put into a pan: what it was cooked, cooled or reheated to
 * at `since` counts as its first reading.
 */
export const waitingState = (
  food: HeldPan,
  rushes: readonly RushWindow[],
  now: number,
  limits: SafetyLimits,
  practice: ReadingPractice = READING_PRACTICE,
): HoldingState => {
  const isRead = thatCount(food.readings).some(({ at }) => at >= food.since && at <= now)
  if (isRead) return holdingState(food, rushes, now, limits, practice)
  const next = nextReading(food.since, rushes, practice)
  if (now >= next.dueAt) return { state: 'missed', since: next.dueAt }
  return { state: now >= next.askAt ? 'ask' : 'in-limits', next }
}

export type WayOut =
  | { readonly way: 'discard' }
  /** On the range, to the reheating limit, by then. */
  | { readonly way: 'reheat'; readonly by: number }
  /** By time alone, the clock running since it was last known to be in limits. */
  | { readonly way: 'time-only'; readonly startedAt: number; readonly throwOutAt: number }

export interface OutOfLimits {
  readonly heldBy: 'hot' | 'cold'
  /** Epoch milliseconds of the last reading in limits; null where there is none. */
  readonly lastGoodAt: number | null
  readonly reheatable: boolean
  /** A written procedure for time alone was prepared in advance and is on site (3-501.19(A)). */
  readonly timeProcedure: boolean
}

/**
 * What may be done with food that is out of its limits; throwing it out always may. How long it has
 * been out is counted from the last reading in limits, and unknown without one, which leaves only
 * throwing out. Reheating is for hot food (3-403.11) and is common practice within its time, which
 * local code may forbid; the person in charge decides.
 */
export const waysOut = (
  out: OutOfLimits,
  now: number,
  limits: SafetyLimits,
  practice: ReadingPractice = READING_PRACTICE,
): readonly WayOut[] => {
  const discard: WayOut = { way: 'discard' }
  const { lastGoodAt } = out
  if (lastGoodAt === null || lastGoodAt > now) return [discard]
  const ways: WayOut[] = []
  if (out.heldBy === 'hot' && out.reheatable && now - lastGoodAt <= practice.reheatIfOutForMs)
    ways.push({ way: 'reheat', by: now + limits.reheatWithin.withinMs })
  const throwOutAt = lastGoodAt + limits.timeOnly4h.withinMs
  if (out.timeProcedure && now < throwOutAt)
    ways.push({ way: 'time-only', startedAt: lastGoodAt, throwOutAt })
  return [...ways, discard]
}

export type ResolveProblem = 'only-in-charge' | 'way-not-allowed'

/** Whether somebody may resolve it this way: only the person in charge, and only as is allowed. */
export const resolveProblem = (
  way: WayOut['way'],
  byPersonInCharge: boolean,
  allowed: readonly WayOut[],
): ResolveProblem | null => {
  if (!byPersonInCharge) return 'only-in-charge'
  return allowed.some((one) => one.way === way) ? null : 'way-not-allowed'
}
