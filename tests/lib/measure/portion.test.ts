import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { VOLUME_ML } from '#lib/measure/kitchen-units.ts'
import { densityGPerMl, portionMg, wholePortions } from '#lib/measure/portion.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'

const SEED = { seed: 17 }
const scoop = fc.integer({ min: 4, max: 100 }).map(scoopVolumeMl)
const density = fc.double({ min: 0.05, max: 2, noNaN: true })
const count = fc.integer({ min: 0, max: 50 })

describe('portions', () => {
  it('[Q6] two #16 scoops of rice at 158 g a cup are 79 g', () => {
    expect(portionMg(scoopVolumeMl(16), densityGPerMl(158, 1, 'cup'), 2)).toBe(79_000)
  })

  it('[Q6] mass is rounded once, on the whole: three scoops are not three roundings', () => {
    const third = 1.0004
    expect(portionMg(1, third, 1)).toBe(1000)
    expect(portionMg(1, third, 3)).toBe(3001)
    expect(portionMg(1, 0.0005, 1)).toBe(1)
  })

  it('[Q6] a mass is whole milligrams, half a milligram off at most, and more is never less', () => {
    fc.assert(
      fc.property(scoop, density, count, count, (ml, gPerMl, a, b) => {
        const mg = portionMg(ml, gPerMl, a)
        expect(Number.isSafeInteger(mg)).toBe(true)
        expect(Math.abs(mg - ml * gPerMl * a * 1000)).toBeLessThanOrEqual(0.5 + 1e-4)
        if (a <= b) expect(mg).toBeLessThanOrEqual(portionMg(ml, gPerMl, b))
      }),
      SEED,
    )
  })

  it('[Q6] a density comes back as the household weight it was made from', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400_000 }), (mgPerCup) => {
        expect(portionMg(VOLUME_ML.cup, densityGPerMl(mgPerCup / 1000, 1, 'cup'), 1)).toBe(mgPerCup)
      }),
      SEED,
    )
  })

  it('[Q6] nonsense is an error, never NaN', () => {
    for (const bad of [Number.NaN, Infinity, -1]) {
      expect(() => portionMg(bad, 1, 1), String(bad)).toThrow(RangeError)
      expect(() => portionMg(1, bad, 1), String(bad)).toThrow(RangeError)
      expect(() => portionMg(1, 1, bad), String(bad)).toThrow(RangeError)
      expect(() => densityGPerMl(bad, 1, 'cup'), String(bad)).toThrow(RangeError)
      expect(() => densityGPerMl(1, bad, 'cup'), String(bad)).toThrow(RangeError)
    }
    expect(() => portionMg(1, 0, 1)).toThrow(RangeError)
    expect(() => densityGPerMl(0, 1, 'cup')).toThrow(RangeError)
    expect(() => densityGPerMl(1, 0, 'cup')).toThrow(RangeError)
  })

  it('[Q7] whole portions never take more than there is, and one more would', () => {
    fc.assert(
      fc.property(fc.nat(20_000_000), fc.integer({ min: 1, max: 500_000 }), (have, each) => {
        const whole = wholePortions(have, each)
        expect(whole * each).toBeLessThanOrEqual(have)
        expect((whole + 1) * each).toBeGreaterThan(have)
      }),
      SEED,
    )
  })

  it('[Q7] an amount below zero gives no portion', () => {
    expect(wholePortions(-1, 5)).toBe(0)
    expect(wholePortions(4, 5)).toBe(0)
    expect(() => wholePortions(4, 0)).toThrow(RangeError)
    expect(() => wholePortions(Number.NaN, 1)).toThrow(RangeError)
  })
})
