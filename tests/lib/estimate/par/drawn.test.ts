import { describe, expect, test } from 'vitest'
import { daySize } from '#lib/estimate/par/day-size.ts'
import { drawnDays } from '#lib/estimate/par/drawn-days.ts'
import { menuMix } from '#lib/estimate/par/learnt-mix.ts'
import { wholeMenu } from '#lib/estimate/par/par.ts'
import { saidDays } from '#lib/estimate/par/said-days.ts'
import { enoughFor, wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import { demoStation } from '#tests/support/service.ts'

const size = daySize([], { on: '2026-12-04', expected: 46, firstBuilds: 60 })
const mix = menuMix(demoStation, [])
const said = saidDays(demoStation, size, mix)

describe('days as they may come', () => {
  test('[PR18] what is said of days is what days come to that are drawn build by build', () => {
    const drawn = drawnDays(demoStation, size, mix, 4_000)
    for (const [place, { id }] of demoStation.components.entries()) {
      const wanted = drawn.map((day) => day.wanted[place] ?? 0).sort((a, b) => a - b)
      const mean = wanted.reduce((sum, one) => sum + one, 0) / wanted.length
      expect(Math.abs((said.means[place] ?? 0) - mean), id).toBeLessThan(0.04 * mean)
      for (const share of [0.15, 0.35, 0.5, 0.65, 0.85, 0.95]) {
        const own = enoughFor(said.sorted[place] ?? [], share)
        const came = wanted.filter((one) => one <= Math.round(own)).length / wanted.length
        expect(Math.abs(came - share), `${id} ${share}`).toBeLessThan(0.05)
      }
    }
  })

  test('[PR19] of the days that loads are weighed over only those are played anew that a change may change', () => {
    const days = drawnDays(demoStation, size, mix, 80)
    const of = Object.fromEntries(
      demoStation.components.map(({ id }) => [id, { costCents: 40, carriedFor: 0 }]),
    )
    const sizes = demoStation.components.map(() => 12)
    const { loads, daysPlayed } = wholeLoads(wholeMenu(demoStation, of, said.means), days, {
      ...{ size: sizes, there: sizes.map(() => 0), isWanted: sizes.map(() => true) },
    })
    expect(loads.every((count) => count > 0)).toBe(true)
    // One pass over each load and each two of ten components would play 220 times 80 days.
    expect(daysPlayed).toBeLessThan(3_000)
  })
})
