import { describe, expect, test } from 'vitest'
import { itemWeights } from '#lib/estimate/par/item-weights.ts'
import { menuMix } from '#lib/estimate/par/learnt-mix.ts'
import { type PastDay, ranOut, stretchesOf, tappedOfItem } from '#lib/estimate/par/past-day.ts'
import { realDays } from '#lib/estimate/par/real-days.ts'
import { demoStation } from '#tests/support/service.ts'

const [chicken, beans, tuna] = demoStation.items
if (!chicken || !beans || !tuna) throw new Error('the demo has three items')

const dateOf = (index: number): string =>
  new Date(Date.parse('2026-09-07T00:00:00Z') + index * 86_400_000).toISOString().slice(0, 10)

const day = (items: Readonly<Record<string, number>>, more: Partial<PastDay> = {}): PastDay => ({
  on: '2026-11-02',
  expected: 50,
  builds: Object.values(items).reduce((sum, one) => sum + one, 0),
  items,
  takings: {},
  portions: {},
  taps: {},
  soldOut: [],
  until: {},
  ...more,
})
const C = 'garden-chicken'
const B = 'bean-and-pepper'
const T = 'harbor-tuna'

describe('what a past day wanted', () => {
  test('[PR4] what was tapped as wanted and gone counts beside what was sold', () => {
    const sold = day({ [C]: 20, [B]: 10 }, { takings: { chicken: 26, beans: 10 } })
    expect(tappedOfItem(demoStation, chicken, sold)).toBe(6)
    expect(tappedOfItem(demoStation, beans, sold)).toBe(0)
    expect(tappedOfItem(demoStation, tuna, sold)).toBe(0)
  })

  test('[PR4] an item ran out with its heart or the last of its bases, not with a part it can do without', () => {
    expect(ranOut(chicken, ['chicken'])).toBe(true)
    expect(ranOut(chicken, ['pita'])).toBe(false)
    expect(ranOut(chicken, ['pita', 'rice'])).toBe(true)
    expect(ranOut(chicken, ['slaw', 'cheddar'])).toBe(false)
  })

  const weightsOf = (past: readonly PastDay[]) =>
    itemWeights(
      demoStation,
      past.map((one) => stretchesOf(demoStation, one, () => 1)),
    )

  test('[PR6] days with another menu teach how items are liked against each other', () => {
    const { weights } = weightsOf([
      ...Array.from({ length: 8 }, () => day({ [C]: 40, [B]: 20 })),
      ...Array.from({ length: 8 }, () => day({ [B]: 30, [T]: 30 })),
    ])
    const of = (id: string) => weights[id] ?? 0
    expect(of(C) / of(B)).toBeGreaterThan(1.7)
    expect(of(T) / of(B)).toBeGreaterThan(0.8)
    expect(of(T) / of(B)).toBeLessThan(1.2)
  })

  /** Twice as many want chicken as beans; half of the day it is gone. */
  const half = day(
    { [C]: 20, [B]: 20 },
    { soldOut: ['chicken'], until: { chicken: { items: { [C]: 20, [B]: 10 }, takings: {} } } },
  )

  test('[PR17] until an item ran out all that was wanted was seen: so its weight is learned', () => {
    expect(stretchesOf(demoStation, half, () => 1)).toEqual([
      { serves: { [C]: 1, [B]: 1 }, sold: { [C]: 20, [B]: 10 } },
      { serves: { [C]: 0, [B]: 1 }, sold: { [B]: 10 } },
    ])
    const ratio = (past: readonly PastDay[]) => {
      const { weights } = weightsOf(past)
      return (weights[C] ?? 0) / (weights[B] ?? 1)
    }
    const days = Array.from({ length: 12 }, () => half)
    expect(ratio(days)).toBeGreaterThan(1.85)
    expect(ratio(days)).toBeLessThan(2.1)
    expect(ratio(days.map((one) => ({ ...one, soldOut: [], until: {} })))).toBeLessThan(1.05)
  })

  test('[PR17] how often a part or a base is taken is learned of the time in which it was to be had', () => {
    const part = (takings: Record<string, number>, until: PastDay['until'], soldOut: string[]) =>
      menuMix(
        demoStation,
        Array.from({ length: 10 }, () => day({ [C]: 30, [B]: 30 }, { takings, until, soldOut })),
      )
    const whole = part({ slaw: 48, pita: 30, rice: 30 }, {}, [])
    const early = part(
      { slaw: 24, pita: 15, rice: 45 },
      {
        slaw: { items: { [C]: 15, [B]: 15 }, takings: { slaw: 24 } },
        pita: { items: { [C]: 15, [B]: 15 }, takings: { pita: 15, rice: 15 } },
      },
      ['slaw', 'pita'],
    )
    expect(Math.abs((early.parts.slaw?.odds ?? 9) - (whole.parts.slaw?.odds ?? 0))).toBeLessThan(
      0.15,
    )
    expect(Math.abs((early.bases.pita?.odds ?? 9) - (whole.bases.pita?.odds ?? 0))).toBeLessThan(
      0.15,
    )
  })

  test('[PR6] parts are taken as days say, by how each item usually has them', () => {
    const past = Array.from({ length: 10 }, () =>
      day({ [C]: 30, [B]: 30 }, { takings: { slaw: 30, almonds: 30 }, portions: { slaw: 45 } }),
    )
    const mix = menuMix(demoStation, past)
    expect(mix.parts.slaw?.odds).toBeLessThan(-1)
    expect(mix.each.slaw).toBeGreaterThan(1.4)
    expect(mix.parts.chicken).toEqual({ odds: 0, sd: 0 })
    expect(mix.parts.slaw?.sd).toBeLessThan(mix.parts.cheddar?.sd ?? 0)
  })
})

describe('ten real days', () => {
  const usual = (index: number, more: Partial<PastDay> = {}) =>
    day({ [C]: 30, [B]: 20, [T]: 10 }, { on: dateOf(index), portions: { slaw: index }, ...more })
  const ahead = { on: '2026-11-30', expected: 50, firstBuilds: 60 }
  const of = (past: readonly PastDay[], items: readonly string[] | null = null) =>
    realDays(demoStation, past, ahead, items, 'slaw')

  test('[PR10] are the newest ten like the one ahead, the fewest portions first; of fewer there are none', () => {
    const past = Array.from({ length: 12 }, (_, index) => usual(index))
    expect(of(past)?.days.map(({ portions }) => portions)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
    expect(of(past)?.sameWeekday).toBe(false)
    expect(of(past.slice(0, 9))).toBeNull()
  })

  test('[PR10] of its weekday where ten are, of as many guests, and of the same items', () => {
    const mondays = Array.from({ length: 11 }, (_, index) => usual(7 * index))
    const between = Array.from({ length: 30 }, (_, index) => usual(index + 1))
    const both = [...mondays, ...between.filter(({ on }) => !mondays.some((one) => one.on === on))]
    expect(of(both.sort((a, b) => (a.on < b.on ? -1 : 1)))?.sameWeekday).toBe(true)
    expect(of(mondays.map((one) => ({ ...one, expected: 70 })))).toBeNull()
    expect(of(mondays.map((one) => ({ ...one, expected: null })))).toBeNull()
    expect(of(mondays, [C, B])).toBeNull()
    expect(of(mondays, [C, B, T])).not.toBeNull()
  })

  test('[PR10] a day that ran out says at least', () => {
    const past = Array.from({ length: 10 }, (_, index) =>
      usual(index, index === 3 ? { soldOut: ['slaw'] } : {}),
    )
    expect(of(past)?.days.filter(({ atLeast }) => atLeast)).toEqual([
      { on: dateOf(3), portions: 3, atLeast: true },
    ])
  })
})
