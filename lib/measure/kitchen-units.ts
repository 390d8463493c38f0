import { stepsHalfUp } from '#lib/measure/rounding.ts'

/**
 * US customary volumes in millilitres, exact decimals: the gallon is 231 cubic inches, the inch
 * 2.54 cm (NIST Handbook 44, Appendix C); quart 1/4, pint 1/8, cup 1/16, fluid ounce 1/128,
 * tablespoon 1/256 and teaspoon 1/768 of it. Not the label cup of 240 mL (21 CFR 101.9).
 */
export const VOLUME_ML = {
  gallon: 3785.411784,
  quart: 946.352946,
  pint: 473.176473,
  cup: 236.5882365,
  flOz: 29.5735295625,
  tbsp: 14.78676478125,
  tsp: 4.92892159375,
} as const

/** Avoirdupois weights in grams, exact: NIST Handbook 44, Appendix C. Never a fluid ounce. */
export const WEIGHT_G = {
  lb: 453.59237,
  oz: 28.349523125,
} as const

export type VolumeUnit = keyof typeof VOLUME_ML
export type WeightUnit = keyof typeof WEIGHT_G

/** Millilitres in an amount of a kitchen unit of volume. */
export function mlFrom(amount: number, unit: VolumeUnit): number {
  return amount * VOLUME_ML[unit]
}

/** Whole milligrams in an amount of pounds or ounces of weight, rounded once, halves up. */
export function mgFrom(amount: number, unit: WeightUnit): number {
  return stepsHalfUp(amount * WEIGHT_G[unit] * 1000, 1)
}
