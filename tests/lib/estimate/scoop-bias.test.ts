import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import { afterReading, chanceBad } from '#lib/estimate/pan-reading.ts'
import {
  afterLoad,
  afterTakenAway,
  afterUse,
  biasRange,
  biasSaid,
  COUNTED,
  firstBelief,
  type ReadingKind,
  readingSd,
  SCOOPED,
  type StockBelief,
  servings,
} from '#lib/estimate/scoop-bias.ts'
import { chanceOf } from '#tests/simulate/chance.ts'

const FULL = 40

interface Scooping {
  readonly bias: number
  readonly seed: number
  readonly kinds: readonly ReadingKind[]
  /** Which of the readings is a bad one; none where left away. */
  readonly badAt?: number
}

/** Pans scooped empty and changed, read after every ten portions. */
const scooped = ({ bias, seed, kinds, badAt }: Scooping): StockBelief => {
  const chance = chanceOf(seed, 'scoops')
  let real = FULL * (1 + chance.normal(0, 0.03))
  let belief = afterLoad(firstBelief(SCOOPED), FULL, 0.03 * FULL)
  for (const [index, kind] of kinds.entries()) {
    if (belief.left < 14) {
      const added = FULL - 10
      real += added * (1 + chance.normal(0, 0.03))
      belief = afterLoad(belief, added, 0.03 * added)
    }
    for (let portion = 0; portion < 10; portion += 1)
      real = Math.max(0, real - (1 + bias) * (1 + chance.normal(0, 0.1)))
    belief = afterUse(belief, 10, SCOOPED)
    const sd = readingSd(kind, FULL)
    const quarters = Math.min(4, Math.round(4 * (real / FULL + chance.normal(0, 0.06))))
    const seen = kind === 'eye-check' ? (quarters / 4) * FULL : real + chance.normal(0, sd)
    const read = Math.max(0, index === badAt ? seen + 25 : seen)
    const isFull = kind === 'eye-check' && quarters === 4
    belief = afterReading(belief, { read, sd, ...(isFull ? { atLeast: 0.875 * FULL } : {}) }, FULL)
  }
  return belief
}

const readings: readonly { readonly name: string; readonly kinds: readonly ReadingKind[] }[] = [
  { name: 'one weighing', kinds: ['weighing'] },
  { name: 'weighings', kinds: ['weighing', 'weighing', 'weighing', 'weighing'] },
  { name: 'counts', kinds: ['count', 'count', 'count', 'count'] },
  { name: 'eye checks', kinds: ['eye-check', 'eye-check', 'eye-check', 'eye-check'] },
  {
    name: 'all kinds',
    kinds: ['eye-check', 'weighing', 'eye-check', 'count', 'eye-check', 'eye-check'],
  },
]

const SERVICES = 1_000

describe('how heavy a component is scooped', () => {
  it.each(readings)(
    '[Z13] by $name the 90 percent interval holds the truth in 85 to 95 percent of 1,000 services',
    ({ kinds }) => {
      let held = 0
      for (let seed = 1; seed <= SERVICES; seed += 1) {
        const bias = -0.15 + 0.3 * chanceOf(seed, 'bias').uniform()
        const { from, to } = biasRange(scooped({ bias, seed, kinds }))
        if (from <= bias && bias <= to) held += 1
      }
      expect(held / SERVICES).toBeGreaterThanOrEqual(0.85)
      expect(held / SERVICES).toBeLessThanOrEqual(0.95)
    },
  )

  it('[Z13] the interval narrows with readings', () => {
    const width = (kinds: readonly ReadingKind[]): number => {
      const { from, to } = biasRange(scooped({ bias: 0.08, seed: 7, kinds }))
      return to - from
    }
    expect(width(['weighing', 'weighing', 'weighing'])).toBeLessThan(width(['weighing']) * 0.8)
    expect(width(['weighing'])).toBeLessThan(0.9 * 2 * 1.645 * SCOOPED.biasSd)
  })

  it('[Z14] one bad reading among six moves the bias by less than 1 percent on the average', () => {
    const kinds: readonly ReadingKind[] = new Array(6).fill('weighing')
    const moved: number[] = []
    for (let seed = 1; seed <= 300; seed += 1) {
      const bias = -0.15 + 0.3 * chanceOf(seed, 'bias').uniform()
      const good = scooped({ bias, seed, kinds })
      const wrecked = scooped({ bias, seed, kinds, badAt: seed % 6 })
      moved.push(Math.abs(wrecked.bias - good.bias))
    }
    expect(moved.reduce((sum, one) => sum + one, 0) / moved.length).toBeLessThan(0.01)
    expect(Math.max(...moved)).toBeLessThan(SCOOPED.biasSd)
  })

  it('[Z14] with one bad reading in six the interval still holds the truth 85 times of 100', () => {
    let held = 0
    for (let seed = 1; seed <= SERVICES; seed += 1) {
      const bias = -0.15 + 0.3 * chanceOf(seed, 'bias').uniform()
      const kinds: readonly ReadingKind[] = new Array(6).fill('weighing')
      const { from, to } = biasRange(scooped({ bias, seed, kinds, badAt: seed % 6 }))
      if (from <= bias && bias <= to) held += 1
    }
    expect(held / SERVICES).toBeGreaterThanOrEqual(0.85)
  })

  it('[Z14] a reading far off is called likely bad, a near one is not', () => {
    const belief = afterUse(afterLoad(firstBelief(SCOOPED), 40, 1), 10, SCOOPED)
    expect(chanceBad(belief, { read: 29, sd: 0.4 }, FULL)).toBeLessThan(0.05)
    expect(chanceBad(belief, { read: 8, sd: 0.4 }, FULL)).toBeGreaterThan(0.95)
  })

  it('[Z15] is said in whole percent and portions once heavy is told from light', () => {
    expect(biasSaid(firstBelief(SCOOPED), 20)).toBeNull()
    const sure = { left: 36, leftVar: 0.2, bias: 0.08, biasVar: 0.0004, cov: 0 }
    expect(biasSaid(sure, 40)).toEqual({ percent: 8, fewer: 3 })
    expect(biasSaid({ ...sure, bias: -0.05 }, 40)).toEqual({ percent: -5, fewer: -2 })
    expect(biasSaid({ ...sure, bias: 0.02, biasVar: 0.0004 }, 40)).toBeNull()
  })
})

describe('what the pans really hold', () => {
  it('[Z16] loads add up, and doubt with them', () => {
    const belief = afterLoad(afterLoad(firstBelief(SCOOPED), 20, 0.6), 10, 0.3)
    expect(belief.left).toBe(30)
    expect(belief.leftVar).toBeCloseTo(0.45, 12)
  })

  it('[Z16] counted pieces carry no bias and no doubt', () => {
    const belief = afterUse(afterLoad(firstBelief(COUNTED), 24, 0), 6, COUNTED)
    expect(servings(belief)).toEqual({ mean: 18, sd: 0 })
  })

  it('[Z16] a heavy scoop serves fewer from the same pan', () => {
    const belief: StockBelief = { left: 22, leftVar: 0, bias: 0.1, biasVar: 0, cov: 0 }
    expect(servings(belief).mean).toBeCloseTo(20, 12)
  })

  it('[Z16] a reading draws what is left toward it, the nearer the better it is', () => {
    const belief = afterUse(afterLoad(firstBelief(SCOOPED), 40, 1.2), 20, SCOOPED)
    const weighed = afterReading(belief, { read: 18, sd: readingSd('weighing', FULL) }, FULL)
    const seen = afterReading(belief, { read: 18, sd: readingSd('eye-check', FULL) }, FULL)
    expect(weighed.left).toBeCloseTo(18, 0)
    expect(Math.abs(seen.left - 18)).toBeGreaterThan(Math.abs(weighed.left - 18))
    expect(weighed.leftVar).toBeLessThan(seen.leftVar)
    expect(seen.leftVar).toBeLessThan(belief.leftVar)
    expect(weighed.bias).toBeGreaterThan(0)
  })

  it('[Z16] a pan that is taken away takes its doubt along', () => {
    const belief = afterUse(afterLoad(firstBelief(SCOOPED), 40, 1.2), 20, SCOOPED)
    expect(afterTakenAway(belief, 20)).toMatchObject({ left: 0, leftVar: 0, cov: -0 })
    expect(afterTakenAway(belief, 10).leftVar).toBeCloseTo(belief.leftVar / 4, 9)
  })
})

describe('a pan that was read to hold so much or more', () => {
  /** Mean and variance of what is believed, each amount weighed by how likely it is read so. */
  const weighed = ({ left, leftVar }: StockBelief, atLeast: number, sd: number) => {
    const step = 0.01
    const reach = 9 * Math.sqrt(leftVar)
    let sum = 0
    let first = 0
    let second = 0
    for (let x = left - reach; x <= left + reach; x += step) {
      const weight =
        Math.exp(-((x - left) ** 2) / (2 * leftVar)) * jstat.jStat.normal.cdf(x, atLeast, sd)
      sum += weight
      first += weight * x
      second += weight * x * x
    }
    return { mean: first / sum, variance: second / sum - (first / sum) ** 2 }
  }

  it.each([
    { left: 30, leftVar: 9, sd: 4, atLeast: 21 },
    { left: 24, leftVar: 16, sd: 3, atLeast: 21 },
    { left: 18, leftVar: 9, sd: 2.4, atLeast: 21 },
    { left: 12, leftVar: 6, sd: 2.4, atLeast: 21 },
  ])(
    '[Z67] of $left ± √$leftVar has the mean and variance that sums over all amounts give (jstat’s Φ)',
    ({ left, leftVar, sd, atLeast }) => {
      const belief = { left, leftVar, bias: 0, biasVar: 0.0064, cov: -0.1 }
      const good = weighed(belief, atLeast, sd)
      const badSd = Math.hypot(sd, 0.5 * FULL)
      const bad = weighed(belief, atLeast, badSd)
      const isBad = chanceBad(belief, { read: 24, sd, atLeast }, FULL)
      const after = afterReading(belief, { read: 24, sd, atLeast }, FULL)
      const mean = (1 - isBad) * good.mean + isBad * bad.mean
      expect(after.left).toBeCloseTo(mean, 3)
      expect(after.leftVar).toBeCloseTo(
        (1 - isBad) * (good.variance + (good.mean - mean) ** 2) +
          isBad * (bad.variance + (bad.mean - mean) ** 2),
        2,
      )
    },
  )

  it('[Z67] leaves alone what is believed to be far above, and what scoops do', () => {
    const heaped = { left: 38, leftVar: 2, bias: 0.03, biasVar: 0.004, cov: -0.05 }
    const after = afterReading(heaped, { read: 24, sd: 2.4, atLeast: 21 }, FULL)
    expect(after.left).toBeCloseTo(38, 2)
    expect(after.bias).toBeCloseTo(0.03, 4)
    expect(after.leftVar).toBeCloseTo(2, 2)
  })

  it('[Z67] is doubted where next to nothing is believed to be there', () => {
    const low = { left: 2, leftVar: 0.5, bias: 0, biasVar: 0.004, cov: -0.05 }
    expect(chanceBad(low, { read: 24, sd: 2.4, atLeast: 21 }, FULL)).toBeGreaterThan(0.95)
  })
})
