import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildsToCome, type Straying } from '#lib/estimate/arrivals.ts'
import { countChances } from '#lib/estimate/count-chances.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'
import { forecastAll, stationAhead } from '#lib/estimate/forecast.ts'
import { itemShares, knockOnOf, withKnockOn } from '#lib/estimate/knock-on.ts'
import { chanceOfGap, goneCurve, lastingOf, runOutOf, type Supply } from '#lib/estimate/run-out.ts'
import { rushOf } from '#lib/estimate/rush.ts'
import { noCounts } from '#lib/estimate/service-counts.ts'
import { demoStation } from '#server/demo-station.ts'
import { chanceUpTo } from '#tests/support/best-amount.ts'

const NOW = 660
const CLOSES = 720
const certain: Straying = { day: 0, wave: 0, keep: 0.5, slot: 0, late: 0, together: 1 }
const counts = noCounts(NOW, CLOSES, null)
const horizons = buildsToCome(counts, new Array<number>(12).fill(2), certain, NOW, true)

/** Poisson, so many in the hour to close. */
const wanted = (inAnHour: number): ComponentDemand => ({
  perTaking: [1],
  until: (minute) => {
    const mean = (inAnHour * (minute - NOW)) / 60
    return { mean, variance: mean }
  },
})
const there = (mean: number, arriving: Supply['arriving'] = [], sd = 0): Supply => ({
  mean,
  sd,
  arriving,
})

describe('the chance of running out', () => {
  it('[Z17] is that more is wanted until close than is there', () => {
    const chances = countChances({ mean: 12, variance: 12 }, 60)
    for (const portions of [0, 5, 12, 20])
      expect(chanceOfGap(wanted(12), there(portions), CLOSES)).toBeCloseTo(
        1 - chanceUpTo(chances, portions),
        9,
      )
  })

  it('[Z17] never rises with more in the pans, never falls with more guests or more time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 20 }),
        fc.double({ min: 0.5, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (portions, more, guests, sd) => {
          const chance = chanceOfGap(wanted(guests), there(portions, [], sd), CLOSES)
          const slack = 1e-9
          expect(
            chanceOfGap(wanted(guests), there(portions + more, [], sd), CLOSES),
          ).toBeLessThanOrEqual(chance + slack)
          expect(
            chanceOfGap(wanted(guests + more), there(portions, [], sd), CLOSES),
          ).toBeGreaterThanOrEqual(chance - slack)
          expect(
            chanceOfGap(wanted(guests), there(portions, [], sd), CLOSES - more),
          ).toBeLessThanOrEqual(chance + slack)
        },
      ),
      { seed: 5, numRuns: 200 },
    )
  })

  it('[Z17] doubt about the pans pulls it toward the middle', () => {
    const sure = chanceOfGap(wanted(12), there(24), CLOSES)
    const doubted = chanceOfGap(wanted(12), there(24, [], 6), CLOSES)
    expect(doubted).toBeGreaterThan(sure)
    expect(chanceOfGap(wanted(12), there(4, [], 6), CLOSES)).toBeLessThan(
      chanceOfGap(wanted(12), there(4), CLOSES),
    )
  })

  it('[Z18] a batch under way helps from when it is there, and not before', () => {
    const soon = [{ at: NOW + 10, portions: 20 }]
    const late = [{ at: NOW + 50, portions: 20 }]
    const none = chanceOfGap(wanted(20), there(8), CLOSES)
    const withSoon = chanceOfGap(wanted(20), there(8, soon), CLOSES)
    const withLate = chanceOfGap(wanted(20), there(8, late), CLOSES)
    expect(withSoon).toBeLessThan(0.1)
    expect(withLate).toBeGreaterThan(withSoon)
    expect(withLate).toBeLessThanOrEqual(none)
    expect(chanceOfGap(wanted(20), there(8, late), NOW + 40)).toBeCloseTo(
      chanceOfGap(wanted(20), there(8), NOW + 40),
      12,
    )
  })

  it('[Z19] is said as enough, tight or won’t last', () => {
    expect([0, 0.09, 0.1, 0.49, 0.5, 1].map(lastingOf)).toEqual([
      'enough',
      'enough',
      'tight',
      'tight',
      'wont-last',
      'wont-last',
    ])
  })

  it('[Z20] says by when, early, likely and late, and nothing where it lasts', () => {
    const { chance, by, lasting } = runOutOf(wanted(40), there(20), horizons, NOW + 15)
    expect(lasting).toBe('wont-last')
    expect(chance).toBeGreaterThan(0.99)
    expect(by.likely).toBeGreaterThan(NOW + 27)
    expect(by.likely).toBeLessThan(NOW + 34)
    expect(by.early).toBeLessThan(by.likely ?? 0)
    expect(by.late).toBeGreaterThan(by.likely ?? CLOSES)
    const lasts = runOutOf(wanted(10), there(40), horizons, null)
    expect(lasts.by).toEqual({ early: null, likely: null, late: null })
    expect(lasts.beforeNextBatch).toBeNull()
    const maybe = runOutOf(wanted(20), there(20), horizons, null)
    expect(maybe.by.early).not.toBeNull()
    expect(maybe.by.late).toBeNull()
  })

  it('[Z20] what is gone is gone now', () => {
    const { by, chance } = runOutOf(wanted(40), there(0), horizons, null)
    expect(chance).toBeCloseTo(1, 9)
    expect(by.early).toBeLessThan(NOW + 5)
  })

  it('[Z20] the curve of running out rises to the chance at close', () => {
    const curve = goneCurve(wanted(30), there(20), horizons)
    expect(curve).toHaveLength(horizons.length)
    for (const [index, chance] of curve.entries())
      expect(chance).toBeGreaterThanOrEqual((curve[index - 1] ?? 0) - 1e-12)
    expect(curve.at(-1)).toBeCloseTo(chanceOfGap(wanted(30), there(20), CLOSES), 12)
  })
})

describe('what running out does to the others', () => {
  const shares = itemShares(demoStation, [])
  const knockOn = knockOnOf(demoStation, shares)

  it('[Z21] shares of items are those of the builds, even where none was counted', () => {
    expect(shares['garden-chicken']).toBeCloseTo(1 / 3, 12)
    const counted = itemShares(demoStation, [{ items: { 'garden-chicken': [4, 0] } }])
    expect(counted['garden-chicken']).toBeCloseTo(6 / 10, 12)
  })

  it('[Z21] a heart that is gone sends guests to other hearts, and some away', () => {
    expect(knockOn.beans?.chicken).toBeGreaterThan(1)
    expect(knockOn.beans?.chicken).toBeLessThan(1.5)
    expect(knockOn.slaw?.chicken).toBeLessThan(1)
    expect(knockOn.chicken?.chicken).toBeUndefined()
  })

  it('[Z21] a base that is gone sends guests to the other base; both gone, nothing is sold', () => {
    expect(knockOn.rice?.pita).toBeCloseTo(2, 9)
    expect(knockOn.slaw?.pita).toBeUndefined()
    expect(knockOn.slaw?.['pita+rice']).toBe(0)
  })

  it('[Z21] what isn’t gone changes nothing; what is gone for certain counts in full', () => {
    const slaw = wanted(30)
    const never = { chicken: horizons.map(() => 0) }
    const gone = { chicken: horizons.map(() => 1) }
    expect(withKnockOn(slaw, 'slaw', knockOn, never, horizons)).toBe(slaw)
    const less = withKnockOn(slaw, 'slaw', knockOn, gone, horizons).until(CLOSES)
    expect(less.mean).toBeCloseTo(30 * (knockOn.slaw?.chicken ?? 0), 6)
    expect(less.variance).toBeGreaterThanOrEqual(less.mean)
  })

  it('[Z22] all components are forecast together, unknown ones left out', () => {
    const share = { mean: 0.5, strength: 20, memory: 80, perTaking: [1] }
    const model = {
      profile: new Array<number>(12).fill(4),
      straying: certain,
      shares: { chicken: share, slaw: share },
    }
    const ahead = stationAhead(demoStation, model, [])
    const full = { supply: there(60), nextBatchAt: null }
    const empty = { supply: there(0), nextBatchAt: null }
    const all = forecastAll(ahead, counts, { chicken: full, slaw: full, tuna: full }, NOW)
    expect(Object.keys(all.of)).toEqual(['chicken', 'slaw'])
    const without = forecastAll(ahead, counts, { chicken: empty, slaw: full }, NOW)
    expect(without.of.slaw?.demand.until(CLOSES).mean).toBeLessThan(
      all.of.slaw?.demand.until(CLOSES).mean ?? 0,
    )
  })
})

describe('rush windows', () => {
  const rush = rushOf([1, 1, 8, 8, 1, 1])
  const service = { opens: 600, closes: 630 }

  it('[Z23] are where far more than usual is expected', () => {
    expect([600, 609.9, 610, 619.9, 620].map((minute) => rush.isAt(service, minute))).toEqual([
      false,
      false,
      true,
      true,
      false,
    ])
  })
})
