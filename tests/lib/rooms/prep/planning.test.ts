import { describe, expect, test } from 'vitest'
import { learnPast } from '#lib/estimate/demand-history.ts'
import { noCounts } from '#lib/estimate/service-counts.ts'
import { firstShares } from '#lib/rooms/advice/facts/stakes.ts'
import { daysAlike } from '#lib/rooms/prep/facts/days-alike.ts'
import { measuredMinutes } from '#lib/rooms/prep/facts/measured-minutes.ts'
import { bestLoads, firstChoices, isEnough, oneMoreWasted } from '#lib/rooms/prep/views/loads.ts'
import {
  alsoTheDayBefore,
  crewOf,
  firstEntry,
  lackOf,
  onDay,
  planCommandOf,
  withReader,
} from '#lib/rooms/prep/views/plan-entry.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, MINUTE } from '#tests/support/prep-plans.ts'
import { demoStation } from '#tests/support/service.ts'

const ahead = (expected: number | null) => ({ opens: 680, closes: 740, expected })
const menuAlone = learnPast([], firstShares(demoStation))

describe('ten days like the one that is planned', () => {
  test('[PP16] are the middles of ten equal parts of what is forecast, the fewest first', () => {
    const wanted = daysAlike(menuAlone, ahead(46))
    expect(Object.keys(wanted).sort()).toEqual(demoStation.components.map(({ id }) => id).sort())
    for (const { mean, days } of Object.values(wanted)) {
      expect(days).toHaveLength(10)
      expect([...days].sort((a, b) => a - b)).toEqual(days)
      const average = days.reduce((sum, one) => sum + one, 0) / 10
      expect(Math.abs(average - mean)).toBeLessThan(0.1 * mean + 1)
    }
    const [few, many] = [daysAlike(menuAlone, ahead(20)), daysAlike(menuAlone, ahead(80))]
    expect(many.beans?.mean).toBeGreaterThan(3 * (few.beans?.mean ?? 0))
  })

  test('[PP16] a past with twice the guests’ builds says so, and the menu alone says less surely', () => {
    const builds = Array.from({ length: 12 }, () => 8)
    const day = {
      ...noCounts(680, 740, 48),
      builds,
      takings: { beans: builds },
      portions: { beans: builds },
    }
    const taught = learnPast([day, day, day, day, day], firstShares(demoStation))
    const known = daysAlike(taught, ahead(48))
    expect(known.beans?.mean).toBeGreaterThan(70)
    const spread = (days: readonly number[] = []) => (days.at(-1) ?? 0) / Math.max(1, days[0] ?? 1)
    expect(spread(known.beans?.days)).toBeLessThan(
      spread(daysAlike(menuAlone, ahead(96)).beans?.days),
    )
  })

  test('[PP16] the first loads are those that cost the least over them', () => {
    const days = [10, 14, 16, 18, 20, 22, 24, 27, 30, 40]
    const dear = { lostCents: 500, leftCents: 10 }
    const cheap = { lostCents: 10, leftCents: 500 }
    expect(bestLoads(days, 12, dear)).toBe(4)
    expect(bestLoads(days, 12, cheap)).toBe(1)
    for (const stakes of [dear, cheap, { lostCents: 100, leftCents: 100 }]) {
      const cost = (loads: number) =>
        days.reduce((sum, wanted) => {
          const short = Math.max(0, wanted - 12 * loads)
          return (
            sum + stakes.lostCents * short + stakes.leftCents * Math.max(0, 12 * loads - wanted)
          )
        }, 0)
      const best = bestLoads(days, 12, stakes)
      for (let loads = 1; loads < 8; loads += 1) expect(cost(best)).toBeLessThanOrEqual(cost(loads))
    }
    expect(isEnough({ mean: 22, days }, 24).filter((is) => is)).toHaveLength(7)
    const beans = { ...componentOf(demoStation, 'beans'), costCents: 40 }
    expect(oneMoreWasted(beans, { mean: 22, days }, 40, 12)).toBe(480)
  })

  test('[PP16] what isn’t on sale is in no plan, and a measured time is the plan’s', () => {
    const wanted = daysAlike(menuAlone, ahead(46))
    const all = firstChoices(demoStation, wanted, { beans: 22 }, null)
    expect(all.map(({ component }) => component)).toContain('tuna')
    expect(all.find(({ component }) => component === 'beans')?.minutes).toBe(22)
    const some = firstChoices(demoStation, wanted, {}, ['bean-and-pepper'])
    expect(some.map(({ component }) => component)).not.toContain('tuna')
  })

  test('[PP17] a making’s time is the middle of its newest, once three were measured', () => {
    const made = (component: string, ...minutes: readonly number[]) =>
      minutes.map((each) => ({ component, startedAt: 0, finishedAt: each * MINUTE }))
    const batches = [
      ...made('beans', 20, 90, 22),
      ...made('rice', 30, 31),
      { component: 'slaw', startedAt: 0, finishedAt: null },
    ]
    expect(measuredMinutes(batches)).toEqual({ beans: 22 })
    expect(
      measuredMinutes([...made('beans', 99, 99), ...made('beans', ...Array(9).fill(20))]),
    ).toEqual({ beans: 20 })
  })
})

const schooled: StationDocument = {
  ...demoStation,
  day: {
    ...demoStation.day,
    doors: { open: '11:20', close: '12:20' },
    bells: [
      {
        id: 'usual',
        name: 'Usual',
        periods: [
          { id: 'p2', name: 'Period 2', from: '08:40', to: '09:30' },
          { id: 'p3', name: 'Period 3', from: '09:34', to: '10:24' },
          { id: 'p4', name: 'Period 4', from: '10:28', to: '11:18' },
        ],
      },
    ],
    crew: [
      { bell: 'usual', period: 'p2', initials: 'KT', certified: true },
      { bell: 'usual', period: 'p3', initials: 'KT', certified: true },
      { bell: 'usual', period: 'p2', initials: 'AB', certified: false },
      { bell: 'usual', period: 'p3', initials: 'AB', certified: false },
    ],
  },
}

describe('what is typed of a plan', () => {
  test('[PP19] begins tomorrow, by the doors, bells and crew of the set-up', () => {
    const entry = firstEntry(schooled, at('15:00', -1))
    expect(entry).toMatchObject({ on: '2026-12-04', doorsOpen: '11:20', bells: 'usual' })
    expect(crewOf(schooled, 'usual', '2026-12-04')).toEqual([
      { initials: 'AB', adult: false, on: '2026-12-04', from: '08:40', to: '09:30' },
      { initials: 'AB', adult: false, on: '2026-12-04', from: '09:34', to: '10:24' },
      { initials: 'KT', adult: true, on: '2026-12-04', from: '08:40', to: '10:24' },
    ])
  })

  test('[PP19] says what it lacks, moves its people with the day, and adds a reader at the moment', () => {
    const entry = firstEntry(schooled, at('15:00', -1))
    expect(lackOf(entry)).toBeNull()
    expect(lackOf({ ...entry, walkIn: 'many' })).toBe('guests')
    expect(lackOf({ ...entry, items: [] })).toBe('items')
    const both = alsoTheDayBefore(entry)
    expect(both.crew.map(({ on }) => on)).toEqual([
      ...Array(3).fill('2026-12-03'),
      ...Array(3).fill('2026-12-04'),
    ])
    expect(alsoTheDayBefore(both)).toEqual(both)
    expect(onDay(both, '2026-12-10').crew.map(({ on }) => on)).toEqual([
      ...Array(3).fill('2026-12-09'),
      ...Array(3).fill('2026-12-10'),
    ])
    const asked = withReader(
      entry,
      { from: at('19:32', -1), to: at('19:32', -1) },
      'America/New_York',
    )
    expect(asked.crew.at(-1)).toEqual({
      ...{ initials: '', adult: true, on: '2026-12-03', from: '19:17', to: '19:32' },
    })
    expect(lackOf(asked)).toBe('initials')
    expect(planCommandOf({ ...entry, walkIn: '46' }, 'alder-hall')).toMatchObject({
      ...{ type: 'plan', station: 'alder-hall', guests: { walkIn: 46, groups: [] } },
    })
  })
})
