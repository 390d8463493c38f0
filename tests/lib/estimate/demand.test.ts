import { describe, expect, it } from 'vitest'
import { buildsToCome, buildsUntil, type Straying } from '#lib/estimate/arrivals.ts'
import { demandOf, shareNow, thinned } from '#lib/estimate/demand.ts'
import { demandAhead, learnPast } from '#lib/estimate/demand-history.ts'
import { countBuild, noCounts, type ServiceCounts } from '#lib/estimate/service-counts.ts'

const OPENS = 660
const CLOSES = 720
const PROFILE = new Array<number>(12).fill(5)
const straying: Straying = { day: 0.2, wave: 0.3, keep: 0.7, slot: 0, late: 0, together: 1 }

/** A service in which each slot had so many builds, each of one chicken and every other of slaw. */
const served = (
  perSlot: readonly number[],
  expected: number | null = null,
  opens = OPENS,
  closes = CLOSES,
): ServiceCounts => {
  let counts = noCounts(opens, closes, expected)
  let built = 0
  for (const [slot, builds] of perSlot.entries())
    for (let one = 0; one < builds; one += 1) {
      built += 1
      const portions = { chicken: 1, ...(built % 2 === 0 ? { slaw: 2 } : {}) }
      counts = countBuild(counts, opens + slot * 5, { item: 'bowl', portions })
    }
  return counts
}

describe('what was wanted', () => {
  it('[Z7] builds, takings and portions are counted by five minutes', () => {
    const counts = served([2, 0, 1])
    expect(counts.builds).toEqual([2, 0, 1])
    expect(counts.items.bowl).toEqual([2, 0, 1])
    expect(counts.takings.slaw).toEqual([1])
    expect(counts.portions.slaw).toEqual([2])
  })

  it('[Z7] a tap on wanted it, gone counts as demand and not as a build', () => {
    const counts = countBuild(served([1]), OPENS, { item: null, portions: { chicken: 1 } })
    expect(counts.builds).toEqual([1])
    expect(counts.takings.chicken).toEqual([2])
    expect(counts.taps).toEqual({ chicken: [1] })
    expect(served([1]).taps).toBeUndefined()
  })

  it('[Z7] what is taken back is counted back', () => {
    const wanted = { item: 'bowl', portions: { chicken: 1 } }
    expect(countBuild(served([1]), OPENS + 6, wanted, -1).takings.chicken).toEqual([1, -1])
  })
})

describe('builds to come', () => {
  it('[Z8] before anything came, what is expected comes', () => {
    const horizons = buildsToCome(noCounts(OPENS, CLOSES, null), PROFILE, straying, OPENS, true)
    expect(horizons).toHaveLength(13)
    expect(horizons[0]).toEqual({ until: OPENS, mean: 0, variance: 0 })
    expect(buildsUntil(horizons, CLOSES).mean).toBeCloseTo(60, 9)
    expect(buildsUntil(horizons, OPENS + 2.5).mean).toBeCloseTo(2.5, 9)
    expect(buildsUntil(horizons, CLOSES + 30).mean).toBeCloseTo(60, 9)
  })

  it('[Z8] where all is certain but chance itself, the count is Poisson', () => {
    const certain = { day: 0, wave: 0, keep: 0.5, slot: 0, late: 0, together: 1 }
    const last = buildsToCome(served([9, 9, 9]), PROFILE, certain, OPENS + 15, true).at(-1)
    expect(last?.mean).toBeCloseTo(45, 9)
    expect(last?.variance).toBeCloseTo(45, 9)
  })

  it('[Z68] a wave that may be late spreads what comes soon, and not what comes until close', () => {
    const bell = [1, 1, 1, 1, 12, 12, 1, 1, 1, 1, 1, 1]
    const at = OPENS + 18
    const spread = (late: number, minute: number): number => {
      const likely = { day: 0, wave: 0, keep: 0.5, slot: 0, late, together: 1 }
      return buildsUntil(buildsToCome(served([1, 1, 1]), bell, likely, at, false), minute).variance
    }
    // Until 11:25 the wave’s pace is 12 builds in five minutes, and 1.9 at 11:18.
    const pace = (12 - (0.4 * 1 + 0.6 * 6.5)) / 5
    expect(spread(2, OPENS + 25) - spread(0, OPENS + 25)).toBeCloseTo((2 * pace) ** 2, 9)
    const quiet = (1 - (0.4 * 1 + 0.6 * 6.5)) / 5
    expect(spread(2, CLOSES) - spread(0, CLOSES)).toBeCloseTo((2 * quiet) ** 2, 9)
  })

  it('[Z68] a late wave isn’t taken for a small one', () => {
    const bell = [1, 1, 1, 12, 12, 1, 1, 1, 1, 1, 1, 1]
    const ahead = (late: number): number => {
      const likely = { day: 0.2, wave: 0.3, keep: 0.7, slot: 0, late, together: 1.2 }
      const counts = served([1, 1, 1, 4])
      return buildsUntil(buildsToCome(counts, bell, likely, OPENS + 20, true), OPENS + 25).mean
    }
    expect(ahead(2)).toBeGreaterThan(ahead(0))
  })

  it('[Z9] a busy start raises what is to come, a quiet one lowers it, each with less doubt', () => {
    const at = OPENS + 20
    const close = (perSlot: readonly number[]) =>
      buildsUntil(buildsToCome(served(perSlot), PROFILE, straying, at, true), CLOSES)
    const busy = close([9, 9, 9, 9])
    const usual = close([5, 5, 5, 5])
    const quiet = close([1, 1, 1, 1])
    expect(busy.mean).toBeGreaterThan(usual.mean)
    expect(usual.mean).toBeGreaterThan(quiet.mean)
    expect(usual.mean).toBeCloseTo(40, 6)
    const blind = { ...straying, day: 0.2, wave: 0.3 }
    const unheard = buildsToCome(served([]), PROFILE, blind, OPENS, true)
    const relative = ({ mean, variance }: { mean: number; variance: number }) => variance / mean
    const lastUnheard = unheard.at(-1)
    expect(lastUnheard && relative(usual) < relative(lastUnheard)).toBe(true)
  })

  it('[Z9] a wave is forgotten with time, the day is not', () => {
    const burst = (slots: readonly number[]) => {
      const horizons = buildsToCome(served(slots), PROFILE, straying, OPENS + 30, true)
      const next = buildsUntil(horizons, OPENS + 35).mean
      const last = buildsUntil(horizons, CLOSES).mean - buildsUntil(horizons, CLOSES - 5).mean
      return { next, last }
    }
    const late = burst([5, 5, 5, 5, 5, 12])
    expect(late.next).toBeGreaterThan(late.last)
    expect(late.last).toBeGreaterThan(5)
    expect(burst([12, 5, 5, 5, 5, 5]).next).toBeLessThan(late.next)
  })

  it('[Z8] what came after the moment is not read', () => {
    const at = OPENS + 10
    const known = buildsToCome(served([5, 5]), PROFILE, straying, at, false)
    const later = buildsToCome(served([5, 5, 30, 30]), PROFILE, straying, at, false)
    expect(later).toEqual(known)
  })
})

describe('a component among builds', () => {
  it('[Z10] a Poisson count thinned by a known share is Poisson', () => {
    const takings = thinned({ mean: 40, variance: 40 }, { mean: 0.3, variance: 0 })
    expect(takings.mean).toBeCloseTo(12, 12)
    expect(takings.variance).toBeCloseTo(12, 12)
  })

  it('[Z10] the share starts from the past and follows today, as far as memory goes', () => {
    const past = { mean: 0.2, strength: 20, memory: 60, perTaking: [1] }
    expect(shareNow(past, 0, 0).mean).toBe(0.2)
    const heard = shareNow(past, 60, 60).mean
    expect(heard).toBeCloseTo((20 * 0.2 + 30) / 50, 12)
    const most = shareNow(past, 1e9, 1e9).mean
    expect(most).toBeCloseTo((20 * 0.2 + 60) / 80, 6)
    expect(shareNow(past, 60, 60).variance).toBeLessThan(shareNow(past, 2, 2).variance)
  })

  it('[Z10] demand until a moment grows with the moment', () => {
    const counts = served([5, 5])
    const horizons = buildsToCome(counts, PROFILE, straying, OPENS + 10, true)
    const share = { mean: 0.5, strength: 40, memory: 400, perTaking: [1] }
    const { until } = demandOf(horizons, counts, 'slaw', share)
    expect(until(OPENS + 10).mean).toBe(0)
    expect(until(OPENS + 30).mean).toBeCloseTo(10, 0)
    expect(until(CLOSES).mean).toBeCloseTo(25, 0)
  })
})

describe('what past services teach', () => {
  const shares = { chicken: 0.5, slaw: 0.5 }
  const ahead = { opens: OPENS, closes: CLOSES, expected: null }
  const wave = [1, 2, 12, 8, 3, 1, 1, 1, 9, 7, 2, 1]

  it('[Z11] without any, the guests expected come evenly', () => {
    const { profile } = demandAhead(learnPast([], shares), { ...ahead, expected: 96 })
    expect(profile).toEqual(new Array(12).fill(8))
  })

  it('[Z11] waves are expected where they were, at the same time of day', () => {
    const past = Array.from({ length: 6 }, () => served(wave))
    const { profile } = demandAhead(learnPast(past, shares), ahead)
    expect(profile[2]).toBeGreaterThan(2 * (profile[6] ?? 0))
    expect(profile.reduce((sum, one) => sum + one, 0)).toBeCloseTo(48, 6)
    const earlier = demandAhead(learnPast(past, shares), { ...ahead, opens: OPENS - 10 })
    expect(earlier.profile[4]).toBeCloseTo(profile[2] ?? 0, 1)
  })

  it('[Z11] guests expected move the whole, the more the better they told before', () => {
    const whole = (past: readonly ServiceCounts[], expected: number): number =>
      demandAhead(learnPast(past, shares), { ...ahead, expected }).profile.reduce(
        (sum, one) => sum + one,
        0,
      )
    const times = (factor: number) => wave.map((one) => Math.round(one * factor))
    const told = [0.6, 1, 1.4, 0.8, 1.2, 1].map((factor) => {
      const slots = times(factor)
      return served(
        slots,
        slots.reduce((sum, one) => sum + one, 0),
      )
    })
    const mistold = [0.6, 1, 1.4, 0.8, 1.2, 1].map((factor, index) =>
      served(times(factor), [90, 20, 60, 25, 80, 40][index] ?? 50),
    )
    expect(whole(told, 96)).toBeGreaterThan(75)
    const byMistold = whole(mistold, 96) - whole(mistold, 48)
    expect(byMistold).toBeLessThan(whole(told, 96) - whole(told, 48))
  })

  it('[Z12] shares and portions a taking are those of the past', () => {
    const past = Array.from({ length: 6 }, () => served(wave))
    const { shares: learned } = learnPast(past, shares)
    expect(learned.chicken?.mean).toBeGreaterThan(0.97)
    expect(learned.slaw?.mean).toBeCloseTo(0.5, 1)
    expect(learned.slaw?.perTaking[1]).toBeCloseTo(1, 9)
    expect(learned.chicken?.perTaking).toEqual([1])
  })

  it('[Z12] services that all went alike are trusted more than ones that strayed', () => {
    const alike = learnPast(
      Array.from({ length: 8 }, () => served(wave)),
      shares,
    )
    const strayed = learnPast(
      [0.3, 2, 0.6, 1.7, 0.4, 1.9, 0.8, 1.2].map((factor) =>
        served(wave.map((one) => Math.round(one * factor))),
      ),
      shares,
    )
    expect(alike.straying.day).toBeLessThan(strayed.straying.day)
  })
})
