import { stepsHalfUp } from '#lib/quantity/rounding.ts'

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

/** Whole teaspoons in each unit of volume: 3 a tablespoon, 2 tablespoons a fluid ounce. */
export const TSP_PER = {
  gallon: 768,
  quart: 192,
  pint: 96,
  cup: 48,
  flOz: 6,
  tbsp: 3,
  tsp: 1,
} as const

/** Millimetres in an inch, exact: NIST Handbook 44, Appendix C. */
export const INCH_MM = 25.4

export type VolumeUnit = keyof typeof VOLUME_ML
export type WeightUnit = keyof typeof WEIGHT_G

/** Millilitres in an amount of a kitchen unit of volume. */
export function mlFrom(amount: number, unit: VolumeUnit): number {
  return amount * VOLUME_ML[unit]
}

/** The amount of a kitchen unit that so many millilitres come to; not rounded. */
export function mlTo(ml: number, unit: VolumeUnit): number {
  return ml / VOLUME_ML[unit]
}

/** Grams in an amount of pounds or ounces of weight. */
export function gramsFrom(amount: number, unit: WeightUnit): number {
  return amount * WEIGHT_G[unit]
}

/** The pounds or ounces of weight that so many grams come to; not rounded. */
export function gramsTo(grams: number, unit: WeightUnit): number {
  return grams / WEIGHT_G[unit]
}

/** Whole milligrams in an amount of pounds or ounces of weight, rounded once, halves up. */
export function mgFrom(amount: number, unit: WeightUnit): number {
  return stepsHalfUp(amount * WEIGHT_G[unit] * 1000, 1)
}

/** Millimetres in a length in inches. */
export function mmFromInches(inches: number): number {
  return inches * INCH_MM
}
