import { mlFrom, type VolumeUnit } from '#lib/measure/kitchen-units.ts'
import { stepsHalfUp, wholeTimes } from '#lib/measure/rounding.ts'

/**
 * Whole milligrams of `count` measures of `volumeMl` of a food of `gPerMl` grams per millilitre:
 * multiplied first, rounded once, halves up. Volume and count 0 or more (count may be a fraction),
 * density above 0. Throws RangeError otherwise.
 */
export function portionMg(volumeMl: number, gPerMl: number, count: number): number {
  if (!(volumeMl >= 0)) throw new RangeError('volume must be 0 mL or more')
  if (!(gPerMl > 0)) throw new RangeError('density must be above 0 g/mL')
  if (!(count >= 0)) throw new RangeError('count must be 0 or more')
  return stepsHalfUp(volumeMl * gPerMl * count * 1000, 1)
}

/**
 * Grams per millilitre from a household weight, as USDA's tables state them (158 g per cup).
 * Grams and amount must be finite and above 0; throws RangeError otherwise.
 */
export function densityGPerMl(grams: number, amount: number, unit: VolumeUnit): number {
  if (!(grams > 0 && grams < Infinity)) throw new RangeError('grams must be above 0')
  if (!(amount > 0 && amount < Infinity)) throw new RangeError('amount must be above 0')
  return grams / mlFrom(amount, unit)
}

/**
 * Whole portions that an amount still gives, never a part of one; both in one unit (milligrams,
 * pieces). An amount below 0 gives none. Throws RangeError unless `each` is above 0.
 */
export function wholePortions(have: number, each: number): number {
  return wholeTimes(Math.max(have, 0), each)
}
