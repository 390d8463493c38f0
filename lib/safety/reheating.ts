import { type HeatLack, type HeatReading, heatedTo } from '#lib/safety/cooking.ts'
import type { HeatLimit, SafetyLimits, TimedTemperature } from '#lib/safety/limits.ts'

export const REHEATING_PLACES = ['range', 'oven', 'microwave', 'hot-well'] as const

export type ReheatingPlace = (typeof REHEATING_PLACES)[number]

/**
 * Where a station reheats: on the range only, unless its settings say more. A hot well holds and
 * never heats, so that it can't be among them. Common practice, no source.
 */
export const REHEAT_ON: readonly ReheatingPlace[] = ['range']

export interface Reheating {
  readonly what: 'cooked-here' | 'commercial-pack'
  readonly place: ReheatingPlace
  /** When it left 41 °F, epoch milliseconds. */
  readonly startedAt: number
  readonly readings: readonly HeatReading[]
}

export type ReheatProblem = 'not-there' | 'too-late' | HeatLack

export type Reheated =
  | { readonly ok: true; readonly by: TimedTemperature; readonly at: number }
  | { readonly ok: false; readonly why: ReheatProblem }

/** The limit for reheating something somewhere, for hot holding. */
export const reheatLimit = (
  what: Reheating['what'],
  place: ReheatingPlace,
  limits: SafetyLimits,
): HeatLimit =>
  what === 'commercial-pack'
    ? limits.reheatCommercialPack
    : place === 'microwave'
      ? limits.reheatMicrowave
      : limits.reheat

/** Whether it is reheated only where the station may: the hot well never. */
export const mayReheatOn = (
  place: ReheatingPlace,
  allowed: readonly ReheatingPlace[] = REHEAT_ON,
): boolean => place !== 'hot-well' && allowed.includes(place)

/**
 * Whether food was reheated for hot holding: where the station may, to its limit, and within 2 hours
 * of leaving 41 °F; the last millisecond counts. Too late isn't mended by going on heating.
 */
export const reheated = (
  reheating: Reheating,
  now: number,
  limits: SafetyLimits,
  allowed: readonly ReheatingPlace[] = REHEAT_ON,
): Reheated => {
  if (!mayReheatOn(reheating.place, allowed)) return { ok: false, why: 'not-there' }
  const by = reheating.startedAt + limits.reheatWithin.withinMs
  const inTime = reheating.readings.filter(({ at }) => at >= reheating.startedAt && at <= by)
  const verdict = heatedTo(
    inTime.filter(({ at }) => at <= now),
    reheatLimit(reheating.what, reheating.place, limits),
  )
  if (verdict.met) return { ok: true, by: verdict.by, at: verdict.at }
  return { ok: false, why: now > by ? 'too-late' : verdict.why }
}
