import { describe, expect, test } from 'vitest'
import { daySize, type SizedDay } from '#lib/estimate/par/day-size.ts'
import { evenly } from '#lib/estimate/par/draws.ts'
import { weekdayOf } from '#lib/estimate/par/past-day.ts'

const dateOf = (index: number): string =>
  new Date(Date.parse('2026-01-05T00:00:00Z') + index * 86_400_000).toISOString().slice(0, 10)

/** Five days a week from a Monday on. */
const weekdays = Array.from({ length: 40 }, (_, index) =>
  dateOf(7 * Math.floor(index / 5) + (index % 5)),
)
const next = '2026-03-02'

const days = (of: (index: number) => Partial<SizedDay>): readonly SizedDay[] =>
  weekdays.map((on, index) => ({
    on,
    expected: null,
    wanted: 60,
    unsure: 0,
    atLeast: false,
    ...of(index),
  }))

const meanOf = (past: readonly SizedDay[], on = next, expected: number | null = null): number =>
  daySize(past, { on, expected, firstBuilds: 80 }).cases.reduce(
    (sum, { weight, mean, sd }) => sum + weight * Math.exp(mean + sd ** 2 / 2),
    0,
  )
const sdOf = (past: readonly SizedDay[], expected: number | null = null): number =>
  daySize(past, { on: next, expected, firstBuilds: 80 }).cases.reduce(
    (sum, { weight, sd }) => sum + weight * sd,
    0,
  )
/** Strays that are spread evenly, some above and as many below. */
const stray = (index: number): number => 0.3 * (evenly(index) - 0.5)

describe('how many builds a day wants', () => {
  test('[PR11] with nothing recorded: as many as guests are expected, else by the hours, and not surely', () => {
    expect(meanOf([], next, 46)).toBeGreaterThan(42)
    expect(meanOf([], next, 46)).toBeLessThan(56)
    expect(meanOf([])).toBeGreaterThan(70)
    expect(sdOf([], 46)).toBeGreaterThan(
      1.3 *
        sdOf(
          days((i) => ({ expected: 46, wanted: 46 * Math.exp(stray(i)) })),
          46,
        ),
    )
  })

  test('[PR3] guests who are expected count as far as they told before', () => {
    const told = days((i) => ({ expected: 30 + (i % 7) * 10, wanted: (30 + (i % 7) * 10) * 0.8 }))
    expect(meanOf(told, next, 60)).toBeGreaterThan(44)
    expect(meanOf(told, next, 60)).toBeLessThan(53)
    const deaf = days((i) => ({ expected: 30 + (i % 7) * 10, wanted: 60 * Math.exp(stray(i)) }))
    expect(meanOf(deaf, next, 90)).toBeLessThan(75)
  })

  test('[PR3] a weekday counts once enough of them tell, one day of it hardly', () => {
    expect(weekdayOf(next)).toBe(weekdayOf(weekdays[0] ?? ''))
    const busy = (i: number) => 60 * (i % 5 === 0 ? 1.6 : 1) * Math.exp(0.4 * stray(i))
    const mondays = days((i) => ({ wanted: busy(i) }))
    expect(meanOf(mondays)).toBeGreaterThan(85)
    expect(meanOf(mondays, '2026-03-03')).toBeLessThan(70)
    const once = days((i) => ({ wanted: 60 * (i === 0 ? 1.6 : 1) * Math.exp(stray(i)) })).slice(
      0,
      9,
    )
    expect(meanOf(once)).toBeLessThan(75)
  })

  test('[PR17] a day on which all ran out counts as at least as many', () => {
    const capped = days((i) => {
      const wanted = 60 * Math.exp(2 * stray(i))
      return wanted > 55 ? { wanted: 55, atLeast: true } : { wanted }
    })
    const asSold = capped.map((day) => ({ ...day, atLeast: false }))
    expect(meanOf(capped)).toBeGreaterThan(meanOf(asSold) + 4)
    expect(meanOf(capped)).toBeGreaterThan(56)
    expect(meanOf(capped)).toBeLessThan(75)
  })
})
