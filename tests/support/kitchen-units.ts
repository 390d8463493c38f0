/** Kitchen units the other way, and on paper: what checks against printed tables are reckoned in. */
import {
  VOLUME_ML,
  type VolumeUnit,
  WEIGHT_G,
  type WeightUnit,
} from '#lib/measure/kitchen-units.ts'
import { stepsHalfUp, wholeTimes } from '#lib/measure/rounding.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'

/** Millimetres in an inch, exact: NIST Handbook 44, Appendix C. */
export const INCH_MM = 25.4

/** The amount of a kitchen unit that so many millilitres come to; not rounded. */
export const mlTo = (ml: number, unit: VolumeUnit): number => ml / VOLUME_ML[unit]

/** Grams in an amount of pounds or ounces of weight. */
export const gramsFrom = (amount: number, unit: WeightUnit): number => amount * WEIGHT_G[unit]

/** The pounds or ounces of weight that so many grams come to; not rounded. */
export const gramsTo = (grams: number, unit: WeightUnit): number => grams / WEIGHT_G[unit]

/** Millimetres in a length in inches. */
export const mmFromInches = (inches: number): number => inches * INCH_MM

/** An amount to so many decimals, halves up, by the engine's own steps. */
export const roundHalfUp = (amount: number, decimals: number): number =>
  stepsHalfUp(amount * 10 ** decimals, 1) / 10 ** decimals

/** Whole level scoops in a volume in millilitres. */
export const wholeScoops = (ml: number, number: number): number =>
  wholeTimes(ml, scoopVolumeMl(number))
