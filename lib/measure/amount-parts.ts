import { VOLUME_ML, WEIGHT_G } from '#lib/measure/kitchen-units.ts'
import { stepsHalfUp } from '#lib/measure/rounding.ts'

/** Those that measuring cups and spoons are sold in, and what they give together. */
export type KitchenFraction = '1/8' | '1/4' | '1/3' | '3/8' | '1/2' | '5/8' | '2/3' | '3/4' | '7/8'
export type SpokenUnit = 'gal' | 'qt' | 'pt' | 'cup' | 'tbsp' | 'tsp' | 'flOz' | 'lb' | 'oz'
export type MetricUnit = 'g' | 'kg' | 'mL' | 'L'

/** One "2 1/2 cups" of an amount; an amount is one or more of them, largest unit first. */
export type AmountPart = {
  readonly whole: number
  readonly fraction: KitchenFraction | null
  readonly unit: SpokenUnit
}

export type MetricAmount = {
  readonly value: number
  readonly decimals: number
  readonly unit: MetricUnit
}

const QUARTERS: readonly (KitchenFraction | null)[] = [null, '1/4', '1/2', '3/4']

const fromQuarters = (quarters: number, unit: SpokenUnit): AmountPart => ({
  whole: Math.floor(quarters / 4),
  fraction: QUARTERS[quarters % 4] ?? null,
  unit,
})

const isSaid = (part: AmountPart): boolean => part.whole > 0 || part.fraction !== null

function assertAmount(amount: number): void {
  if (!(amount >= 0 && amount < Infinity)) {
    throw new RangeError('an amount must be finite and 0 or more')
  }
}

/** A volume in fluid ounces to the nearest quarter, halves up; empty where that is nothing. */
export function fluidOunceParts(ml: number): readonly AmountPart[] {
  assertAmount(ml)
  return [fromQuarters(stepsHalfUp(ml / VOLUME_ML.flOz, 0.25), 'flOz')].filter(isSaid)
}

/**
 * A weight in pounds and ounces, to the nearest quarter ounce, halves up: the ounce scale of
 * TM 10-412, General Information (.00 to .12 is 0, .13 to .37 is 1/4, and so on, .88 to .99 is 1).
 * Milligrams, 0 or more; empty where it rounds to nothing; throws RangeError otherwise.
 */
export function weightParts(mg: number): readonly AmountPart[] {
  assertAmount(mg)
  const quarters = stepsHalfUp(mg / 1000 / WEIGHT_G.oz, 0.25)
  const lb: AmountPart = { whole: Math.floor(quarters / 64), fraction: null, unit: 'lb' }
  return [lb, fromQuarters(quarters % 64, 'oz')].filter(isSaid)
}

const METRIC_STEPS: readonly { readonly under: number; readonly step: number }[] = [
  { under: 10, step: 0.1 },
  { under: 100, step: 1 },
  { under: 1_000, step: 5 },
  { under: 10_000, step: 50 },
  { under: Infinity, step: 100 },
]

/**
 * Grams or millilitres as a kitchen reads them: under 10 to the 0.1, under 100 to the 1, under
 * 1,000 to the 5, under 10 kg or L to the 0.05 kg or L, then to the 0.1; so at most 5 percent off
 * from 1 up. 0 or more; throws RangeError otherwise.
 */
export function metricAmount(amount: number, small: 'g' | 'mL'): MetricAmount {
  assertAmount(amount)
  const step = METRIC_STEPS.find(({ under }) => amount < under)?.step ?? 100
  const tenths = stepsHalfUp(amount, step) * Math.round(step * 10)
  if (tenths < 10_000) return { value: tenths / 10, decimals: tenths < 100 ? 1 : 0, unit: small }
  return { value: tenths / 10_000, decimals: 2, unit: small === 'g' ? 'kg' : 'L' }
}
