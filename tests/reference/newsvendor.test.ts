import { describe, expect, it } from 'vitest'
import { countChances } from '#lib/estimate/count-chances.ts'
import { bestAmount, chanceUpTo, criticalRatio, expectedCost } from '#tests/support/best-amount.ts'

const poisson = (mean: number): Float64Array =>
  countChances({ mean, variance: mean }, Math.ceil(mean + 12 * Math.sqrt(mean)))

/** L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd edition, 2019. */
describe('Snyder and Shen, chapter 4', () => {
  it('[Z3] example 4.1: the critical ratio of 0.18 over and 0.70 under', () => {
    expect(criticalRatio({ lostCents: 70, leftCents: 18 })).toBeCloseTo(0.7954545, 7)
  })

  it('[Z3] example 4.2 with Poisson demand of 50: 56, whose chances are 0.784 and 0.822', () => {
    const chances = poisson(50)
    expect(bestAmount(chances, { lostCents: 70, leftCents: 18 })).toBe(56)
    expect(chanceUpTo(chances, 55)).toBeCloseTo(0.7844704, 6)
    expect(chanceUpTo(chances, 56)).toBeCloseTo(0.8221171, 6)
  })

  it('[Z3] example 4.7: demand of 6, 1 over, 4 under', () => {
    const stakes = { lostCents: 4, leftCents: 1 }
    const chances = poisson(6)
    expect(criticalRatio(stakes)).toBe(0.8)
    expect(bestAmount(chances, stakes)).toBe(8)
    expect(expectedCost(chances, 6, 8, stakes)).toBeCloseTo(3.5701069457709416, 9)
    expect(expectedCost(chances, 6, 5, stakes)).toBeCloseTo(6.590296024616344, 9)
  })

  it('[Z3] problem 4.7(b): a table of chances', () => {
    const chances = Float64Array.from([0, 0.25, 0.05, 0.1, 0.2, 0.15, 0.1, 0.1, 0.05])
    const mean = chances.reduce((sum, chance, k) => sum + k * chance, 0)
    const stakes = { lostCents: 1_000_000, leftCents: 500_000 }
    expect(chanceUpTo(chances, 4)).toBeCloseTo(0.6, 12)
    expect(chanceUpTo(chances, 5)).toBeCloseTo(0.75, 12)
    expect(bestAmount(chances, stakes)).toBe(5)
    expect(expectedCost(chances, mean, 5, stakes)).toBeCloseTo(1_225_000, 4)
  })

  it('[Z3] problem 4.8(a): demand of 18, 200 over, 270 under', () => {
    const stakes = { lostCents: 270, leftCents: 200 }
    const chances = poisson(18)
    expect(criticalRatio(stakes)).toBeCloseTo(0.574468, 6)
    expect(chanceUpTo(chances, 18)).toBeCloseTo(0.56225, 4)
    expect(chanceUpTo(chances, 19)).toBeCloseTo(0.65092, 4)
    expect(bestAmount(chances, stakes)).toBe(19)
    expect(expectedCost(chances, 18, 19, stakes)).toBeCloseTo(786.0884409, 6)
  })
})
