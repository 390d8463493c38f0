import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  countChances,
  logGamma,
  normalUpTo,
  portionChances,
  portionSpread,
} from '#lib/estimate/count-chances.ts'
import { chanceUpTo } from '#tests/support/best-amount.ts'

const sum = (chances: Float64Array): number => chances.reduce((all, one) => all + one, 0)

describe('chances of counts', () => {
  it('[Z5] the gamma function meets factorials and the root of pi', () => {
    expect(logGamma(11)).toBeCloseTo(Math.log(3_628_800), 11)
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 11)
    expect(logGamma(0.1)).toBeCloseTo(2.2527126517342, 10)
  })

  it('[Z5] the normal distribution meets its tabled values', () => {
    expect(normalUpTo(0)).toBeCloseTo(0.5, 7)
    expect(normalUpTo(1.644854)).toBeCloseTo(0.95, 6)
    expect(normalUpTo(-1.281552)).toBeCloseTo(0.1, 6)
  })

  it('[Z6] chances of portions are those of each number of takings, convolved', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (mean, spread, twice) => {
          const most = 30
          const takings = { mean, variance: mean * spread }
          const counts = countChances(takings, most)
          const expected = new Float64Array(most + 1)
          let some = Float64Array.from({ length: most + 1 }, (_, k) => (k === 0 ? 1 : 0))
          for (let n = 0; n <= most; n += 1) {
            for (let k = 0; k <= most; k += 1)
              expected[k] = (expected[k] ?? 0) + (counts[n] ?? 0) * (some[k] ?? 0)
            some = Float64Array.from(
              { length: most + 1 },
              (_, k) => (some[k - 1] ?? 0) * (1 - twice) + (some[k - 2] ?? 0) * twice,
            )
          }
          const got = portionChances(takings, [1 - twice, twice], most)
          for (let k = 0; k <= most; k += 1)
            expect(Math.abs((got[k] ?? 0) - (expected[k] ?? 0))).toBeLessThan(1e-9)
        },
      ),
      { seed: 4, numRuns: 100 },
    )
  })

  it('[Z6] the mean and variance of portions are those of their chances', () => {
    const takings = { mean: 20, variance: 45 }
    const perTaking = [0.7, 0.2, 0.1]
    const chances = portionChances(takings, perTaking, 400)
    const mean = chances.reduce((all, chance, k) => all + k * chance, 0)
    const square = chances.reduce((all, chance, k) => all + k * k * chance, 0)
    const spread = portionSpread(takings, perTaking)
    expect(mean).toBeCloseTo(spread.mean, 6)
    expect(square - mean * mean).toBeCloseTo(spread.variance, 4)
  })

  it('[Z5] large counts neither overflow nor vanish', () => {
    for (const count of [
      { mean: 2_000, variance: 2_000 },
      { mean: 2_000, variance: 2_100 },
      { mean: 2_000, variance: 90_000 },
    ]) {
      const reach = Math.round(count.mean + 14 * Math.sqrt(count.variance))
      expect(sum(countChances(count, reach))).toBeCloseTo(1, 6)
      const half = chanceUpTo(countChances(count, 2_000), 2_000)
      expect(half).toBeGreaterThan(0.45)
      expect(half).toBeLessThan(0.6)
    }
  })

  it('[Z5] nothing expected is nothing for certain', () => {
    expect([...countChances({ mean: 0, variance: 0 }, 2)]).toEqual([1, 0, 0])
  })
})
