import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mgFrom, mlFrom, TSP_PER, VOLUME_ML, WEIGHT_G } from '#lib/quantity/kitchen-units.ts'
import { sayFluidOunces, sayPieces, sayVolume, sayWeight } from '#lib/quantity/say-amount.ts'

const SEED = { seed: 17, numRuns: 500 }

const BASE: Readonly<Record<string, number>> = {
  gal: TSP_PER.gallon * VOLUME_ML.tsp,
  qt: TSP_PER.quart * VOLUME_ML.tsp,
  cup: TSP_PER.cup * VOLUME_ML.tsp,
  cups: TSP_PER.cup * VOLUME_ML.tsp,
  Tbsp: TSP_PER.tbsp * VOLUME_ML.tsp,
  tsp: VOLUME_ML.tsp,
  lb: WEIGHT_G.lb,
  oz: WEIGHT_G.oz,
  g: 1,
  kg: 1000,
  mL: 1,
  L: 1000,
}

/** Reads a said amount back, in mL or grams, as a cook would. */
function heard(said: string): number {
  let sum = 0
  let number = 0
  for (const word of said.split(' ')) {
    const unit = BASE[word]
    if (unit !== undefined) {
      sum += number * unit
      number = 0
    } else {
      const [over, under] = word.replaceAll(',', '').split('/').map(Number)
      number += (over ?? Number.NaN) / (under ?? 1)
    }
  }
  return sum
}

const ml = fc.double({ min: 2.5 * VOLUME_ML.tsp, max: 200_000, noNaN: true })
const grams = fc.double({ min: 30, max: 100_000, noNaN: true })

describe('volumes', () => {
  it('[Q10] volumes are said in the largest measures a kitchen has', () => {
    expect(sayVolume(mlFrom(11.25, 'cup'))).toBe('2 qt 3 1/4 cups')
    expect(sayVolume(mlFrom(3, 'tsp'))).toBe('1 Tbsp')
    expect(sayVolume(mlFrom(1, 'cup'))).toBe('1 cup')
    expect(sayVolume(mlFrom(0.5, 'cup'))).toBe('1/2 cup')
    expect(sayVolume(mlFrom(4 / 3, 'cup'))).toBe('1 1/3 cups')
    expect(sayVolume(mlFrom(5, 'tbsp'))).toBe('1/4 cup 1 Tbsp')
    expect(sayVolume(mlFrom(33, 'tsp'))).toBe('2/3 cup 1 tsp')
    expect(sayVolume(mlFrom(35, 'tsp'))).toBe('2/3 cup 1 Tbsp')
    expect(sayVolume(mlFrom(5.25, 'tsp'))).toBe('1 Tbsp 2 1/4 tsp')
    expect(sayVolume(mlFrom(4, 'quart'))).toBe('1 gal')
    expect(sayVolume(mlFrom(4 - 1e-9, 'quart'))).toBe('1 gal')
    expect(sayVolume(mlFrom(3.99, 'cup'))).toBe('1 qt')
  })

  it('[Q10] what is heard is within 5 percent of what is there, from 2 1/2 tsp up', () => {
    fc.assert(
      fc.property(ml, (amount) => {
        expect(Math.abs(heard(sayVolume(amount)) / amount - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
      }),
      SEED,
    )
  })

  it('[Q10] what is heard is said the same again, and more is never said as less', () => {
    fc.assert(
      fc.property(ml, ml, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        expect(sayVolume(heard(sayVolume(a)))).toBe(sayVolume(a))
        expect(heard(sayVolume(low))).toBeLessThanOrEqual(heard(sayVolume(high)) + 1e-6)
      }),
      SEED,
    )
  })

  it('[Q2] fluid ounces say so, and weights say oz', () => {
    expect(sayFluidOunces(mlFrom(2, 'flOz'))).toBe('2 fl oz')
    expect(sayFluidOunces(mlFrom(1.5, 'flOz'))).toBe('1 1/2 fl oz')
    expect(sayFluidOunces(mlFrom(2, 'flOz'), 'metric')).toBe('59 mL')
    expect(sayWeight(mgFrom(2, 'oz'))).toBe('2 oz')
    fc.assert(
      fc.property(ml, (amount) => {
        expect(sayFluidOunces(amount)).toMatch(/ fl oz$/)
        expect(sayVolume(amount)).not.toContain('oz')
        expect(sayWeight(amount * 1000)).not.toContain('fl')
      }),
      SEED,
    )
  })
})

describe('weights', () => {
  it('[Q11] weights are said in pounds and quarter ounces', () => {
    expect(sayWeight(mgFrom(1.25, 'lb'))).toBe('1 lb 4 oz')
    expect(sayWeight(mgFrom(3, 'lb'))).toBe('3 lb')
    expect(sayWeight(mgFrom(15.9, 'oz'))).toBe('1 lb')
    expect(sayWeight(mgFrom(0.75, 'oz'))).toBe('3/4 oz')
  })

  it('[Q11] what is heard is within 1/8 oz, and more is never said as less', () => {
    fc.assert(
      fc.property(grams, grams, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        const off = Math.abs(heard(sayWeight(a * 1000)) - a)
        expect(off).toBeLessThanOrEqual(WEIGHT_G.oz / 8 + 1e-6)
        expect(heard(sayWeight(low * 1000))).toBeLessThanOrEqual(
          heard(sayWeight(high * 1000)) + 1e-6,
        )
      }),
      SEED,
    )
  })
})

describe('metric', () => {
  it('[Q12] kilograms and grams, litres and millilitres, with no more digits than a scale is read to', () => {
    expect(sayWeight(1_200_000, 'metric')).toBe('1.2 kg')
    expect(sayWeight(350_000, 'metric')).toBe('350 g')
    expect(sayWeight(123_000, 'metric')).toBe('125 g')
    expect(sayWeight(28_250, 'metric')).toBe('28 g')
    expect(sayWeight(9_960, 'metric')).toBe('10 g')
    expect(sayWeight(5_440, 'metric')).toBe('5.4 g')
    expect(sayWeight(998_000, 'metric')).toBe('1 kg')
    expect(sayWeight(1_230_000, 'metric')).toBe('1.25 kg')
    expect(sayWeight(12_340_000, 'metric')).toBe('12.3 kg')
    expect(sayVolume(946.352946, 'metric')).toBe('945 mL')
    expect(sayVolume(1892.7, 'metric')).toBe('1.9 L')
  })

  it('[Q12] what is heard is within 5 percent, is said the same again, and more is never less', () => {
    const amount = fc.double({ min: 1, max: 100_000, noNaN: true })
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        const said = sayVolume(a, 'metric')
        expect(Math.abs(heard(said) / a - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
        expect(sayVolume(heard(said), 'metric')).toBe(said)
        expect(heard(sayVolume(low, 'metric'))).toBeLessThanOrEqual(
          heard(sayVolume(high, 'metric')) + 1e-6,
        )
      }),
      SEED,
    )
  })
})

describe('the ends of the scale', () => {
  it('[Q13] nothing is said as zero, and something is never said as nothing', () => {
    expect(sayVolume(0)).toBe('0 cups')
    expect(sayWeight(0)).toBe('0 oz')
    expect(sayWeight(0, 'metric')).toBe('0 g')
    expect(sayVolume(0.01)).toBe('under 1/4 tsp')
    expect(sayWeight(1)).toBe('under 1/4 oz')
    expect(sayWeight(1, 'metric')).toBe('under 0.1 g')
    expect(sayFluidOunces(1)).toBe('under 1/4 fl oz')
  })

  it('[Q13] an amount below zero carries a minus', () => {
    expect(sayWeight(-mgFrom(1.25, 'lb'))).toBe('-1 lb 4 oz')
    expect(sayVolume(-mlFrom(2, 'cup'))).toBe('-2 cups')
    expect(sayWeight(-350_000, 'metric')).toBe('-350 g')
    expect(sayWeight(-1)).toBe('0 oz')
    expect(sayWeight(-1, 'metric')).toBe('0 g')
    expect(sayPieces(-3)).toBe('-3')
  })

  it('[Q13] any finite amount is said without NaN, Infinity or a minus zero, and others are errors', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (amount) => {
        for (const system of ['us', 'metric'] as const) {
          for (const say of [sayVolume, sayFluidOunces, sayWeight]) {
            expect(say(amount, system)).not.toMatch(/NaN|Infinity|∞|undefined|^-0 /)
          }
        }
      }),
      SEED,
    )
    for (const bad of [Number.NaN, Infinity, -Infinity]) {
      for (const say of [sayVolume, sayFluidOunces, sayWeight]) {
        expect(() => say(bad)).toThrow(RangeError)
        expect(() => say(bad, 'metric')).toThrow(RangeError)
      }
    }
  })

  it('[Q14] pieces are whole', () => {
    expect(sayPieces(54)).toBe('54')
    expect(sayPieces(0)).toBe('0')
    expect(sayPieces(1200)).toBe('1,200')
    for (const bad of [1.5, Number.NaN, Infinity]) expect(() => sayPieces(bad)).toThrow(RangeError)
  })
})
