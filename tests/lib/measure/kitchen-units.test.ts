import fc from 'fast-check'
import { describe, expect, expectTypeOf, it } from 'vitest'
import {
  mgFrom,
  mlFrom,
  VOLUME_ML,
  type VolumeUnit,
  WEIGHT_G,
  type WeightUnit,
} from '#lib/measure/kitchen-units.ts'
import { gramsFrom, gramsTo, mlTo, mmFromInches } from '#tests/support/kitchen-units.ts'

const SEED = { seed: 17 }
const volumeUnit = fc.constantFrom(...(Object.keys(VOLUME_ML) as VolumeUnit[]))
const weightUnit = fc.constantFrom(...(Object.keys(WEIGHT_G) as WeightUnit[]))
const amount = fc.double({ min: 0, max: 1e6, noNaN: true })

describe('kitchen units', () => {
  it('[Q1] an amount survives the way there and back to within 1e-15 of it', () => {
    fc.assert(
      fc.property(amount, volumeUnit, weightUnit, (size, volume, weight) => {
        const slack = size * 4.5e-16 + 1e-300
        expect(Math.abs(mlTo(mlFrom(size, volume), volume) - size)).toBeLessThanOrEqual(slack)
        expect(Math.abs(gramsTo(gramsFrom(size, weight), weight) - size)).toBeLessThanOrEqual(slack)
      }),
      SEED,
    )
  })

  it('[Q1] a larger amount is never less, and milligrams are whole', () => {
    fc.assert(
      fc.property(amount, amount, volumeUnit, weightUnit, (a, b, volume, weight) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        expect(mlFrom(low, volume)).toBeLessThanOrEqual(mlFrom(high, volume))
        expect(mgFrom(low, weight)).toBeLessThanOrEqual(mgFrom(high, weight))
        expect(Number.isSafeInteger(mgFrom(low, weight))).toBe(true)
      }),
      SEED,
    )
  })

  it('[Q2] fluid ounces and ounces of weight are units of different functions', () => {
    expectTypeOf<Extract<VolumeUnit, WeightUnit>>().toBeNever()
    expect(Object.keys(VOLUME_ML).filter((unit) => unit in WEIGHT_G)).toEqual([])
    expect(mlFrom(1, 'flOz')).not.toBeCloseTo(gramsFrom(1, 'oz'), 0)
  })

  it('[Q1] an inch is 25.4 mm, so a 2 1/2 in pan is 63.5 mm deep', () => {
    expect(mmFromInches(2.5)).toBe(63.5)
  })
})
