import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mgFrom, mlFrom, VOLUME_ML, WEIGHT_G } from '#lib/measure/kitchen-units.ts'
import { sayFluidOunces, sayPieces, sayWeight } from '#lib/words/amounts-en.ts'

const SEED = { seed: 17, numRuns: 500 }

const BASE: Readonly<Record<string, number>> = {
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
  it('[Q2] fluid ounces say so, and weights say oz', () => {
    expect(sayFluidOunces(mlFrom(2, 'flOz'))).toBe('2 fl oz')
    expect(sayFluidOunces(mlFrom(1.5, 'flOz'))).toBe('1 1/2 fl oz')
    expect(sayFluidOunces(mlFrom(2, 'flOz'), 'metric')).toBe('59 mL')
    expect(sayWeight(mgFrom(2, 'oz'))).toBe('2 oz')
    fc.assert(
      fc.property(ml, (amount) => {
        expect(sayFluidOunces(amount)).toMatch(/ fl oz$/)
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
    expect(sayFluidOunces(946.352946, 'metric')).toBe('945 mL')
    expect(sayFluidOunces(1892.7, 'metric')).toBe('1.9 L')
  })

  it('[Q12] what is heard is within 5 percent, is said the same again, and more is never less', () => {
    const amount = fc.double({ min: 1, max: 100_000, noNaN: true })
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        const said = sayFluidOunces(a, 'metric')
        expect(Math.abs(heard(said) / a - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
        expect(sayFluidOunces(heard(said), 'metric')).toBe(said)
        expect(heard(sayFluidOunces(low, 'metric'))).toBeLessThanOrEqual(
          heard(sayFluidOunces(high, 'metric')) + 1e-6,
        )
      }),
      SEED,
    )
  })
})

describe('the ends of the scale', () => {
  it('[Q13] nothing is said as zero, and something is never said as nothing', () => {
    expect(sayFluidOunces(0)).toBe('0 fl oz')
    expect(sayWeight(0)).toBe('0 oz')
    expect(sayWeight(0, 'metric')).toBe('0 g')
    expect(sayWeight(1)).toBe('under 1/4 oz')
    expect(sayWeight(1, 'metric')).toBe('under 0.1 g')
    expect(sayFluidOunces(1)).toBe('under 1/4 fl oz')
  })

  it('[Q13] an amount below zero carries a minus', () => {
    expect(sayWeight(-mgFrom(1.25, 'lb'))).toBe('-1 lb 4 oz')
    expect(sayFluidOunces(-mlFrom(2, 'flOz'))).toBe('-2 fl oz')
    expect(sayWeight(-350_000, 'metric')).toBe('-350 g')
    expect(sayWeight(-1)).toBe('0 oz')
    expect(sayWeight(-1, 'metric')).toBe('0 g')
    expect(sayPieces(-3)).toBe('-3')
  })

  it('[Q13] any finite amount is said without NaN, Infinity or a minus zero, and others are errors', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (amount) => {
        for (const system of ['us', 'metric'] as const) {
          for (const say of [sayFluidOunces, sayWeight]) {
            expect(say(amount, system)).not.toMatch(/NaN|Infinity|∞|undefined|^-0 /)
          }
        }
      }),
      SEED,
    )
    for (const bad of [Number.NaN, Infinity, -Infinity]) {
      for (const say of [sayFluidOunces, sayWeight]) {
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
