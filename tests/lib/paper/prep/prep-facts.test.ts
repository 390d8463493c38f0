import { describe, expect, it } from 'vitest'
import { cardsOf, madeOf } from '#lib/paper/lists/made-of.ts'
import { type PrepRow, prepFacts } from '#lib/paper/prep/prep-facts.ts'
import { listsEn } from '#lib/paper/words/lists-en.ts'
import { prepSheetEn as words } from '#lib/paper/words/prep-sheet-en.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { compared, dividedBy, ratio, times } from '#lib/recipes/rational.ts'
import { US_G } from '#lib/recipes/units.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { prepPlanOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import { findComponent, pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { CARDED } from '#tests/support/carded-station.ts'

const PERIODS = [
  ['p2', 'Period 2', '08:40', '09:30'],
  ['p3', 'Period 3', '09:34', '10:24'],
  ['p4', 'Period 4', '10:28', '11:18'],
] as const

const SCHOOL: StationDocument = {
  ...CARDED,
  day: {
    ...CARDED.day,
    bells: [
      {
        id: 'usual',
        name: 'Usual',
        periods: PERIODS.map(([id, name, from, to]) => ({ id, name, from, to })),
      },
    ],
  },
}

/** Chicago, Thursday, December 3 at 11:20 and at 12:20. */
const OPENS = Date.parse('2026-12-03T17:20:00Z')
const CLOSES = OPENS + 3_600_000

const there = (id: string, adult: boolean, on = '2026-12-03', from = '08:40', to = '12:20') => ({
  ...{ id, adult, on, from, to },
})

const PLAN = {
  ...{ on: '2026-12-03', opensAt: OPENS, closesAt: CLOSES, bells: 'usual', items: null },
  crew: [there('c1', true, '2026-12-03', '08:00'), there('c2', false), there('c3', false)],
}

const choices = (station: StationDocument, ...ids: readonly string[]): readonly PrepChoice[] =>
  ids.map((component) => {
    const found = findComponent(station, component)
    return {
      component,
      loads: 2,
      portions: 2 * (found ? loadSize(station, found) : 1),
      minutes: 20,
    }
  })

const ALL = [
  'rice',
  'chicken',
  'beans',
  'peppers',
  'tuna',
  'slaw',
  'cheddar',
  'almonds',
  'yogurt-sauce',
  'pita',
]

const sheet = (
  ids: readonly string[] = ALL,
  station = SCHOOL,
  change: Partial<PrepChoice> = {},
) => {
  const foods = choices(station, ...ids).map((one) => ({ ...one, ...change }))
  const from = Date.parse('2026-12-02T18:00:00Z')
  const prepared = tasksOf(prepPlanOf(station, PLAN, { foods, ownTable: false, from }))
  return {
    prepared,
    ...prepFacts({ cards: cardsOf(station), plan: PLAN, prep: { foods }, prepared }),
  }
}

const rowsOf = (facts: ReturnType<typeof sheet>): readonly PrepRow[] =>
  facts.sections.flatMap(({ rows }) => rows)

const rowOf = (facts: ReturnType<typeof sheet>, id: string): PrepRow => {
  const found = rowsOf(facts).find(({ task }) => task.id === id)
  if (!found)
    throw new Error(`${id} isn’t on the sheet: ${rowsOf(facts).map(({ task }) => task.id)}`)
  return found
}

describe('the prep sheet', () => {
  it('[PA13] has every task but serving once, in its class period, in the order of time', () => {
    const facts = sheet()
    const on = rowsOf(facts).map(({ task }) => task.id)
    expect([...on].sort()).toEqual(
      facts.prepared.tasks
        .filter(({ kind }) => kind !== 'serve')
        .map(({ id }) => id)
        .sort(),
    )
    const starts = rowsOf(facts).map(({ task }) => task.from)
    expect(starts).toEqual([...starts].sort((a, b) => a - b))
    for (const { period, rows } of facts.sections)
      for (const { task } of rows)
        if (period) {
          expect(task.from).toBeGreaterThanOrEqual(period.from)
          expect(task.from).toBeLessThan(period.to)
        }
    const said = facts.sections.map((section) => words.section(section, SCHOOL.timeZone))
    expect(said).toContain('Thu, Dec 3: Period 3, 9:34 AM to 10:24 AM')
    const outside = words.section({ on: '2026-12-02', period: null }, SCHOOL.timeZone)
    expect(outside).toBe('Wed, Dec 2: outside class periods')
  })

  it('[PA14] portions × portion = total, by the same function as the set-up sheet', () => {
    for (const choice of choices(SCHOOL, ...ALL)) {
      const made = madeOf(cardsOf(SCHOOL), choice)
      if (!made) throw new Error(choice.component)
      const { portions, portion, total } = made
      const load = portionTotal(portion, portions)
      expect(load.total).toEqual(total)
      expect(words.total(portions, portion)).toBe(setUpSheetEn.load({ load }).join(' '))
    }
    // 1 1/2 oz is 3/32 lb, and 40 of them 3 3/4 lb: NIST Handbook 44, Appendix C.
    const each: Amount = { kind: 'weight', size: times(US_G.oz, ratio(3, 2)), written: 'us' }
    const forty = { ...each, size: times(each.size, ratio(40)) }
    expect(words.total(40, each)).toBe('40 × 1 1/2 oz = 3 lb 12 oz')
    expect(compared(dividedBy(forty.size, US_G.lb), ratio(15, 4))).toBe(0)
  })

  it('[PA14] the card’s lines are scaled to the loads; what isn’t understood stays as it is typed', () => {
    const said = (id: string) => rowOf(sheet(), id).made?.lines.map(listsEn.line)
    expect(said('cook.chicken')).toEqual([
      'Chicken breast 10 lb',
      'Herb rub 1/2 cup',
      'Canola oil 1/3 cup 2 tsp',
    ])
    expect(said('cook.beans')).toEqual(['Black beans, dry 2 #10 cans', 'Cumin, ground to taste'])
    const odd: StationDocument = {
      ...SCHOOL,
      components: SCHOOL.components.map((one) =>
        one.id === 'beans' ? { ...one, lines: [{ of: 'black-beans', typed: 'some cans' }] } : one,
      ),
    }
    const lines = rowOf(sheet(['beans'], odd), 'cook.beans').made?.lines.map(listsEn.line)
    expect(lines?.[0]).toContain('“some cans” isn’t understood')
    const none = rowOf(sheet(['yogurt-sauce']), 'make.yogurt-sauce').made?.why
    expect(none && listsEn.notReckoned(none)).toContain('No card says how much')
  })

  it('[PA14] what doesn’t fit at once is in even batches', () => {
    const said = (facts: ReturnType<typeof sheet>) => {
      const { made } = rowOf(facts, 'cook.chicken')
      return made && words.split(made.split, made.portions)
    }
    // At most three loads of 12 at once: 60 portions are two batches of 30, 1/2 cup each.
    expect(said(sheet(['chicken'], SCHOOL, { loads: 5, portions: 60 }))).toBe(
      '2 batches of 30: 3 qt 3 cups each.',
    )
    expect(said(sheet(['chicken']))).toBe('')
  })

  it('[PA15] raw food comes after all ready-to-eat food on one table, and its board is said', () => {
    const facts = sheet()
    const raw = rowsOf(facts).filter(({ isRaw }) => isRaw)
    expect(raw.map(({ task }) => task.id)).toEqual(['cook.chicken'])
    const ready = rowsOf(facts).filter(
      ({ isRaw, task }) => !isRaw && (task.kind === 'make' || task.kind === 'cook'),
    )
    const from = raw[0]?.task.from ?? 0
    // On one table nothing that is ready to eat is begun while raw food lies there, nor before it is washed.
    const wash = rowsOf(facts).find(({ task }) => task.kind === 'sanitize')
    for (const { task, name } of ready.filter(({ made }) => made?.component.held !== 'dry'))
      expect(task.to <= from || task.from >= (wash?.task.to ?? 0), name).toBe(true)
    expect(words.raw).toContain('own board')
  })

  it('[PP38] what is weighed out says that it goes back into the cooler, and nothing else does', () => {
    const rows = rowsOf(sheet())
    const weighed = rows.filter(({ task }) => task.kind === 'measure')
    expect(weighed.length).toBeGreaterThan(0)
    for (const { task, back } of rows) {
      const held = findComponent(SCHOOL, task.component ?? '')?.held
      const goes = task.kind === 'measure' && held !== 'dry'
      expect([task.id, back !== null]).toEqual([task.id, goes])
      if (back) expect(words.goesBack(back, 'F')).toContain('into the cooler')
    }
  })

  it('[PA16] each reading has its limit; cooling has its two stages; dry food has none', () => {
    const facts = sheet()
    const limit = (id: string) => {
      const { read } = rowOf(facts, id)
      return read && words.limit(read, 'F')
    }
    expect(limit('make.slaw')).toBe('41 °F or below')
    expect(limit('cook.chicken')).toBe('Heat to 165 °F')
    expect(limit('make.almonds')).toBeNull()
    const ahead = sheet(['beans'], SCHOOL, { ahead: true, coolsIn: { first: 60, total: 150 } })
    const { cooling } = rowOf(ahead, 'cook.beans')
    const { read: start } = rowOf(ahead, 'cool.beans')
    expect(start && words.limit(start, 'F')).toBe('135 °F or above')
    // 3-501.14(A): 135 to 70 °F within 2 hours, 41 °F within 6 in all.
    expect(cooling && words.cooling(cooling, 'F')).toBe(
      'Cool it in two stages: 135 °F to 70 °F within 2 h, to 41 °F within 6 h in all.',
    )
    expect(rowOf(facts, 'cook.beans').cooling).toBeNull()
  })

  it('[PA17] discard by is a day and an hour: cold by its days, hot when the doors close', () => {
    const facts = sheet()
    const said = (id: string) => {
      const { discard } = rowOf(facts, id)
      return discard && words.discard(discard, SCHOOL.timeZone)
    }
    // 3-501.17: the day it is made is day 1 of 7.
    expect(said('make.slaw')).toBe('Discard by Wed, Dec 9, 11:59 PM.')
    expect(said('cook.chicken')).toBe('Discard by Thu, Dec 3, 12:20 PM.')
    expect(said('make.almonds')).toBeNull()
  })

  it('[PA45] of hot food that is cooked ahead the batch has its last day, and what is heated again the hour its service ends', () => {
    const ahead = sheet(['beans'], SCHOOL, { ahead: true, coolsIn: { first: 60, total: 150 } })
    const said = (id: string) => {
      const { discard } = rowOf(ahead, id)
      return discard && words.discard(discard, SCHOOL.timeZone)
    }
    // Begun on Wednesday or Thursday morning, as the crew can: 3-501.17 counts from that day.
    const { from } = rowOf(ahead, 'cook.beans').task
    const isWednesday = from < Date.parse('2026-12-03T06:00:00Z')
    expect(said('cook.beans')).toBe(
      `Discard by ${isWednesday ? 'Tue, Dec 8' : 'Wed, Dec 9'}, 11:59 PM.`,
    )
    expect(said('reheat.beans')).toBe('Discard by Thu, Dec 3, 12:20 PM.')
  })

  it('[PA17] what labels name is said, and what nobody knows; none named is no promise', () => {
    const named = (id: string) => {
      const row = rowOf(sheet(), id)
      return row.named && words.named(row.named).join(' ')
    }
    expect(named('make.tuna')).toMatch(/^Contains .*fish/)
    expect(words.named({ contains: [], mayContain: [], unknown: [] })).toEqual([
      'No allergen named on labels read. No promise: shared line, ask.',
    ])
    expect(words.named({ contains: [], mayContain: [], unknown: ['milk'] })).toEqual([
      'Not known: milk.',
    ])
  })

  it('[PA17] a label that was read too long before the day of the plan isn’t known', () => {
    const old: StationDocument = {
      ...SCHOOL,
      ingredients: SCHOOL.ingredients.map((one) => ({ ...one, readOn: '2024-01-01' })),
    }
    const { named } = rowOf(sheet(['rice'], old), 'cook.rice')
    expect(named?.unknown).toContain('milk')
    expect(rowOf(sheet(['rice']), 'cook.rice').named?.unknown).not.toContain('milk')
  })

  it('[PA18] the pan that it goes into is numbered as on the set-up sheet', () => {
    const facts = sheet()
    const order = pansOf(SCHOOL).map(({ component }) => component)
    for (const { task, pans } of rowsOf(facts))
      if (task.component !== null && order.includes(task.component))
        expect(pans).toEqual([order.indexOf(task.component) + 1])
    expect(rowOf(facts, 'load').pans).toHaveLength(order.length)
    expect(facts.wells.flat().map(({ number }) => number)).toEqual(order.map((_, at) => at + 1))
  })
})
