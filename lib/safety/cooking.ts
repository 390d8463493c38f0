import type { HeatLimit, SafetyLimits, TimedTemperature } from '#lib/safety/limits.ts'
import { type Reading, thatCount } from '#lib/safety/readings.ts'
import { keeps } from '#lib/safety/temperature.ts'

export const FOOD_KINDS = [
  'eggs-to-order',
  'eggs-batch',
  'fish-or-meat',
  'ground-meat',
  'poultry-or-stuffed',
  'plant',
  'not-cooked',
] as const

/** What a batch is cooked as. `not-cooked` is said, never assumed. */
export type FoodKind = (typeof FOOD_KINDS)[number]

/** Of what a station's document says of a food. Where nobody has said, the highest limit holds. */
export const kindToCook = (kind: FoodKind | 'ready' | null): FoodKind =>
  kind === 'ready' ? 'not-cooked' : (kind ?? 'poultry-or-stuffed')

export type CookedIn = 'usual' | 'microwave'

/** What was read when the cooking ended. */
export interface HeatReading extends Reading {
  /** Seconds for which it was held there; null where nobody timed it, which counts as none. */
  readonly heldSeconds: number | null
  /** Seconds for which it stood covered afterwards; null where it didn't or nobody timed it. */
  readonly stoodSeconds: number | null
}

/** The limit for a kind of food; null for what isn't cooked here. */
export const cookingLimit = (
  kind: FoodKind,
  cookedIn: CookedIn,
  limits: SafetyLimits,
): HeatLimit | null => {
  if (kind === 'not-cooked') return null
  if (kind === 'plant') return limits.cookPlant
  if (cookedIn === 'microwave') return limits.cookMicrowave
  switch (kind) {
    case 'eggs-to-order':
      return limits.cookEggsToOrder
    case 'eggs-batch':
      return limits.cookEggsBatch
    case 'fish-or-meat':
      return limits.cookFishOrMeat
    case 'ground-meat':
      return limits.cookGroundMeat
    case 'poultry-or-stuffed':
      return limits.cookPoultryOrStuffed
  }
}

export type HeatLack = 'no-reading' | 'too-low' | 'not-long-enough' | 'not-stood'

export type HeatVerdict =
  | { readonly met: true; readonly by: TimedTemperature; readonly at: number }
  | { readonly met: false; readonly why: HeatLack }

const ofOne = (reading: HeatReading, limit: HeatLimit): HeatVerdict => {
  const reached = limit.combinations.filter((one) =>
    keeps(reading.temperature, 'at-least', one.tenths),
  )
  if (reached.length === 0) return { met: false, why: 'too-low' }
  const held = reading.heldSeconds ?? 0
  const by = reached.find((one) => held >= one.seconds)
  if (!by) return { met: false, why: 'not-long-enough' }
  if ((reading.stoodSeconds ?? 0) < limit.standSeconds) return { met: false, why: 'not-stood' }
  return { met: true, by, at: reading.at }
}

/** By the moment of each check, whether every spot of it met the limit. */
const checksOf = (
  readings: readonly HeatReading[],
  limit: HeatLimit,
): ReadonlyMap<number, HeatVerdict> => {
  const checks = new Map<number, HeatVerdict>()
  for (const one of thatCount(readings)) {
    const sofar = checks.get(one.at)
    if (sofar === undefined || sofar.met) checks.set(one.at, ofOne(one, limit))
  }
  return checks
}

/**
 * Whether a check of the food meets a heat limit: in the middle of the food, with probe and
 * initials, at a combination's temperature for its seconds. Readings of one moment are one check,
 * of which every spot must meet it. No reading never passes.
 */
export const heatedTo = (readings: readonly HeatReading[], limit: HeatLimit): HeatVerdict => {
  const verdicts = [...checksOf(readings, limit).values()]
  return (
    verdicts.find((one) => one.met) ?? verdicts.at(-1) ?? { met: false, why: 'no-reading' as const }
  )
}

export interface Cooking {
  readonly kind: FoodKind
  readonly cookedIn: CookedIn
  readonly readings: readonly HeatReading[]
}

/** Whether a batch was cooked to its food's limit; null where that food isn't cooked here. */
export const cookedTo = (cooking: Cooking, limits: SafetyLimits): HeatVerdict | null => {
  const limit = cookingLimit(cooking.kind, cooking.cookedIn, limits)
  return limit === null ? null : heatedTo(cooking.readings, limit)
}

/** Of what was read of the cooking, what met its food's limit; nothing where that food isn't cooked here. */
export const thatMet = (cooking: Cooking, limits: SafetyLimits): readonly HeatReading[] => {
  const limit = cookingLimit(cooking.kind, cooking.cookedIn, limits)
  if (limit === null) return []
  const checks = checksOf(cooking.readings, limit)
  return thatCount(cooking.readings).filter(({ at }) => checks.get(at)?.met === true)
}
