/** A weight as it is typed off a scale. */
import { mgFrom } from '#lib/measure/kitchen-units.ts'
import { numberOf } from '#lib/measure/number-pad.ts'

export const SCALE_UNITS = ['lb', 'oz', 'kg'] as const

export type ScaleUnit = (typeof SCALE_UNITS)[number]

/** Whole milligrams; null while no number is typed. */
export const weightMg = (text: string, unit: ScaleUnit): number | null => {
  const value = numberOf(text)
  if (value === null) return null
  return unit === 'kg' ? Math.round(value * 1_000_000) : mgFrom(value, unit)
}
