import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import { weighing } from '#lib/estimate/par/weighing.ts'
import type { WholeMenu } from '#lib/estimate/par/whole-builds.ts'
import { wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import { type DrawnBuild, layDay, weighed } from '#tests/support/par-days.ts'

/** Chicken, slaw, and two bases, of which a guest takes the other where one is gone. */
const menu: WholeMenu = {
  costCents: [100, 20, 30, 25],
  carriedCents: [100, 5, 30, 25],
  mostCarried: [0, 3, 0, 0],
  priceCents: [600, 450],
}
const build = (
  item: number,
  components: readonly number[],
  bases: readonly number[],
): DrawnBuild => ({
  item,
  components,
  portions: components.map(() => 1),
  bases,
})
const dayOf = (builds: readonly DrawnBuild[]): DrawnDay => layDay(builds, 4)
const dayCost = (day: DrawnDay, portions: readonly number[]) => weighed(menu, [day], portions)
const both = build(0, [0, 1], [2, 3])

describe('whole builds', () => {
  test('[PR2] a build that lacks one component is lost: its price less what the rest saves', () => {
    const day = dayOf([both, both])
    expect(dayCost(day, [2, 2, 2, 0])).toBe(0)
    // One slaw short: 600 less 100, 20 and 30; the chicken and the base are left over.
    expect(dayCost(day, [2, 1, 2, 0])).toBe(450 + 100 + 30)
    // Without its base a guest takes the other, which loses a quarter; without either the build is lost.
    expect(dayCost(day, [2, 2, 1, 1])).toBe(450 / 4)
    expect(dayCost(day, [2, 2, 1, 0])).toBe(450 + 100 + 5)
  })

  test('[PR9] what may be carried costs less, up to what is used of it then; the rest is thrown out', () => {
    const nobody = dayOf([])
    expect(dayCost(nobody, [0, 3, 0, 0])).toBe(15)
    expect(dayCost(nobody, [0, 5, 0, 0])).toBe(15 + 40)
    expect(dayCost(nobody, [1, 0, 0, 0])).toBe(100)
  })

  const builds = fc.array(
    fc.constantFrom(both, build(0, [0], [2, 3]), build(1, [1], [3, 2]), build(1, [1, 0], [])),
    { maxLength: 7 },
  )
  const days = fc.array(builds.map(dayOf), { minLength: 1, maxLength: 8 })

  test('[PR2] no load more or less of one component is cheaper, and what all of them could be at best is hardly less', () => {
    const off: number[] = []
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 3 }), (drawn, slaw) => {
        const asked = {
          size: [2, 3, 2, 2],
          there: [0, slaw, 0, 0],
          isWanted: [true, true, true, true],
        }
        const portions = (loads: readonly number[]) =>
          loads.map((count, place) => (asked.there[place] ?? 0) + count * (asked.size[place] ?? 1))
        const costOf = (loads: readonly number[]) => weighed(menu, drawn, portions(loads))
        const { loads: found } = wholeLoads(menu, drawn, asked)
        const least = costOf(found)
        for (const [place, count] of found.entries())
          for (const other of [count - 1, count + 1])
            if (other >= 0) expect(costOf(found.with(place, other))).toBeGreaterThan(least - 0.01)
        let best = least
        for (let a = 0; a < 5; a += 1)
          for (let b = 0; b < 4; b += 1)
            for (let c = 0; c < 5; c += 1)
              for (let d = 0; d < 5; d += 1) best = Math.min(best, costOf([a, b, c, d]))
        off.push((least - best) / Math.max(1, best))
      }),
      { numRuns: 25, seed: 11 },
    )
    expect(Math.max(...off)).toBeLessThan(0.05)
    expect(off.reduce((sum, one) => sum + one, 0) / off.length).toBeLessThan(0.005)
  })

  test('[PR19] with a little more or less of one or two components days come out as if they were played anew', () => {
    const change = fc.record({ place: fc.nat({ max: 3 }), by: fc.integer({ min: -3, max: 3 }) })
    const changes = fc.uniqueArray(change, {
      minLength: 1,
      maxLength: 2,
      selector: (one) => one.place,
    })
    const begun = fc.array(fc.integer({ min: 3, max: 7 }), { minLength: 4, maxLength: 4 })
    fc.assert(
      fc.property(days, begun, fc.array(changes, { maxLength: 12 }), (drawn, first, moves) => {
        const scale = weighing(menu, drawn)
        let now = first
        let least = scale.begin(first, Number.POSITIVE_INFINITY)
        for (const move of moves) {
          const next = now.map(
            (one, place) => one + (move.find((by) => by.place === place)?.by ?? 0),
          )
          if (next.some((one) => one < 0)) continue
          const cost = scale.changed(move, Number.POSITIVE_INFINITY)
          expect(cost).toBeCloseTo(weighed(menu, drawn, next), 9)
          if (cost >= least) continue
          scale.accept()
          now = next
          least = cost
        }
      }),
      { numRuns: 150, seed: 3 },
    )
  })
})
