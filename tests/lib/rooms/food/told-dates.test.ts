import { describe, expect, it } from 'vitest'
import { limitsWith } from '#lib/safety/limits.ts'
import { lastDayOf } from '#lib/safety/told-dates.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import { at, madeBefore, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  choose,
  codeOf,
  type Given,
  happening,
  load,
  ofPortions,
  openedService,
  parsed,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

// The service is of Wednesday 2026-11-25, in Chicago.
const TODAY = '2026-11-25'
const MIDNIGHT = Date.parse('2026-11-26T06:00:00Z')
const tuna = (count: number) => ofPortions('tuna', count)
/** Made today, and nobody said more of its days. */
const open = at(openedService(), 0, ...madeBefore('b-tuna', 'tuna', tuna(40)))
const food = { amount: tuna(8), batch: 'b-tuna', ...read(39) }
const plain = (over: object = {}): Given => ({ type: 'load', pan: 'pan-tuna', ...food, ...over })
const fill = (over: object = {}): Given => ({
  type: 'setBackup',
  component: 'tuna',
  backup: 'back-up-tuna',
  ready: true,
  ...food,
  ...over,
})
const foodIn = ({ state }: Told) => state.pans['pan-tuna']?.food
const lastDayIn = (told: Told) => foodIn(told)?.dateMark?.lastDay ?? null
const lasts = (told: Told) =>
  lastsUntil(running(told), running(told).pans['pan-tuna'] ?? EMPTY_STOCK)
const freezing = (frozenOn: string, thawedOn: string) => ({ freezing: { frozenOn, thawedOn } })

describe('the days of food that are told', () => {
  it('[Z54] opened on an earlier day it is used until its 7th day, that day being the first', () => {
    const told = at(open, 1, plain({ preparedOn: '2026-11-24' }))
    expect(lastDayIn(told)).toBe('2026-11-30')
    expect(foodIn(told)).not.toHaveProperty('dayEndsAt')
    expect(lastDayIn(at(open, 1, plain({ preparedOn: TODAY })))).toBe('2026-12-01')
  })

  it('[Z54] the maker’s use-by governs where it is earlier, and never makes it longer', () => {
    const opened = { preparedOn: '2026-11-24' }
    expect(lastDayIn(at(open, 1, plain({ ...opened, useBy: '2026-11-27' })))).toBe('2026-11-27')
    expect(lastDayIn(at(open, 1, plain({ ...opened, useBy: '2027-02-01' })))).toBe('2026-11-30')
  })

  it('[Z54] days in the freezer don’t count, those before do, and a use-by stays', () => {
    const made = { preparedOn: '2026-11-16', ...freezing('2026-11-18', TODAY) }
    expect(lastDayIn(at(open, 1, plain(made)))).toBe('2026-11-29')
    expect(lastDayIn(at(open, 1, plain({ ...made, useBy: '2026-11-26' })))).toBe('2026-11-26')
  })

  it.each<[string, Given]>([
    ['changed', { type: 'changePan', pan: 'pan-tuna', ...food }],
    ['topped up', { type: 'topUp', pan: 'pan-tuna', ...food }],
  ])('[Z54] is told where a pan is %s, too', (_, command) => {
    const dated = at(open, 1, plain({ preparedOn: TODAY }))
    const told = at(dated, 2, { ...command, preparedOn: '2026-11-22' } as Given)
    expect(lastDayIn(told)).toBe('2026-11-28')
  })

  it('[Z54] is told where a batch is finished', () => {
    const batch = (over: object): Told =>
      at(
        openedService(),
        1,
        { type: 'startBatch', component: 'slaw', loads: 1, startedAt: minute(-20 * 60) },
        { type: 'finishBatch', batch: 'b1', amount: 1_000_000, ...over },
      )
    const mark = (over: object) => batch(over).state.batches.b1?.dateMark?.lastDay
    expect(mark({})).toBe('2026-11-30')
    expect(mark({ preparedOn: '2026-11-22' })).toBe('2026-11-28')
    expect(mark({ useBy: '2026-11-26' })).toBe('2026-11-26')
    expect(mark({ preparedOn: '2026-11-16', ...freezing('2026-11-18', TODAY) })).toBe('2026-11-29')
    // It can't be younger than its start.
    expect(mark({ preparedOn: TODAY })).toBe('2026-11-30')
  })

  it('[Z54] nothing told leaves the midnight, and dates are days that there are', () => {
    expect(foodIn(at(open, 1, plain()))).toMatchObject({ dateMark: null, dayEndsAt: MIDNIGHT })
    for (const wrong of ['2026-02-30', '24 Nov', '2026-11-24T10:00', ''])
      expect(() => parsed(plain({ preparedOn: wrong }))).toThrow()
    expect(() => parsed(plain({ freezing: { frozenOn: '2026-11-20' } }))).toThrow()
  })
})

describe('days that can’t be', () => {
  const problem = (over: object) => {
    const refusal = refusalOf(whenAt(open, 1, plain(over)))
    return refusal?.code === 'wrong-date' ? refusal.problem : refusal
  }

  it('[Z55] are refused, each with its reason', () => {
    expect(problem({ preparedOn: '2026-11-26' })).toEqual({
      code: 'day-ahead',
      what: 'preparedOn',
      on: '2026-11-26',
    })
    const made = { preparedOn: '2026-11-20' }
    expect(problem({ ...made, ...freezing('2026-11-26', '2026-11-27') })).toMatchObject({
      code: 'day-ahead',
      what: 'frozenOn',
    })
    expect(problem({ ...made, ...freezing('2026-11-21', '2026-11-26') })).toMatchObject({
      code: 'day-ahead',
      what: 'thawedOn',
    })
    expect(problem({ preparedOn: '2026-11-24', useBy: '2026-11-23' })).toEqual({
      code: 'opened-after-use-by',
      useBy: '2026-11-23',
    })
    expect(lastDayOf(freezing('2026-11-21', '2026-11-24'), TODAY, limitsWith({}))).toEqual({
      problem: { code: 'no-first-day' },
    })
    // Of a batch its start is known: it wasn't in the freezer before.
    expect(problem(freezing('2026-11-21', '2026-11-24'))).toEqual({
      code: 'frozen-before-first-day',
    })
    expect(problem({ ...made, ...freezing('2026-11-19', '2026-11-24') })).toEqual({
      code: 'frozen-before-first-day',
    })
    expect(problem({ ...made, ...freezing('2026-11-23', '2026-11-22') })).toEqual({
      code: 'thawed-before-frozen',
    })
    const old = { preparedOn: '2026-11-10' }
    expect(problem({ ...old, ...freezing('2026-11-17', '2026-11-24') })).toEqual({
      code: 'frozen-too-late',
    })
    expect(problem({ ...old, ...freezing('2026-11-16', '2026-11-25') })).toBeNull()
  })

  it('[Z55] past its last day it isn’t loaded', () => {
    const past = (lastDay: string) => ({
      code: 'cannot-load',
      component: 'tuna',
      problem: { code: 'past-date-mark', lastDay },
    })
    expect(problem({ preparedOn: '2026-11-18' })).toEqual(past('2026-11-24'))
    expect(problem({ preparedOn: '2026-11-19' })).toBeNull()
    const earlier = { preparedOn: '2026-11-20' }
    expect(problem({ ...earlier, useBy: '2026-11-24' })).toEqual(past('2026-11-24'))
    expect(problem({ useBy: TODAY })).toBeNull()
    const thawed = { preparedOn: '2026-11-10', ...freezing('2026-11-14', '2026-11-22') }
    expect(problem(thawed)).toEqual(past('2026-11-24'))
  })

  it('[Z55] of a batch, they are refused as it is finished', () => {
    const started = at(openedService(), 1, { type: 'startBatch', component: 'slaw', loads: 1 })
    const finish = (over: object) =>
      codeOf(
        whenAt(started, 2, {
          type: 'finishBatch',
          batch: 'b1',
          amount: 1_000_000,
          ...over,
        } as Given),
      )
    expect(finish({ preparedOn: '2026-11-26' })).toBe('wrong-date')
    expect(finish({ useBy: '2026-11-24' })).toBe('wrong-date')
    expect(finish({ useBy: '2026-11-25' })).toBeNull()
  })
})

describe('a use-by alone', () => {
  it('[Z56] tells no first day: the food ends at midnight, on the line and out of a back-up pan', () => {
    // An older log has such food of no batch; now the day on which it was opened is asked.
    const opened = { ...load('pan-cheddar', 100_000), preparedOn: undefined, useBy: '2026-12-20' }
    expect(refusalOf(whenAt(openedService(), 1, opened as Given))).toMatchObject({
      code: 'not-said-bought',
      lacks: 'opened-on',
    })
    const lastDay = '2026-12-20'
    const filled = happening(openedService(), [
      {
        type: 'backupSet',
        component: 'tuna',
        ready: true,
        backup: 'back-up-tuna',
        amount: tuna(8),
        batch: null,
        reading: {
          temperature: { tenths: 390, scale: 'F' },
          at: minute(0),
          probe: 'probe 1',
          where: 'middle-stirred',
          initialled: true,
        },
        food: {
          heldBy: 'cold',
          clock: null,
          dateMark: { lastDay, endsAt: Date.parse('2026-12-21T06:00:00Z') },
          finishedAt: minute(0),
          guarded: true,
          dayEndsAt: MIDNIGHT,
        },
      },
    ])
    const moved = at(filled, 5, {
      type: 'load',
      pan: 'pan-tuna',
      from: 'back-up-tuna',
      ...read(39),
    })
    expect(foodIn(moved)).toMatchObject({ dateMark: { lastDay }, dayEndsAt: MIDNIGHT })
    expect(lasts(moved)).toBe(MIDNIGHT)
  })

  it('[Z56] of a batch counts from the day on which it was started', () => {
    const told = at(
      openedService(),
      1,
      { type: 'startBatch', component: 'tuna', loads: 1 },
      { type: 'finishBatch', batch: 'b1', amount: tuna(20), useBy: '2027-01-10' },
    )
    expect(told.state.batches.b1?.dateMark?.lastDay).toBe('2026-12-01')
  })
})

describe('food that somebody dated', () => {
  it('[Z57] goes along from a back-up pan, and in mixed food the earliest governs', () => {
    const filled = at(open, 1, fill({ preparedOn: '2026-11-24' }))
    expect(filled.state.backupPans['back-up-tuna']?.food?.dateMark?.lastDay).toBe('2026-11-30')
    const later = at(filled, 2, plain({ preparedOn: TODAY, amount: tuna(4) }))
    const both = at(later, 3, {
      type: 'topUp',
      pan: 'pan-tuna',
      from: 'back-up-tuna',
      amount: tuna(4),
      ...read(39),
    })
    expect(lastDayIn(both)).toBe('2026-11-30')
    const undated = at(later, 3, { type: 'topUp', pan: 'pan-tuna', ...food, amount: tuna(4) })
    expect(lastDayIn(undated)).toBe('2026-12-01')
    expect(lasts(undated)).toBe(MIDNIGHT)
  })

  it('[Z57] is never sold in a build that would be finished past its last day', () => {
    const evening = (preparedOn: string): Told =>
      at(
        openedService(),
        825,
        ...madeBefore('b-tuna', 'tuna', tuna(8)),
        plain({ preparedOn }),
        load('pan-pita', 12),
      )
    const bare = { slaw: 'no', cheddar: 'no' } as const
    const order = send(choose('harbor-tuna', bare))
    const onLast = evening('2026-11-19')
    expect(codeOf(whenAt(onLast, 826, order))).toBeNull()
    expect(refusalOf(whenAt(onLast, 839.5, order))).toEqual({
      code: 'past-throw-out-by-then',
      component: 'tuna',
      at: MIDNIGHT,
    })
    expect(codeOf(whenAt(evening('2026-11-20'), 839.5, order))).toBeNull()
    const past = until(onLast, 840)
    expect(past.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'date' })
    expect(codeOf(whenAt(past, 841, order))).toBe('sold-out')
  })
})
