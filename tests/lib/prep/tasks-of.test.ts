import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Prepared, PrepFood, Task } from '#lib/prep/prep-plan.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import {
  adult,
  at,
  FRIDAY,
  food,
  MINUTE,
  plan,
  rosters,
  student,
} from '#tests/support/prep-plans.ts'

const CREW = [
  adult('c1', '12:00', '15:00', -1),
  student('c2', '13:00', '14:50', -1),
  adult('c1', '08:00', '13:00'),
  student('c2', '08:40', '12:30'),
  student('c3', '08:40', '12:30'),
]

const task = ({ tasks }: Prepared, id: string): Task => {
  const found = tasks.find((one) => one.id === id)
  if (!found) throw new Error(`no ${id} among ${tasks.map((one) => one.id).join(', ')}`)
  return found
}

const beans = (said: Partial<PrepFood> = {}): PrepFood =>
  food('beans', { cooked: true, held: 'hot', ahead: true, minutes: 26, ...said })

describe('backwards from when the doors open', () => {
  test('[PP1] a task ends when the next begins, and starts its measured time before', () => {
    const made = tasksOf(plan({ crew: CREW, foods: [food('slaw', { minutes: 20 })] }))
    expect(made.unready).toEqual([])
    expect(task(made, 'load')).toMatchObject({ from: at('11:05'), to: at('11:20') })
    expect(task(made, 'make.slaw')).toMatchObject({ from: at('10:45'), to: at('11:05') })
    expect(task(made, 'load').after).toEqual(['make.slaw'])
    expect(task(made, 'serve')).toMatchObject({ from: at('11:20'), to: at('12:20') })
  })

  test('[PP1] nothing comes before the plan, and all that is placed is over before what follows', () => {
    fc.assert(
      fc.property(rosters, (given) => {
        const { tasks, unready } = tasksOf(given)
        const lacking = new Set(unready.map((one) => one.task))
        for (const one of tasks) {
          if (lacking.has(one.id)) continue
          expect(one.from).toBeGreaterThanOrEqual(given.from)
          for (const id of one.after) {
            const before = tasks.find((other) => other.id === id)
            if (before && !lacking.has(id)) expect(before.to).toBeLessThanOrEqual(one.from)
          }
        }
        expect(new Set(tasks.map(({ id }) => id)).size).toBe(tasks.length)
      }),
      { numRuns: 150, seed: 1 },
    )
  })

  test('[PP2] nobody has two things in hand, and a task that outlasts somebody is passed on', () => {
    const foods = [food('slaw', { minutes: 60 })]
    const crew = [
      adult('c1', '08:00', '13:00'),
      student('c2', '08:40', '10:30'),
      student('c3', '10:20', '12:30'),
    ]
    const { who } = task(tasksOf(plan({ crew, foods, periods: [] })), 'make.slaw')
    expect(who.map((hand) => hand.who)).not.toContain('c2')
    const tied = [student('c2', '08:40', '10:30'), student('c3', '10:30', '12:30')]
    const watched = { ...adult('c1', '08:00', '13:00') }
    const two = tasksOf(plan({ crew: [watched, ...tied], foods, periods: [] }))
    expect(task(two, 'make.slaw').who.length).toBeGreaterThan(0)
    fc.assert(
      fc.property(rosters, (given) => {
        const hands = tasksOf(given)
          .tasks.flatMap((one) => one.who)
          .filter(({ from, to }) => to > from)
        for (const [index, one] of hands.entries())
          for (const other of hands.slice(index + 1))
            if (one.who === other.who)
              expect(one.from >= other.to || other.from >= one.to).toBe(true)
      }),
      { numRuns: 100, seed: 2 },
    )
  })

  test('[PP3] a service without a certified adult to its end isn’t ready', () => {
    const crew = [adult('c1', '08:00', '12:00'), student('c2', '08:40', '12:30')]
    const { unready } = tasksOf(plan({ crew, foods: [] }))
    expect(unready).toMatchObject([
      { task: 'serve', at: at('11:20'), why: 'no-adult' },
      { task: null, at: at('12:00'), to: at('12:20'), why: 'no-adult' },
    ])
  })
})

describe('what cools', () => {
  test('[PP4] both stages count from the end of cooking; unmeasured, somebody is there at the limit itself', () => {
    const crew = [adult('c1', '08:00', '20:00', -1), ...CREW.slice(2)]
    const made = tasksOf(plan({ crew, foods: [beans()] }))
    const cooked = task(made, 'cook.beans').to
    expect(made.unready).toEqual([])
    // The first reading, at 135 °F, is the one that both stages count from.
    expect(task(made, 'cool.beans')).toMatchObject({
      ...{ kind: 'cool', from: cooked, to: cooked, after: ['cook.beans'] },
      who: [{ who: 'c1', from: cooked, to: cooked }],
    })
    expect(task(made, 'read-first.beans').after).toEqual(['cool.beans'])
    expect(task(made, 'read-first.beans').from).toBe(cooked + 120 * MINUTE)
    expect(task(made, 'read-cold.beans').from).toBe(cooked + 360 * MINUTE)
    expect(task(made, 'reheat.beans').after).toEqual(['read-cold.beans'])
    const fast = beans({ coolsIn: { first: 40, total: 150 } })
    const measured = tasksOf(plan({ crew, foods: [fast] }))
    const since = task(measured, 'cook.beans').to
    expect(task(measured, 'read-cold.beans').from).toBeGreaterThanOrEqual(since + 150 * MINUTE)
    expect(task(measured, 'read-cold.beans').from).toBeLessThanOrEqual(since + 360 * MINUTE)
  })

  test('[PP6] cans are chilled the day before; else what is mixed of them is read within 4 hours', () => {
    const tuna = food('tuna', { fromRoom: true })
    const chilled = tasksOf(plan({ crew: CREW, foods: [tuna] }))
    expect(chilled.unready).toEqual([])
    expect(task(chilled, 'chill.tuna').to).toBeLessThanOrEqual(FRIDAY)
    expect(task(chilled, 'make.tuna').after).toEqual(['chill.tuna'])
    const late = plan({ crew: CREW, foods: [tuna], from: at('08:00') })
    const mixed = tasksOf(late)
    expect(mixed.unready).toMatchObject([{ task: 'read-cold.tuna', why: 'too-late' }])
    const early = [adult('c1', '06:00', '13:00'), ...CREW.slice(3)]
    const read = tasksOf({ ...late, from: at('06:00'), crew: early })
    expect(read.unready).toEqual([])
    expect(task(read, 'read-cold.tuna').from).toBe(task(read, 'make.tuna').to + 240 * MINUTE)
    expect(read.tasks.map(({ kind }) => kind)).not.toContain('cool')
  })

  test('[PP8] what is frozen thaws in the cooler from the day before', () => {
    const chicken = food('chicken', { cooked: true, held: 'hot', raw: true, frozen: true })
    const made = tasksOf(plan({ crew: CREW, foods: [chicken] }))
    expect(made.unready).toEqual([])
    expect(task(made, 'thaw.chicken').to).toBeLessThanOrEqual(FRIDAY)
    const late = tasksOf(plan({ crew: CREW, foods: [chicken], from: at('08:00') }))
    expect(late.unready).toMatchObject([{ task: 'thaw.chicken', why: 'too-late' }])
  })
})

describe('raw meat and ready-to-eat food', () => {
  const raw = food('chicken', { cooked: true, held: 'hot', raw: true, minutes: 35 })
  const slaw = food('slaw', { minutes: 20 })

  test('[PP7] raw food comes after ready-to-eat food, and its table is washed, rinsed and sanitized right after', () => {
    const made = tasksOf(plan({ crew: CREW, foods: [slaw, raw] }))
    const [cook, wash] = [task(made, 'cook.chicken'), task(made, 'sanitize.chicken')]
    expect(task(made, 'make.slaw').to).toBeLessThanOrEqual(cook.from)
    expect(wash).toMatchObject({ from: cook.to, to: at('11:05'), after: ['cook.chicken'] })
    const own = tasksOf(plan({ crew: CREW, foods: [slaw, raw], ownTable: true }))
    expect(task(own, 'make.slaw').to).toBe(at('11:05'))
  })

  test('[PP7] on one table no ready-to-eat food is touched from raw food until the table is sanitized', () => {
    fc.assert(
      fc.property(rosters, (given) => {
        const { tasks, unready } = tasksOf({ ...given, ownTable: false })
        const lacking = new Set(unready.map((one) => one.task))
        const cook = tasks.find(({ id }) => id === 'cook.chicken')
        if (!cook || lacking.has(cook.id)) return
        const end = task({ tasks, unready, idle: [] }, 'sanitize.chicken').to
        for (const one of tasks)
          if (['make', 'cook', 'measure'].includes(one.kind) && one.component !== 'chicken')
            if (!lacking.has(one.id))
              expect([one.id, one.to <= cook.from || one.from >= end]).toEqual([one.id, true])
      }),
      { numRuns: 150, seed: 3 },
    )
  })
})

describe('enough for all who are there', () => {
  test('[PP9] every student has something to do in each period, or is named', () => {
    const crew = [
      adult('c1', '08:00', '13:00'),
      ...['c2', 'c3', 'c4', 'c5', 'c6', 'c7'].map((who) => student(who, '08:40', '11:18')),
    ]
    const given = plan({ crew, foods: [food('slaw'), food('sauce'), food('rice')] })
    const { tasks, idle } = tasksOf(given)
    for (const { who, adult: isAdult } of crew)
      for (const period of given.periods) {
        if (isAdult) continue
        const has = tasks.some((one) =>
          one.who.some(
            (hand) => hand.who === who && hand.from < period.to && hand.to > period.from,
          ),
        )
        const named = idle.some((one) => one.who === who && one.from === period.from)
        expect(has !== named).toBe(true)
      }
    expect(tasks.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['measure', 'labels', 'tools']),
    )
    expect(tasksOf(plan({ crew, foods: [] })).idle.length).toBeGreaterThan(0)
  })
})

describe('the ways out', () => {
  /** As in most schools: all are gone by three. */
  const day = (said: Partial<PrepFood> = {}) =>
    plan({ crew: CREW, foods: [beans(said)], from: at('11:00', -1) })

  test('[PP10] a reading when nobody is there has a reader, ice, the morning and a smaller menu', () => {
    const { unready } = tasksOf(day())
    const [cold] = unready.filter((one) => one.task === 'read-cold.beans')
    expect(cold).toMatchObject({ why: 'nobody-there' })
    expect(cold?.waysOut.map(({ way }) => way)).toEqual([
      ...['another-reader', 'ice', 'cook-in-the-morning', 'smaller-menu'],
    ])
  })

  test('[PP10] each way, taken, settles it', () => {
    const given = day()
    const before = tasksOf(given)
    const [cold] = before.unready.filter((one) => one.task === 'read-cold.beans')
    for (const way of cold?.waysOut ?? []) {
      const after = (() => {
        switch (way.way) {
          case 'another-reader': {
            const reader = { who: 'c9', adult: true, from: way.from, to: way.to }
            return tasksOf({ ...given, crew: [...given.crew, reader] })
          }
          case 'ice': {
            const first = Math.min(60, way.minutes)
            return tasksOf(day({ coolsIn: { first, total: way.minutes } }))
          }
          case 'cook-in-the-morning':
            return tasksOf(day({ ahead: false }))
          case 'smaller-menu':
            return tasksOf({ ...given, foods: [] })
          case 'none':
            return before
        }
      })()
      expect([way.way, after.unready]).toEqual([way.way, []])
    }
  })

  test('[PP10] where there is none, it says so', () => {
    const only = beans({ held: 'cold', needed: ['bowl', 'wrap'] })
    const late = plan({ crew: CREW, foods: [only], from: at('10:00') })
    const { unready } = tasksOf(late)
    const none = { why: 'too-late', waysOut: [{ way: 'none' }] }
    expect(unready).toMatchObject([none, none])
  })
})
