import { describe, expect, test } from 'vitest'
import { logGamma, logNegativeBinomial } from '#lib/estimate/count-chances.ts'
import { drawsFrom } from '#lib/estimate/par/draws.ts'
import { doingWithout } from '#lib/estimate/par/going-without.ts'
import { menuMix } from '#lib/estimate/par/learnt-mix.ts'
import type { MenuMix } from '#lib/estimate/par/menu-mix.ts'
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import { lostGuests } from '#lib/estimate/par/tapped.ts'
import { wantedBuilds } from '#lib/estimate/par/wanted-builds.ts'
import { demoStation } from '#tests/support/service.ts'

const C = 'garden-chicken'
const B = 'bean-and-pepper'

const day = (items: Readonly<Record<string, number>>, more: Partial<PastDay> = {}): PastDay => ({
  ...{ on: '2026-11-02', expected: 50, items, takings: {}, portions: {}, taps: {} },
  ...{ builds: Object.values(items).reduce((sum, one) => sum + one, 0), soldOut: [], until: {} },
  ...more,
})

/** Half of the day chicken is gone. */
const half = day(
  { [C]: 20, [B]: 20 },
  { soldOut: ['chicken'], until: { chicken: { items: { [C]: 20, [B]: 10 }, takings: {} } } },
)
const mixOf = (more: Partial<MenuMix>): MenuMix => ({
  ...menuMix(demoStation, []),
  weights: { [C]: 1, [B]: 1 },
  ...more,
})
const wanted = (one: PastDay, mix: MenuMix) => wantedBuilds(demoStation, [one], mix)[0]

describe('what a past day wanted in all', () => {
  test('[PR17] what was sold beside an item that ran out says how many more there were, as that day liked it until then', () => {
    // Of a Dirichlet's shares two are to each other as their counts, those of before and those seen.
    for (const steady of [4, 20, 60, 400]) {
      const lost = (10 * (steady / 2 + 20)) / (steady / 2 + 10)
      const found = wanted(half, mixOf({ steady }))
      // A chance of taps that nobody knows, and none tapped, says that fewer were lost.
      expect(found?.builds, `${steady}`).toBeGreaterThan(40 + 0.4 * lost)
      expect(found?.builds, `${steady}`).toBeLessThan(40 + lost)
      expect(found?.unsure).toBeGreaterThan(lost)
      const many = [half, half, half].map((one) => ({
        ...one,
        expected: Math.round(40 + lost),
        taps: { chicken: Math.round(lost * 0.5) },
      }))
      const [told] = wantedBuilds(demoStation, many, mixOf({ steady }))
      expect(Math.abs((told?.builds ?? 0) - 40 - lost), `${steady}`).toBeLessThan(0.12 * lost)
    }
  })

  test('[PR17] taps are known to be among them, and where nothing ran out all was seen', () => {
    const mix = menuMix(
      demoStation,
      Array.from({ length: 12 }, () => half),
    )
    const taps = (chicken: number) => wanted({ ...half, taps: { chicken } }, mix)?.builds ?? 0
    expect(taps(18)).toBeGreaterThan(58)
    expect(taps(18)).toBeGreaterThan(taps(4))
    expect(taps(90)).toBeGreaterThanOrEqual(130)
    // Older records don't tell taps apart from builds that went without: what no build can be is a tap.
    expect(wanted({ ...half, takings: { chicken: 38 } }, mix)?.builds).toBeCloseTo(taps(18), 9)
    // Where it ran out as the doors closed, nobody more is made up.
    const late = { ...half, until: { chicken: { items: half.items, takings: {} } } }
    expect(wanted(late, mix)?.builds).toBe(40)
    const seen = { ...half, soldOut: [], until: {} }
    expect(wanted(seen, mix)).toEqual({ builds: 40, unsure: 0, atLeast: false })
    // What was gone and there again was tapped by guests who were lost.
    expect(wanted({ ...seen, taps: { chicken: 3 } }, mix)?.builds).toBe(43)
  })

  test('[PR17] where nothing was left to be sold beside, a day says at least', () => {
    const until = { items: { [C]: 20 }, takings: { chicken: 20 } }
    const only = day({ [C]: 20 }, { soldOut: ['chicken'], until: { chicken: until } })
    const found = wanted({ ...only, taps: { chicken: 3 } }, menuMix(demoStation, [only]))
    expect(found).toMatchObject({ builds: 23, atLeast: true })
  })

  /** After slaw was gone eight more were sold, of which so many wanted it, and so many tapped. */
  const noSlaw = (without: number, taps: number) =>
    day(
      { [C]: 20, [B]: 20 },
      {
        ...{ soldOut: ['slaw'], takings: { slaw: 26 + without + taps }, taps: { slaw: taps } },
        until: { slaw: { items: { [C]: 16, [B]: 16 }, takings: { slaw: 26 } } },
      },
    )

  test('[PR24] who finds a part gone and takes nothing is lost; who does without isn’t', () => {
    const of = (without: number, taps: number) => {
      const past = Array.from({ length: 10 }, () => noSlaw(without, taps))
      const mix = menuMix(demoStation, past)
      return { ...wanted(past[0] ?? half, mix), without: mix.without }
    }
    // Four of five want it, so that to eight who don't about thirty came who do.
    const lost = of(0, 18)
    expect(lost.without).toBeLessThan(0.05)
    expect(lost.builds).toBeGreaterThan(62)
    expect(lost.builds).toBeLessThan(80)
    const done = of(6, 0)
    expect(done.without).toBeGreaterThan(0.7)
    expect(done.builds).toBeLessThan(43)
    expect(of(8, 0).builds).toBeLessThan(41)
  })

  test('[PR24] how many do without is the share that says what was sold, and unknown where nothing was', () => {
    // Of those to whom it is sold, wants × share of 1 − wants + wants × share wanted it.
    for (const [wants, share] of [
      [0.8, 0.3],
      [0.2, 0.65],
      [0.5, 0.9],
    ] as const) {
      const chance = (wants * share) / (1 - wants + wants * share)
      const after = { sold: [{ builds: 9_000, wants }], without: Math.round(9_000 * chance) }
      expect(Math.abs(doingWithout([after]) - share)).toBeLessThan(0.026)
    }
    expect(doingWithout([])).toBeCloseTo(0.5, 9)
  })
})

describe('guests who were lost', () => {
  const days = [
    { mean: 6, variance: 14, taps: 5 },
    { mean: 4, variance: 9, taps: 1 },
  ]
  const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

  test('[PR24] are as many as the closed forms say: negative binomial guests, taps beta-binomial of them', () => {
    const TAPS = Array.from({ length: 200 }, (_, index) => (index + 0.5) / 200)
    const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b)
    const logChoose = (n: number, k: number) =>
      logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1)
    const each = days.map(({ mean, variance, taps }) => {
      const p = mean / variance
      return TAPS.map((tap) => {
        const [a, b] = [8 * tap, 8 * (1 - tap)]
        return Array.from({ length: 120 }, (_, count) =>
          count < taps
            ? 0
            : Math.exp(
                logNegativeBinomial(count, (mean * p) / (1 - p), p) +
                  logChoose(count, taps) +
                  logBeta(taps + a, count - taps + b) -
                  logBeta(a, b),
              ),
        )
      })
    })
    const weights = TAPS.map((_, index) =>
      each.reduce((product, own) => product * sumOf(own[index] ?? []), 1),
    )
    const lost = lostGuests(days)
    for (const [index, own] of each.entries()) {
      const power = (of: number) =>
        sumOf(
          own.map((chances, tap) => {
            const moment = sumOf(chances.map((chance, count) => chance * count ** of))
            return ((weights[tap] ?? 0) * moment) / sumOf(chances)
          }),
        ) / sumOf(weights)
      expect(Math.abs((lost[index]?.mean ?? 0) - power(1))).toBeLessThan(0.002)
      expect(Math.abs((lost[index]?.variance ?? 0) - (power(2) - power(1) ** 2))).toBeLessThan(0.02)
    }
  })

  test('[PR24] are as many as chance brings of which as many tap', () => {
    const draws = drawsFrom(77)
    const poisson = (mean: number): number => {
      const limit = Math.exp(-mean)
      let count = 0
      for (let product = draws.uniform(); product > limit; product *= draws.uniform()) count += 1
      return count
    }
    const cameSo: number[][] = []
    for (let draw = 0; draw < 60_000; draw += 1) {
      const tap = draws.uniform()
      const counts = days.map(({ mean, variance, taps }) => {
        const shape = mean ** 2 / (variance - mean)
        const guests = poisson((draws.gamma(shape) * mean) / shape)
        const [yes, no] = [draws.gamma(8 * tap), draws.gamma(8 * (1 - tap))]
        const tapped = Array.from({ length: guests }, () => draws.uniform() < yes / (yes + no))
        return tapped.filter(Boolean).length === taps ? guests : null
      })
      if (counts.every((count) => count !== null)) cameSo.push(counts)
    }
    expect(cameSo.length).toBeGreaterThan(600)
    for (const [index, { mean, variance }] of lostGuests(days).entries()) {
      const drawn = sumOf(cameSo.map((counts) => counts[index] ?? 0)) / cameSo.length
      expect(Math.abs(mean - drawn)).toBeLessThan(4 * Math.sqrt(variance / cameSo.length))
    }
  })

  test('[PR24] how often they tap is learned of all days: where few tap, one tap says more', () => {
    const few = Array.from({ length: 20 }, () => ({ mean: 10, variance: 14, taps: 1 }))
    const most = Array.from({ length: 20 }, () => ({ mean: 10, variance: 14, taps: 9 }))
    const one = { mean: 10, variance: 40, taps: 4 }
    const [ofFew] = lostGuests([one, ...few])
    const [ofMost] = lostGuests([one, ...most])
    expect(ofFew?.mean).toBeGreaterThan((ofMost?.mean ?? 0) + 3)
    expect(lostGuests([{ mean: 0, variance: 0, taps: 2 }])[0]?.mean).toBe(2)
    expect(lostGuests([{ mean: 0, variance: 0, taps: 0 }])).toEqual([{ mean: 0, variance: 0 }])
  })
})
