/** A few weeks of a few stations, for every day: what must hold of each, and that par stands up to both rules. */
import { describe, expect, it } from 'vitest'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { componentOf } from '#lib/station/find.ts'
import { nothingYet, playWeeks } from '#tests/simulate/days/play.ts'
import { enoughBins } from '#tests/simulate/days/report.ts'
import { runStation } from '#tests/simulate/days/run.ts'
import { daysStation, truthOf } from '#tests/simulate/days/truth.ts'
import { byGuess, byPar } from '#tests/simulate/days/ways.ts'

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)
const runs = [7_001, 7_002].map((seed) => runStation(seed, 2, { planner: false }))
const costOf = (way: 'par' | 'lastWeek' | 'fixed') =>
  sum(runs.flatMap((run) => run[way].map((day) => day.lostCents + day.thrownOutCents)))

describe('days', () => {
  it('[PR15] par costs less than last week’s sales, and hardly more than a fixed par even in its first weeks', () => {
    expect(sum(runs.flatMap((run) => run.par.map(({ builds }) => builds)))).toBeGreaterThan(600)
    expect(costOf('par')).toBeLessThan(costOf('lastWeek'))
    expect(costOf('par')).toBeLessThan(1.2 * costOf('fixed'))
  })

  it('[PR15] what is said to be enough on most days is enough far more often than what isn’t', () => {
    const bins = enoughBins(runs.flatMap(({ said }) => said))
    const rate = (from: number, to: number) => {
      const own = bins.filter(({ days }) => days >= from && days <= to)
      return sum(own.map(({ cases, came }) => cases * came)) / sum(own.map(({ cases }) => cases))
    }
    expect(rate(8, 10)).toBeGreaterThan(0.8)
    expect(rate(0, 5)).toBeLessThan(rate(8, 10) - 0.15)
  })

  it('[PR15] how sure a bin is goes by its days, not by what is said of each', () => {
    const errorOf = (of: (index: number) => string) =>
      enoughBins(
        Array.from({ length: 40 }, (_, index) => ({ days: 5, of: of(index), came: index % 4 < 2 })),
      )[5]?.standardError
    // Forty by themselves: a binomial share's error, √(0.25 ÷ 40). In twenty pairs that come alike: √(0.25 ÷ 20).
    expect(errorOf((index) => `${index}`)).toBe(0.079)
    expect(errorOf((index) => `${Math.floor(index / 2)}`)).toBe(0.112)
  })

  it('[PR16] all that was made is used, carried or thrown out, to the portion', () => {
    const truth = truthOf(7_003)
    const first = playWeeks(truth, { from: 0, to: 1 }, byGuess, nothingYet)
    const { days } = playWeeks(truth, { from: 1, to: 3 }, byPar, first.standing)
    let carried = first.days.at(-1)?.carried ?? 0
    expect(days).toHaveLength(10)
    for (const day of days) {
      const made = sum(
        Object.entries(day.loads).map(
          ([id, loads]) => loads * loadSize(daysStation, componentOf(daysStation, id)),
        ),
      )
      expect(carried + made, day.known.on).toBe(day.used + day.thrownOut + day.carried)
      carried = day.carried
    }
    expect(sum(days.map(({ thrownOut }) => thrownOut))).toBeGreaterThan(0)
    expect(sum(days.map(({ carried: one }) => one))).toBeGreaterThan(0)
  })
})
