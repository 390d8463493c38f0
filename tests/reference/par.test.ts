import { describe, expect, it } from 'vitest'
import { countChances } from '#lib/estimate/count-chances.ts'
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import type { WholeMenu } from '#lib/estimate/par/whole-builds.ts'
import { wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import { layDay, weighed } from '#tests/support/par-days.ts'

const DAYS = 4_000

/** Days that want one portion a build, as many as equal parts of the chances say. */
const daysOf = (chances: ArrayLike<number>): readonly DrawnDay[] => {
  const upTo: number[] = []
  for (let k = 0; k < chances.length; k += 1) upTo.push((upTo[k - 1] ?? 0) + (chances[k] ?? 0))
  return Array.from({ length: DAYS }, (_, index): DrawnDay => {
    const wanted = upTo.findIndex((sum) => sum >= (index + 0.5) / DAYS)
    const build = { item: 0, components: [0], portions: [1], bases: [] }
    return layDay(
      Array.from({ length: wanted }, () => build),
      1,
    )
  })
}

/** One over loses `over`, one under loses `under`: what it costs, and the price less that. */
const menuOf = (over: number, under: number): WholeMenu => ({
  costCents: [over],
  carriedCents: [over],
  mostCarried: [0],
  priceCents: [over + under],
})

const best = (chances: ArrayLike<number>, over: number, under: number, there = 0) => {
  const days = daysOf(chances)
  const menu = menuOf(over, under)
  const { loads } = wholeLoads(menu, days, { size: [1], there: [there], isWanted: [true] })
  const amount = there + (loads[0] ?? 0)
  return { amount, cost: weighed(menu, days, [amount]) }
}

const poisson = (mean: number) =>
  countChances({ mean, variance: mean }, Math.ceil(mean + 12 * Math.sqrt(mean)))

/** L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd edition, 2019, chapter 4. */
describe('par of one component is the best single-period amount', () => {
  it('[PR1] example 4.7: Poisson demand of 6, 1 over, 4 under: 8, which costs 3.57', () => {
    const { amount, cost } = best(poisson(6), 1, 4)
    expect(amount).toBe(8)
    expect(cost).toBeCloseTo(3.5701069457709416, 2)
  })

  it('[PR1] example 4.2 with Poisson demand of 50, 0.18 over, 0.70 under: 56, 30 of them at hand', () => {
    expect(best(poisson(50), 18, 70, 30).amount).toBe(56)
  })

  it('[PR1] problem 4.7(b): a table of chances, 500,000 over, 1,000,000 under: 5', () => {
    const { amount, cost } = best(
      [0, 0.25, 0.05, 0.1, 0.2, 0.15, 0.1, 0.1, 0.05],
      500_000,
      1_000_000,
    )
    expect(amount).toBe(5)
    expect(cost).toBeCloseTo(1_225_000, -3)
  })

  it('[PR1] problem 4.8(a): Poisson demand of 18, 200 over, 270 under: 19', () => {
    const { amount, cost } = best(poisson(18), 200, 270)
    expect(amount).toBe(19)
    expect(Math.abs(cost - 786.0884409)).toBeLessThan(2)
  })
})
