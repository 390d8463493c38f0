import jstat from 'jstat'
import { poissonDistribution } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { countChances, logPoisson } from '#lib/estimate/count-chances.ts'
import { chanceUpTo } from '#tests/support/best-amount.ts'

const chance = (k: number, mean: number): number => Math.exp(logPoisson(k, mean))
const upTo = (k: number, mean: number): number =>
  chanceUpTo(countChances({ mean, variance: mean }, k), k)

/** Digits that the book prints, and the same by thirty-digit arithmetic. */
describe('OpenStax, Introductory Statistics 2e, section 4.6', () => {
  it.each([
    { what: 'P(X > 1), mean 0.75', got: 1 - upTo(1, 0.75), printed: 0.1734, exact: 0.1733585327 },
    { what: 'P(X = 160), mean 147', got: chance(160, 147), printed: 0.018, exact: 0.01803135979 },
    { what: 'P(X ≤ 160), mean 147', got: upTo(160, 147), printed: 0.8666, exact: 0.866628273591 },
    { what: 'P(X = 2), mean 1.7292', got: chance(2, 1.7292), printed: 0.2653, exact: 0.2652640768 },
    {
      what: 'P(X > 2), mean 1.7292',
      got: 1 - upTo(2, 1.7292),
      printed: 0.2505,
      exact: 0.2505040809,
    },
  ])('[Z1] $what is printed as $printed', ({ got, printed, exact }) => {
    expect(Math.abs(got - printed)).toBeLessThan(0.0001)
    expect(Math.abs(got - exact)).toBeLessThan(1e-9)
  })

  it('[Z1] P(X = 10) of mean 2.04 is printed as 0.000045', () => {
    expect(chance(10, 2.04)).toBeCloseTo(4.4727837e-5, 11)
  })

  it('[Z1] three loaves in five minutes, of twelve in half an hour', () => {
    expect(chance(3, 2)).toBeCloseTo(0.1804470443, 9)
  })
})

/** By thirty-digit arithmetic. */
describe('computed values', () => {
  it.each([
    { k: 4, mean: 6, exact: 0.285056500317 },
    { k: 7, mean: 6, exact: 0.743979760454 },
    { k: 8, mean: 6, exact: 0.847237493985 },
    { k: 7, mean: 10, exact: 0.2202206466 },
    { k: 2, mean: 0.5, exact: 0.985612322033 },
    { k: 2, mean: 10, exact: 0.00276939571551 },
  ])('[Z1] P(X ≤ $k) of mean $mean is $exact', ({ k, mean, exact }) => {
    expect(Math.abs(upTo(k, mean) - exact)).toBeLessThan(1e-10)
  })
})

/** Chances from nothing on; the package stops where less than 0.0001 is left. */
const cumulated = (mean: number): readonly number[] => {
  let sum = 0
  return (poissonDistribution(mean) ?? []).map((one) => {
    sum += one
    return sum
  })
}

describe('an independent package, simple-statistics', () => {
  it.each([0.1, 2, 17.5, 60, 147, 700, 1500])('[Z1] says the same of mean %s', (mean) => {
    const theirs = cumulated(mean)
    expect(theirs.length).toBeGreaterThan(mean + 2 * Math.sqrt(mean))
    theirs.forEach((all, k) => {
      expect(Math.abs(upTo(k, mean) - all), `up to ${k}`).toBeLessThan(1e-9)
    })
    const beyond = 1 - upTo(theirs.length - 1, mean)
    expect(beyond).toBeGreaterThan(0)
    expect(beyond).toBeLessThan(0.0001)
  })
})

describe('an independent package, jstat', () => {
  it.each([
    [1, 0.75],
    [2, 1.7292],
    [7, 10],
    [30, 17.5],
    [60, 60],
    [140, 140],
  ])('[Z1] says the same of up to %s of mean %s', (k, mean) => {
    expect(Math.abs(upTo(k, mean) - jstat.jStat.poisson.cdf(k, mean))).toBeLessThan(1e-9)
  })

  it('[Z1] of up to 160 of mean 147 the package says Infinity, which is no chance; the book says 0.8666', () => {
    expect(jstat.jStat.poisson.cdf(160, 147)).toBe(Number.POSITIVE_INFINITY)
    expect(upTo(160, 147)).toBeCloseTo(0.8666, 4)
  })
})
