import { describe, expect, test } from 'vitest'
import { measuredMinutes } from '#lib/rooms/prep/facts/measured-minutes.ts'
import { carriedFor, parFor } from '#lib/rooms/prep/facts/par-for.ts'
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import {
  alsoTheDayBefore,
  crewOf,
  periodsOf,
  withPerson,
  withReader,
} from '#lib/rooms/prep/views/crew-entry.ts'
import { crewRows, toggled, withoutPerson, withRow } from '#lib/rooms/prep/views/crew-rows.ts'
import { firstChoices } from '#lib/rooms/prep/views/loads.ts'
import {
  dotsOf,
  enoughDays,
  highestOf,
  insteadOf,
  oneMoreLeft,
  portionsWith,
} from '#lib/rooms/prep/views/par-told.ts'
import { firstEntry, lackOf, onDay, planCommandOf } from '#lib/rooms/prep/views/plan-entry.ts'
import { parEn } from '#lib/rooms/prep/words/par-en.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, MINUTE } from '#tests/support/prep-plans.ts'
import { demoStation } from '#tests/support/service.ts'

const ahead = (expected: number | null) => ({ on: '2026-12-04', expected, firstBuilds: 60 })
const byMenu = (expected: number | null, more: Partial<Parameters<typeof parFor>[1]> = {}) =>
  parFor(demoStation, { ahead: ahead(expected), past: [], items: null, there: {}, ...more })

/** As the screen is told it, nothing at hand and no real days. */
const told = (more: Partial<ParTold>): ParTold => ({
  ...{ mean: 22, days: [10, 14, 16, 18, 20, 22, 24, 27, 30, 40], share: 0.4, loads: 2 },
  ...{ leftCents: 40, lostCents: 480, real: null, isCarried: false },
  atHand: { lots: [], portions: 0, others: 0, promised: [] },
  taken: 0,
  ...more,
})

describe('par of a plan', () => {
  test('[PR11] by the menu alone: of each component ten days, the fewest first, more with more guests', () => {
    const wanted = byMenu(46)
    expect(Object.keys(wanted).sort()).toEqual(demoStation.components.map(({ id }) => id).sort())
    for (const { mean, days, share, loads } of Object.values(wanted)) {
      expect(days).toHaveLength(10)
      expect([...days].sort((a, b) => a - b)).toEqual(days)
      const average = days.reduce((sum, one) => sum + one, 0) / 10
      expect(Math.abs(average - mean)).toBeLessThan(0.1 * mean + 1)
      expect(share).toBeGreaterThan(0)
      expect(share).toBeLessThanOrEqual(1)
      expect(loads).toBeGreaterThan(0)
    }
    expect(byMenu(80).beans?.mean).toBeGreaterThan(3 * (byMenu(20).beans?.mean ?? 0))
  })

  test('[PR12] the same question has the same answer', () => {
    expect(byMenu(46)).toEqual(byMenu(46))
  })

  test('[PR8] what is at hand is taken off, and enough of it is no load at all', () => {
    const plain = byMenu(46)
    const some = byMenu(46, { there: { slaw: 20 } })
    expect(some.slaw?.loads).toBe((plain.slaw?.loads ?? 0) - 1)
    const enough = byMenu(46, { there: { slaw: 200 } })
    expect(enough.slaw?.loads).toBe(0)
    expect(
      firstChoices(demoStation, enough, {}, null).map(({ component }) => component),
    ).not.toContain('slaw')
  })

  test('[PR9] what is cold or dry may serve another service; what was hot is counted as thrown out', () => {
    const day = (on: string) => ({
      ...{
        on,
        expected: 46,
        builds: 46,
        items: {},
        takings: {},
        portions: {},
        taps: {},
        soldOut: [],
        until: {},
      },
    })
    const weekdays = ['2026-11-23', '2026-11-24', '2026-11-25', '2026-11-30', '2026-12-01']
    const past = [...weekdays, '2026-12-02', '2026-12-03', '2026-11-20'].map(day)
    const carried = (held: 'hot' | 'cold' | 'dry', days: readonly ReturnType<typeof day>[]) =>
      carriedFor({ held }, demoStation, { past: days, ahead: ahead(46) })
    expect(carried('hot', past)).toBe(0)
    expect(carried('cold', past)).toBe(1)
    expect(carried('dry', past)).toBe(3)
    expect(carried('cold', [])).toBe(0)
    expect(carried('dry', [])).toBe(0)
  })

  test('[PR13] one too few loses the price less what the build’s portions cost; one left over what it cost', () => {
    const { chicken, slaw } = byMenu(46)
    // 650 cents less 115 of chicken, 30 of pita or 25 of rice and what of 28, 18, 30, 25 and 20 goes in.
    expect(chicken?.lostCents).toBeGreaterThan(650 - 115 - 30 - 2 * 121)
    expect(chicken?.lostCents).toBeLessThan(650 - 115 - 25)
    expect(chicken?.leftCents).toBe(115)
    expect(slaw?.leftCents).toBe(18)
  })

  test('[PR10] ten real days stand for the dots, and one that ran out is never enough', () => {
    const days = [12, 14, 16, 18, 20, 22, 24, 26, 28, 30].map((portions, index) => ({
      on: `2026-11-${10 + index}`,
      portions,
      atLeast: portions === 14,
    }))
    const real = told({ real: { days, sameWeekday: false } })
    const enough = (one: ParTold, portions: number) =>
      dotsOf(one, portions).filter(({ isEnough }) => isEnough).length
    expect(enough(real, 24)).toBe(6)
    expect(enough(told({}), 24)).toBe(7)
    expect(enoughDays(real, 24)).toBe(7)
    expect(highestOf(real, 12)).toBe(30)
    expect(
      portionsWith(told({ atHand: { lots: [], portions: 9, others: 0, promised: [] } }), 12),
    ).toBe(21)
    expect(oneMoreLeft(told({}), 40, 12)).toBe(480)
  })

  test('[PR29] what runs out on half of the days or more says so, and what guests then take', () => {
    expect([3, 5, 6, 10].map((days) => parEn.enough(24, days))).toEqual([
      '24 portions: runs out on 7 days of 10.',
      '24 portions: runs out on 5 days of 10.',
      '24 portions: enough on 6 days of 10.',
      '24 portions: enough on 10 days of 10.',
    ])
    const [item, ...rest] = demoStation.items
    const choices = item?.base?.choices ?? []
    const [first = '', ...others] = choices
    expect(others.length).toBeGreaterThan(0)
    const names = (one: StationDocument, id: string, onSale: readonly string[] | null = null) =>
      insteadOf(one, id, onSale).map((found) => found.id)
    expect(names(demoStation, first)).toEqual(others)
    expect(names(demoStation, 'chicken')).toEqual([])
    // Where one of those on sale has nothing else, its guest goes without.
    const alone: StationDocument = {
      ...demoStation,
      items: [{ ...item, base: { choices: [first], usual: first } }, ...rest] as never,
    }
    expect(names(alone, first)).toEqual([])
    expect(
      names(
        alone,
        first,
        rest.map(({ id }) => id),
      ),
    ).toEqual(others)
  })

  test('[PP16] what isn’t on sale is in no plan, and a measured time is the plan’s', () => {
    const all = firstChoices(demoStation, byMenu(46), { beans: 22 }, null)
    expect(all.map(({ component }) => component)).toContain('tuna')
    expect(all.find(({ component }) => component === 'beans')?.minutes).toBe(22)
    const items = ['bean-and-pepper']
    const some = firstChoices(demoStation, byMenu(46, { items }), {}, items)
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
      ...{ person: 'new 1', initials: '', adult: true },
      ...{ on: '2026-12-03', from: '19:17', to: '19:32' },
    })
    expect(lackOf(asked)).toBe('initials')
    expect(planCommandOf({ ...entry, walkIn: '46' }, 'alder-hall')).toMatchObject({
      ...{ type: 'plan', station: 'alder-hall', guests: { walkIn: 46, groups: [] } },
    })
  })

  test('[PP33] people are rows of periods: a tap is one period, and an adult’s that follow are one time', () => {
    const entry = firstEntry(schooled, at('15:00', -1))
    const periods = periodsOf(schooled, 'usual')
    const there = (typed: typeof entry) =>
      crewRows(typed, periods).map(({ initials, days, times }) => [
        initials,
        days.map(({ cells }) => cells.map(({ isThere }) => (isThere ? 1 : 0)).join('')).join(' '),
        times.length,
      ])
    const none = '0'.repeat(periods.length)
    const two = `11${'0'.repeat(periods.length - 2)}`
    expect(there(entry)).toEqual([
      ['AB', `${none} ${two}`, 0],
      ['KT', `${none} ${two}`, 0],
    ])
    const row = (typed: typeof entry, index: number) => {
      const found = crewRows(typed, periods)[index]
      if (!found) throw new Error('no such row')
      return found
    }
    const [first] = periods
    const before = withRow(entry, toggled(row(entry, 1), '2026-12-03', first?.id ?? ''))
    expect(there(before)[1]).toEqual(['KT', `1${none.slice(1)} ${two}`, 0])
    expect(before.crew.filter(({ initials }) => initials === 'KT')).toMatchObject([
      { on: '2026-12-03', from: '08:40', to: '09:30' },
      { on: '2026-12-04', from: '08:40', to: '10:24' },
    ])
    // As a student the time is two, one for each period; and back.
    const asStudent = withRow(entry, { ...row(entry, 1), adult: false })
    expect(asStudent.crew.filter(({ initials }) => initials === 'KT')).toHaveLength(2)
    expect(withRow(asStudent, { ...row(asStudent, 1), adult: true })).toEqual(entry)
    // Twice tapped is as it was, whatever is tapped.
    for (const [index, { days }] of crewRows(before, periods).entries())
      for (const { on, cells } of days)
        for (const { period } of cells) {
          const once = withRow(before, toggled(row(before, index), on, period.id))
          expect(once).not.toEqual(before)
          expect(withRow(once, toggled(row(once, index), on, period.id))).toEqual(before)
        }
    // Nobody’s initials are another’s while they are typed.
    const more = withPerson(entry)
    const typed = ['A', 'AB', 'ABC'].reduce(
      (now, initials) => withRow(now, { ...row(now, 2), initials }),
      more,
    )
    expect(there(typed).map(([who]) => who)).toEqual(['AB', 'KT', 'ABC'])
    expect(lackOf(typed)).toBe('crew')
    expect(withoutPerson(typed, row(typed, 2).person)).toEqual(entry)
    // Another time than the bells’ is said beside them.
    const late = withReader(
      entry,
      { from: at('19:32', -1), to: at('19:32', -1) },
      'America/New_York',
    )
    expect(there(late)[2]).toEqual(['', `${none} ${none}`, 1])
    expect(planCommandOf(late, 'alder-hall').crew.at(-1)).toEqual({
      ...{ initials: '', adult: true, on: '2026-12-03', from: '19:17', to: '19:32' },
    })
  })

  test('[PP33] an adult’s breaks are as they were said, and no period lies in one', () => {
    const bells = [
      ['p1', '08:00', '08:45'],
      ['home', '08:47', '08:57'],
      ['p2', '09:00', '09:45'],
      ['p3', '10:30', '11:15'],
    ] as const
    const periods = bells.map(([id, from, to]) => ({ id, name: id, from, to }))
    const one = { person: 'KT', initials: 'KT', adult: true, on: '2026-12-04' }
    const typed = (...times: readonly (readonly [string, string])[]) => ({
      ...{ on: '2026-12-04', crew: times.map(([from, to]) => ({ ...one, from, to })) },
    })
    const row = (of: ReturnType<typeof typed>) => crewRows(of, periods)[0] as never
    const times = (of: ReturnType<typeof typed>) => of.crew.map(({ from, to }) => `${from}-${to}`)
    const whole = typed(['08:00', '09:45'])
    const without = withRow(whole, toggled(row(whole), '2026-12-04', 'home'))
    expect(times(without)).toEqual(['08:00-08:45', '09:00-09:45'])
    expect(times(withRow(without, toggled(row(without), '2026-12-04', 'home')))).toEqual(
      times(whole),
    )
    // Said over a long break, it stays so whatever else is tapped or typed.
    const long = typed(['09:00', '11:15'])
    expect(times(withRow(long, { ...(row(long) as object), initials: 'KTX' } as never))).toEqual(
      times(long),
    )
    const before = withRow(long, toggled(row(long), '2026-12-03', 'p1'))
    expect(times(before).sort()).toEqual(['08:00-08:45', '09:00-11:15'])
    // Backwards it is no period, and is there to be mended.
    expect(crewRows(typed(['10:30', '08:45']), periods)[0]?.times).toHaveLength(1)
  })

  test('[PP33] one and the same is one pair of hands, and a reader past midnight is there on both days', () => {
    const entry = firstEntry(schooled, at('15:00', -1))
    const sent = (times: readonly (readonly [string, string, string, boolean?])[]) => {
      const crew = times.map(([initials, from, to, adult = true], index) => ({
        ...{ person: `new ${index}`, initials, adult, on: entry.on, from, to },
      }))
      return planCommandOf({ ...entry, crew }, 'alder-hall').crew.map(
        ({ initials, from, to }) => `${initials} ${from}-${to}`,
      )
    }
    const kt = ['KT', '09:55', '14:00'] as const
    expect(sent([kt, kt])).toEqual(['KT 09:55-14:00'])
    expect(sent([['KT', '08:00', '10:00'], kt, ['AB', '09:00', '10:00']])).toEqual([
      ...['KT 08:00-14:00', 'AB 09:00-10:00'],
    ])
    expect(
      sent([
        ['KT', '08:00', '09:00'],
        ['KT', '09:30', '10:00'],
        ['KT ', '08:30', '09:40'],
      ]),
    ).toEqual(['KT 08:00-10:00'])
    // From bell to bell they are two times.
    expect(
      sent([
        ['KT', '08:00', '09:00'],
        ['KT', '09:00', '10:00'],
      ]),
    ).toHaveLength(2)
    const both = [
      { person: 'a', initials: 'KT', adult: true, on: entry.on, from: '08:00', to: '09:00' },
      { person: 'b', initials: 'KT', adult: false, on: entry.on, from: '10:00', to: '11:00' },
    ]
    expect(lackOf({ ...entry, crew: both })).toBe('twice')
    const night = at('00:05')
    const late = withReader({ ...entry, crew: [] }, { from: night, to: night }, 'America/New_York')
    expect(late.crew.map(({ on, from, to }) => `${on} ${from}-${to}`)).toEqual([
      ...['2026-12-03 23:50-23:59', '2026-12-04 00:00-00:05'],
    ])
  })
})
