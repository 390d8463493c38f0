import { describe, expect, it } from 'vitest'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import {
  type DateEntry,
  daysOffered,
  judgeDates,
  noDates,
  startedOn,
} from '#lib/rooms/food/views/date-entry.ts'
import { asksDates, firstDayIs } from '#lib/rooms/pans/views/dates-asked.ts'
import { putSources } from '#lib/rooms/pans/views/put-sources.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { at, madeBefore, minute, read } from '#tests/support/food.ts'
import {
  demoStation,
  type Given,
  OPENED_AT,
  ofPortions,
  openedService,
  running,
  type Told,
} from '#tests/support/service.ts'

const judge = (over: Partial<DateEntry>, started: string | null = null, station = demoStation) =>
  judgeDates(station, { ...noDates(started), ...over }, started, OPENED_AT)
const frozen = { wasFrozen: true, frozenOn: '2026-11-18', thawedOn: '2026-11-25' } as const

describe('the days of food as they are typed', () => {
  it('[Z58] the last day is told before they are sent', () => {
    expect(judge({ preparedOn: '2026-11-24' })).toEqual({
      told: { preparedOn: '2026-11-24' },
      lacks: null,
      problem: null,
      lastDay: '2026-11-30',
      isOver: false,
      isReady: true,
    })
    expect(judge({ preparedOn: '2026-11-16', ...frozen, useBy: '2026-12-24' })).toMatchObject({
      told: {
        preparedOn: '2026-11-16',
        useBy: '2026-12-24',
        freezing: { frozenOn: '2026-11-18', thawedOn: '2026-11-25' },
      },
      lastDay: '2026-11-29',
      isReady: true,
    })
    const four = { ...MODEL_CODE.dateMark, days: 4, document: 'Local code' }
    const local = {
      ...demoStation,
      safety: { ...demoStation.safety, limits: { dateMark: four } },
    }
    expect(judge({ preparedOn: '2026-11-24' }, null, local).lastDay).toBe('2026-11-27')
  })

  it('[Z58] what is told by half isn’t sent', () => {
    expect(judge({})).toMatchObject({ told: {}, lacks: 'preparedOn', isReady: false })
    expect(judge({ useBy: '2026-12-01' })).toMatchObject({ lacks: 'preparedOn', lastDay: null })
    const half = { preparedOn: '2026-11-16', ...frozen }
    expect(judge({ ...half, frozenOn: '' })).toMatchObject({ lacks: 'frozenOn', isReady: false })
    expect(judge({ ...half, thawedOn: '' })).toMatchObject({ lacks: 'thawedOn', isReady: false })
    // Its days would be over by now, had it not been frozen: that isn't said before both are told.
    expect(judge({ ...half, thawedOn: '' }).lastDay).toBeNull()
    expect(judge({ ...half, wasFrozen: false })).toMatchObject({ isOver: true, isReady: false })
  })

  it('[Z58] what can’t be is told, and isn’t sent', () => {
    expect(judge({ preparedOn: '2026-11-26' })).toMatchObject({
      problem: { code: 'day-ahead' },
      isReady: false,
    })
    expect(judge({ preparedOn: '2026-11-20', ...frozen })).toMatchObject({
      problem: { code: 'frozen-before-first-day' },
      lastDay: null,
      isReady: false,
    })
    expect(judge({ preparedOn: '2026-11-18' })).toMatchObject({
      lastDay: '2026-11-24',
      isOver: true,
      isReady: false,
    })
  })

  it('[Z58] a batch offers the day on which it was started, and isn’t younger', () => {
    expect(judge({}, '2026-11-24')).toMatchObject({ lastDay: '2026-11-30', isReady: true })
    expect(judge({ preparedOn: '2026-11-25' }, '2026-11-24').told).toEqual({
      preparedOn: '2026-11-24',
    })
    expect(judge({ preparedOn: '2026-11-22' }, '2026-11-24').lastDay).toBe('2026-11-28')
  })

  it('[Z58] today and yesterday are those of the station', () => {
    expect(daysOffered(demoStation, OPENED_AT)).toEqual({
      today: '2026-11-25',
      yesterday: '2026-11-24',
    })
    const late = Date.parse('2027-01-01T05:30:00Z')
    expect(daysOffered(demoStation, late)).toEqual({
      today: '2026-12-31',
      yesterday: '2026-12-30',
    })
  })

  it('[Z58] one bought thing is opened, what several go into is made', () => {
    expect(firstDayIs(demoStation, 'cheddar')).toBe('opened')
    for (const made of ['tuna', 'slaw', 'yogurt-sauce'])
      expect(firstDayIs(demoStation, made)).toBe('made')
  })

  it('[Z58] they are asked of cold food as it came, and of a batch without a mark', () => {
    const batch = (startedAt: number) =>
      running(
        at(
          openedService(),
          1,
          { type: 'startBatch', component: 'slaw', loads: 1, startedAt },
          { type: 'finishBatch', batch: 'b1', amount: 1_000_000 },
        ),
      )
    const into = { component: 'slaw', id: 'pan-slaw' }
    const today = batch(minute(-30))
    const asked = (component: string) =>
      putSources(today, { component, id: `pan-${component}` }, today.at).map((one) => [
        one.kind,
        asksDates(one, one.heldBy),
      ])
    expect(asked('slaw')).toEqual([['batch', true]])
    expect(asked('cheddar')).toEqual([['plain', true]])
    expect(startedOn(today, 'b1')).toBe('2026-11-25')
    const marked = batch(minute(-20 * 60))
    const [old] = putSources(marked, into, marked.at)
    expect(old && asksDates(old, old.heldBy)).toBe(false)
    expect(asksDates({ kind: 'plain', heldBy: 'dry' }, 'dry')).toBe(false)
    expect(asksDates(null, 'cold')).toBe(false)
    expect(startedOn(marked, null)).toBeNull()
  })
})

describe('until when food is used', () => {
  const plain = (over: object = {}): Given => ({
    type: 'load',
    pan: 'pan-tuna',
    amount: ofPortions('tuna', 8),
    batch: 'b-tuna',
    ...read(39),
    ...over,
  })
  const lastUse = (told: Told) => {
    const state = running(told)
    return foodTimes(state, 'pan', 'pan-tuna', state.at)?.useBy
  }
  const midnight = Date.parse('2026-11-26T06:00:00Z')

  it('[Z59] a pan tells its mark, or the day that it ends with where nobody said one', () => {
    const open = at(openedService(), 1, ...madeBefore('b-tuna', 'tuna', ofPortions('tuna', 16)))
    expect(lastUse(open)).toBeNull()
    expect(lastUse(at(open, 1, plain()))).toEqual({ endsAt: midnight, isDated: false })
    const dated = at(open, 1, plain({ preparedOn: '2026-11-20' }))
    expect(lastUse(dated)).toEqual({ endsAt: midnight + 24 * 3_600_000, isDated: true })
    const both = at(dated, 2, { ...plain(), type: 'topUp' } as Given)
    expect(lastUse(both)).toEqual({ endsAt: midnight, isDated: false })
  })

  it('[Z59] a back-up pan and a batch tell it where they are chosen', () => {
    const told = at(
      openedService(),
      1,
      ...madeBefore('b-old', 'slaw', ofPortions('slaw', 8)),
      {
        type: 'setBackup',
        component: 'slaw',
        backup: 'back-up-slaw',
        ready: true,
        amount: ofPortions('slaw', 8),
        batch: 'b-old',
        preparedOn: '2026-11-20',
        ...read(39),
      },
      {
        type: 'startBatch',
        batch: 'b1',
        component: 'slaw',
        loads: 1,
        startedAt: minute(-20 * 60),
      },
      { type: 'finishBatch', batch: 'b1', amount: 1_000_000 },
    )
    const sources = putSources(running(told), { component: 'slaw', id: 'pan-slaw' }, minute(1))
    const day = 24 * 3_600_000
    expect(sources).toMatchObject([
      { kind: 'batch', useBy: { endsAt: midnight + 5 * day, isDated: true } },
      { kind: 'backup', useBy: { endsAt: midnight + day, isDated: true } },
    ])
  })
})
