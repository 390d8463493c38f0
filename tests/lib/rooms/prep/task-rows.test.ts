import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { civilDate } from '#lib/measure/civil.ts'
import type { Period, Task } from '#lib/prep/prep-plan.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { taskRows } from '#lib/rooms/prep/views/task-rows.ts'
import { pansOf } from '#lib/station/find.ts'
import { at, MINUTE, PERIODS, rosters } from '#tests/support/prep-plans.ts'
import { demoStation } from '#tests/support/service.ts'

const station = { ...demoStation, timeZone: 'America/New_York' }

const task = (id: string, from: string, more: Partial<Task> = {}): Task => ({
  ...{ id, kind: 'make', component: 'slaw', amount: null, who: [], after: [] },
  ...{ from: at(from), to: at(from) + 10 * MINUTE },
  ...more,
})

describe('tasks below their pans', () => {
  test('[PP18] each stands once, below its pan or beside them all, in the row in which it starts', () => {
    fc.assert(
      fc.property(rosters, (plan) => {
        const { tasks } = tasksOf(plan)
        const rows = taskRows(station, tasks, plan.periods)
        const drawn = rows.flatMap(({ byPan, beside }) => [
          ...Object.entries(byPan).flatMap(([pan, all]) => all.map((one) => ({ pan, one }))),
          ...beside.map((one) => ({ pan: null, one })),
        ])
        const expected = tasks.filter(({ kind }) => kind !== 'serve').map(({ id }) => id)
        expect(drawn.map(({ one }) => one.id).sort()).toEqual([...expected].sort())
        for (const { pan, one } of drawn)
          expect(pansOf(station).find(({ id }) => id === pan)?.component ?? null).toBe(
            station.components.some(({ id }) => id === one.component) ? one.component : null,
          )
        for (const { on, period, from, byPan, beside } of rows)
          for (const { from: starts, to: ends } of [...Object.values(byPan).flat(), ...beside]) {
            expect(civilDate(starts, station.timeZone)).toBe(on)
            const within = plan.periods.find((one) => one.from === from && one.name === period)
            if (within) expect(starts).toBeLessThanOrEqual(within.to)
            else expect(starts - from).toBeLessThan(60 * MINUTE)
            if (starts < from) expect(ends).toBeGreaterThan(from)
          }
      }),
      { numRuns: 40, seed: 4 },
    )
  })

  test('[PP18] rows are in the order of time, and the first of a day says so', () => {
    const rows = taskRows(
      station,
      [
        task('later', '10:40'),
        task('sooner', '08:50'),
        task('before', '08:50', { from: at('09:00', -1) }),
      ],
      PERIODS,
    )
    expect(rows.map(({ on, isFirst, period }) => [on, isFirst, period])).toEqual([
      ['2026-12-03', true, null],
      ['2026-12-04', true, 'Period 2'],
      ['2026-12-04', false, 'Period 4'],
    ])
  })

  test('[PP30] a reading at the bell is of the period before it, and work of the one after', () => {
    const reading = task('read', '10:24', { kind: 'read-cold', to: at('10:24') })
    const rows = taskRows(station, [reading, task('work', '10:24')], PERIODS)
    expect(rows.map(({ period, from }) => [period, from])).toEqual([
      ['Period 3', at('09:34')],
      ['Period 4', at('10:28')],
    ])
  })

  test('[PP30] work that begins between two bells and runs into a period is of that one', () => {
    const early = task('early', '09:32', { to: at('09:40') })
    const short = task('short', '09:31', { to: at('09:33') })
    expect(
      taskRows(station, [early, short, task('later', '09:50')], PERIODS).map(
        ({ period }) => period,
      ),
    ).toEqual([null, 'Period 3'])
  })

  test('[PP30] an hour that a period cuts in two is a row before it and one after', () => {
    const short: Period = { name: 'Bell', from: at('12:10'), to: at('12:30') }
    const tasks = [
      task('one', '12:00', { to: at('12:05') }),
      task('two', '12:15'),
      task('three', '12:40'),
    ]
    expect(taskRows(station, tasks, [short]).map(({ period }) => period)).toEqual([
      null,
      'Bell',
      null,
    ])
  })
})
