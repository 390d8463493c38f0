import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { daySize } from '#lib/estimate/par/day-size.ts'
import { drawnDays } from '#lib/estimate/par/drawn-days.ts'
import { menuMix } from '#lib/estimate/par/learnt-mix.ts'
import { type ComponentPar, wholeMenu } from '#lib/estimate/par/par.ts'
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import { type DayGuess, MOST_TIMES, plausiblyLost } from '#lib/estimate/par/plausible-days.ts'
import { saidDays } from '#lib/estimate/par/said-days.ts'
import { wantedBuilds } from '#lib/estimate/par/wanted-builds.ts'
import { wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import { parFor } from '#lib/rooms/prep/facts/par-for.ts'
import { demoStation } from '#tests/support/service.ts'

const COMPONENTS = demoStation.components.map(({ id }) => id)
const ITEMS = demoStation.items.map(({ id }) => id)
const PARTS = ['slaw', 'cheddar', 'almonds', 'yogurt-sauce', 'peppers']
const AHEAD = { on: '2026-11-16', expected: 60, firstBuilds: 60 }

type Counts = Readonly<Record<string, number>>
const sumOf = (counts: Counts): number => Object.values(counts).reduce((sum, one) => sum + one, 0)

const ALL: Counts = { 'garden-chicken': 30, 'bean-and-pepper': 20, 'harbor-tuna': 10 }
const SOME: Counts = { 'garden-chicken': 20, 'bean-and-pepper': 13, 'harbor-tuna': 7 }

/** 95 of 100 take each part that they may. */
const takingsOf = (items: Counts): Counts =>
  Object.fromEntries(
    COMPONENTS.map((component) => {
      const own = demoStation.items.filter(
        ({ heart, parts }) =>
          heart === component || parts.some((part) => part.component === component),
      )
      const builds = own.reduce((sum, { id }) => sum + (items[id] ?? 0), 0)
      const isHeart = own.some(({ heart }) => heart === component)
      return [component, isHeart ? builds : Math.round(builds * 0.95)]
    }),
  )

const full: PastDay = {
  ...{ on: '2026-11-02', expected: 60, builds: 60, items: ALL, soldOut: [], until: {}, taps: {} },
  ...{ takings: takingsOf(ALL), portions: takingsOf(ALL) },
}

/** Parts are gone after 40 of 60 builds; of those after it who had wanted it so many are told as wanting it. */
const ranShort = (gone: readonly string[], told: number): PastDay => {
  const [all, some] = [takingsOf(ALL), takingsOf(SOME)]
  const between = (id: string) =>
    (some[id] ?? 0) + Math.round(told * ((all[id] ?? 0) - (some[id] ?? 0)))
  const takings = { ...all, ...Object.fromEntries(gone.map((id) => [id, between(id)])) }
  return {
    ...{ ...full, on: '2026-11-09', takings, portions: takings, soldOut: gone },
    until: Object.fromEntries(gone.map((id) => [id, { items: SOME, takings: some }])),
  }
}

const week = (last: PastDay): readonly PastDay[] => [...Array<PastDay>(6).fill(full), last]
const wantedLast = (past: readonly PastDay[]) =>
  wantedBuilds(demoStation, past, menuMix(demoStation, past)).at(-1)
const parAfter = (past: readonly PastDay[]): Readonly<Record<string, ComponentPar>> =>
  parFor(demoStation, { ahead: AHEAD, past, items: null, there: {} })

describe('guests that a day can have lost', () => {
  test('[PR31] where nearly all take a part that is gone, a wrong tap doesn’t make a day of hundreds', () => {
    const usual = parAfter(week(full)).slaw?.mean ?? 0
    for (const gone of [1, 2, 3, 4, 5])
      for (const told of [0, 0.25, 0.5, 1]) {
        const past = week(ranShort(PARTS.slice(0, gone), told))
        const { builds = 0, unsure = 0 } = wantedLast(past) ?? {}
        expect(builds, `${gone} ${told}`).toBeGreaterThanOrEqual(60)
        expect(builds, `${gone} ${told}`).toBeLessThan(90)
        expect(Math.sqrt(unsure), `${gone} ${told}`).toBeLessThan(20)
        const mean = parAfter(past).slaw?.mean ?? 0
        expect(Math.abs(mean - usual), `${gone} ${told}`).toBeLessThan(0.05 * usual)
      }
  })

  test('[PR31] what others and what was sold beside agree on is believed, and what all days say too', () => {
    const day = (mean: number, sd: number, seen: number): DayGuess => ({
      ...{ expected: null, seen, atLeast: false },
      lost: { mean, variance: sd ** 2 },
    })
    const seen = Array.from({ length: 12 }, () => day(0, 0, 100))
    const lostLast = (days: readonly DayGuess[]) => plausiblyLost(days).at(-1)?.mean ?? 0
    expect(Math.abs(lostLast([...seen, day(38, 8, 60)]) - 38)).toBeLessThan(1)
    // What can be true is taken as it was recorded, though the other days would say 40.
    const { mean = 0, variance = 0 } = plausiblyLost([...seen, day(20, 10, 60)]).at(-1) ?? {}
    expect(Math.abs(mean - 20)).toBeLessThan(2)
    expect(Math.sqrt(variance)).toBeGreaterThanOrEqual(10)
    expect(Math.sqrt(variance)).toBeLessThan(15)
    // What can't is taken as the other days say it, about 0, and no surer than they are.
    const wrong = plausiblyLost([...seen, day(290, 90, 100)]).at(-1)
    expect(wrong?.mean).toBeGreaterThan(10)
    expect(wrong?.mean).toBeLessThan(40)
    expect(Math.sqrt(wrong?.variance ?? 0)).toBeGreaterThan(15)
    // A station that lost as many on all its days isn't held to what it sold.
    const starved = Array.from({ length: 12 }, () => day(40, 8, 60))
    expect(Math.abs(lostLast(starved) - 40)).toBeLessThan(2)
    expect(lostLast([day(0, 0, 60)])).toBe(0)
    // A day on which all ran out at once says nothing of the others, nor does one on which nobody came.
    const gone = [{ ...day(0, 0, 4), atLeast: true }, day(0, 0, 0)]
    expect(lostLast([...gone, ...seen, day(38, 8, 60)])).toBe(lostLast([...seen, day(38, 8, 60)]))
  })

  const counts = (ids: readonly string[], max: number) =>
    fc.tuple(...ids.map(() => fc.integer({ min: 0, max }))).map((values): Counts => {
      return Object.fromEntries(ids.map((id, index) => [id, values[index] ?? 0]))
    })
  const scaled = (all: Counts, share: number): Counts =>
    Object.fromEntries(Object.entries(all).map(([id, count]) => [id, Math.floor(count * share)]))
  /** Any parts gone at any time, before the first build too; records that fit no day as well. */
  const anyDay = fc
    .record({
      items: counts(ITEMS, 60),
      takings: counts(COMPONENTS, 150),
      taps: fc.oneof(fc.constant({}), counts(COMPONENTS, 20)),
      gone: fc.subarray(COMPONENTS),
      when: fc.array(fc.constantFrom(0, 0.02, 0.3, 0.7, 1), { minLength: 10, maxLength: 10 }),
      expected: fc.constantFrom(null, 1, 50, 400),
    })
    .map(({ items, takings, taps, gone, when, expected }): PastDay => {
      const until = gone.map((id, index) => {
        const share = when[index] ?? 0
        return [id, { items: scaled(items, share), takings: scaled(takings, share) }] as const
      })
      return {
        ...{ on: '2026-11-02', expected, items, takings, taps, portions: takings, soldOut: gone },
        ...{ builds: sumOf(items), until: Object.fromEntries(until) },
      }
    })
  const anyPast = fc.array(anyDay, { minLength: 1, maxLength: 8 })

  test('[PR31] no record makes a day less than what was sold, nor more than twice the largest and its taps', () => {
    fc.assert(
      fc.property(anyPast, (past) => {
        const wanted = wantedBuilds(demoStation, past, menuMix(demoStation, past))
        for (const [index, { builds, unsure }] of wanted.entries()) {
          const day = past[index]
          const tapped = sumOf(day?.taps ?? {})
          const all = past.map((one) => one.builds + sumOf(one.taps))
          const most = MOST_TIMES * Math.max(day?.expected ?? 0, ...all)
          const known = sumOf(day?.takings ?? {}) + tapped
          expect(builds).toBeGreaterThanOrEqual((day?.builds ?? 0) - 1e-9)
          expect(builds).toBeLessThanOrEqual(most + known + 1e-6)
          expect(unsure).toBeGreaterThanOrEqual(0)
          expect(unsure).toBeLessThanOrEqual((most + known) ** 2)
        }
      }),
      { numRuns: 150, seed: 41 },
    )
  })

  test('[PR31] a par after such days weighs as few days as any', () => {
    const of = Object.fromEntries(
      COMPONENTS.map((id) => [id, { size: 12, there: 0, costCents: 40, carriedFor: 1 }]),
    )
    const played = (past: readonly PastDay[]): number => {
      const mix = menuMix(demoStation, past)
      const wanted = wantedBuilds(demoStation, past, mix)
      const days = past.map(({ on, expected }, index) => {
        const { builds, unsure, atLeast } = wanted[index] ?? {
          builds: 0,
          unsure: 0,
          atLeast: false,
        }
        return { on, expected, wanted: builds, unsure, atLeast }
      })
      const size = daySize(days, AHEAD)
      const { means } = saidDays(demoStation, size, mix)
      return wholeLoads(wholeMenu(demoStation, of, means), drawnDays(demoStation, size, mix, 80), {
        size: COMPONENTS.map(() => 12),
        there: COMPONENTS.map(() => 0),
        isWanted: means.map((mean) => mean > 0),
      }).daysPlayed
    }
    const nothing = { items: {}, takings: {} }
    const atOnce: PastDay = {
      ...{ ...full, soldOut: COMPONENTS },
      until: Object.fromEntries(COMPONENTS.map((id) => [id, nothing])),
    }
    for (const past of [week(ranShort(PARTS, 0)), week(atOnce), [atOnce], [ranShort(PARTS, 0)]])
      expect(played(past)).toBeLessThan(4_000)
  })
})
