import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import { countChances, logCountChance, logNegativeBinomial } from '#lib/estimate/count-chances.ts'
import { chanceUpTo } from '#tests/support/best-amount.ts'

const spreadOf = (n: number, p: number) => ({
  mean: (n * (1 - p)) / p,
  variance: (n * (1 - p)) / p ** 2,
})
const upTo = (k: number, n: number, p: number): number =>
  chanceUpTo(countChances(spreadOf(n, p), k), k)

/** By thirty-digit arithmetic; n = 4.8, p = 0.45 is a pair of SciPy 1.17's own tests. */
describe('failures before the nth success', () => {
  it.each([
    { n: 5, p: 0.5, k: 0, one: 0.03125, all: 0.03125 },
    { n: 5, p: 0.5, k: 4, one: 0.13671875, all: 0.5 },
    { n: 5, p: 0.5, k: 9, one: 0.04364013672, all: 0.910217285156 },
    { n: 4.8, p: 0.45, k: 0, one: 0.02164811399, all: 0.0216481139924 },
    { n: 4.8, p: 0.45, k: 5, one: 0.1179798083, all: 0.523455783878 },
    { n: 3, p: 0.375, k: 8, one: 0.05525180313, all: 0.844249032321 },
    { n: 3, p: 0.375, k: 10, one: 0.03165467888, all: 0.918109949704 },
  ])('[Z2] of n $n, p $p the count $k has the chance $one', ({ n, p, k, one, all }) => {
    expect(Math.abs(Math.exp(logNegativeBinomial(k, n, p)) - one)).toBeLessThan(1e-9)
    expect(Math.abs(Math.exp(logCountChance(k, spreadOf(n, p))) - one)).toBeLessThan(1e-9)
    expect(Math.abs(upTo(k, n, p) - all)).toBeLessThan(1e-9)
  })
})

const { negbin, ibeta } = jstat.jStat

describe('an independent package, jstat', () => {
  const counts = (n: number, p: number): readonly number[] =>
    [0, 0.5, 1, 1.2, 2].map((share) => Math.round(spreadOf(n, p).mean * share))

  it.each([
    [1, 0.5],
    [3, 0.375],
    [20, 0.3],
    [150, 0.2],
  ])('[Z2] says the same of n %s, p %s', (n, p) => {
    for (const k of counts(n, p))
      expect(Math.abs(upTo(k, n, p) - negbin.cdf(k, n, p)), `up to ${k}`).toBeLessThan(1e-9)
  })

  // P(X ≤ k) is the regularised incomplete beta function I_p(n, k + 1): NIST DLMF 8.17.24 (from memory).
  it.each([
    [0.4, 0.1],
    [4.8, 0.45],
    [900, 0.5],
  ])(
    '[Z2] says the same of n %s, p %s by its incomplete beta function, which is right to 1e-7',
    (n, p) => {
      for (const k of counts(n, p))
        expect(Math.abs(upTo(k, n, p) - ibeta(p, n, k + 1)), `up to ${k}`).toBeLessThan(1e-7)
    },
  )

  it('[Z2] where n is not whole its own answer is NaN, and of n 900 Infinity: neither is a chance', () => {
    expect(negbin.cdf(2, 0.4, 0.1)).toBeNaN()
    expect(negbin.cdf(900, 900, 0.5)).toBe(Number.POSITIVE_INFINITY)
    for (const one of [upTo(2, 0.4, 0.1), upTo(900, 900, 0.5)]) {
      expect(one).toBeGreaterThan(0)
      expect(one).toBeLessThan(1)
    }
  })
})
