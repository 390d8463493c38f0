import { describe, expect, it } from 'vitest'
import { stampOf } from '#lib/safety/date-marks.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import {
  type BatchRecord,
  batchTimesProblem,
  firstOut,
  type LoadInto,
  loadProblem,
} from '#lib/safety/load.ts'
import { at, heat, read } from '#tests/support/readings.ts'

const chicken: BatchRecord = {
  startedAt: at('10:00'),
  finishedAt: at('10:40'),
  cooking: {
    kind: 'poultry-or-stuffed',
    cookedIn: 'usual',
    readings: [heat(168, 0, { time: '10:38' })],
  },
  cooling: null,
  reheat: null,
  readings: [],
  clock: null,
  dateMark: null,
  offSale: false,
  thrownOutAt: null,
}
const hot: LoadInto = {
  heldBy: 'hot',
  roast: false,
  readings: [read(158, '10:50')],
  now: at('10:52'),
}
const why = (batch: Partial<BatchRecord>, into: Partial<LoadInto> = {}) =>
  loadProblem({ ...chicken, ...batch }, { ...hot, ...into }, limits)?.code ?? null
const clock = { rule: '4h', startedAt: at('10:40'), throwOutAt: at('14:40') } as const

describe('loading a batch', () => {
  it('[F8] it isn’t loaded without the reading that shows what it was cooked to', () => {
    expect(why({})).toBeNull()
    const cooking = { ...chicken.cooking, readings: [] }
    expect(loadProblem({ ...chicken, cooking }, hot, limits)).toEqual({
      code: 'not-cooked',
      why: 'no-reading',
    })
    const low = { ...chicken.cooking, readings: [heat(164.9, 600, { time: '10:38' })] }
    expect(loadProblem({ ...chicken, cooking: low }, hot, limits)).toEqual({
      code: 'not-cooked',
      why: 'too-low',
    })
    const raw = { kind: 'not-cooked', cookedIn: 'usual', readings: [] } as const
    expect(why({ cooking: raw }, { heldBy: 'dry', readings: [] })).toBeNull()
  })

  it('[F8] what may be cooked less for one order isn’t for a pan', () => {
    const cooking = { kind: 'eggs-to-order', cookedIn: 'usual', readings: [heat(145, 15)] } as const
    expect(why({ cooking })).toBe('to-order-only')
  })

  it('[F41] hot food that nobody read for longer than a pan may go unread isn’t loaded', () => {
    const late = (time: string) => ({ now: at(time), readings: [read(158, time)] })
    expect(why({}, late('12:38'))).toBeNull()
    const minuteLater = loadProblem(chicken, { ...hot, ...late('12:39') }, limits)
    expect(minuteLater).toEqual({ code: 'not-watched', since: at('10:38') })
    const reheat = { ok: true, by: { tenths: { F: 1650, C: 740 }, seconds: 15 } } as const
    const cooling = { state: 'cooled', startedAt: at('10:45'), at: at('11:00') } as const
    const again = { cooling, reheat: { ...reheat, at: at('12:30') } }
    expect(why(again, late('14:00'))).toBeNull()
    expect(why(again, late('14:31'))).toBe('not-watched')
  })

  it('[F41] cooked food goes into a cold pan only by way of cooling', () => {
    const cold = { heldBy: 'cold', readings: [read(39, '10:50')] } as const
    expect(why({}, cold)).toBe('not-cooled')
    const raw = { kind: 'not-cooked', cookedIn: 'usual', readings: [] } as const
    expect(why({ cooking: raw }, cold)).toBeNull()
  })

  it('[F30] times that can’t be are told: finished before it started, or ahead of now', () => {
    expect(batchTimesProblem(at('10:00'), at('09:59'), at('11:00'))).toEqual({
      code: 'finished-before-started',
      byMs: 60_000,
    })
    expect(batchTimesProblem(at('10:00'), at('10:00'), at('10:00'))).toBeNull()
    expect(batchTimesProblem(at('10:00'), null, at('09:00'))?.code).toBe('in-the-future')
    expect(batchTimesProblem(at('10:00'), at('11:01'), at('11:00'))?.code).toBe('in-the-future')
    expect(why({ finishedAt: at('09:59') })).toBe('finished-before-started')
    expect(why({ finishedAt: null })).toBe('not-finished')
  })

  it('[F20] a load past its throw-out time is refused, and time alone doesn’t go back', () => {
    const onTime = { heldBy: 'time', readings: [] } as const
    expect(why({ clock }, { ...onTime, now: at('14:40') - 1 })).toBeNull()
    expect(why({ clock }, { ...onTime, now: at('14:40') })).toBe('past-throw-out')
    expect(why({ clock })).toBe('not-back-to-hot-or-cold')
    expect(why({ clock }, { heldBy: 'cold', readings: [read(38, '10:50')] })).toBe(
      'not-back-to-hot-or-cold',
    )
    expect(why({}, onTime)).toBe('needs-clock')
  })

  it('[F27] past its date mark it isn’t loaded', () => {
    const dateMark = stampOf('2026-09-30', 'UTC')
    expect(why({ dateMark })).toBe('past-date-mark')
    expect(why({ dateMark: stampOf('2026-10-01', 'UTC') })).toBeNull()
  })

  it('[F33] a hot or cold pan needs a reading in its limits, taken shortly before', () => {
    expect(why({}, { readings: [] })).toBe('no-load-reading')
    expect(why({}, { readings: [read(158, '10:39')] })).toBe('no-load-reading')
    expect(why({}, { now: at('11:30') })).toBe('no-load-reading')
    expect(why({}, { readings: [read(158, '10:55')] })).toBe('no-load-reading')
    expect(why({}, { readings: [read(158, '10:50', { probe: null })] })).toBe('no-load-reading')
    expect(why({}, { readings: [read(134.9, '10:50')] })).toBe('load-out-of-limits')
    expect(why({}, { readings: [read(158, '10:50'), read(130, '10:51')] })).toBe(
      'load-out-of-limits',
    )
    const raw = { cooking: { kind: 'not-cooked', cookedIn: 'usual', readings: [] } } as const
    expect(why(raw, { heldBy: 'cold', readings: [read(41.1, '10:50')] })).toBe('load-out-of-limits')
    expect(why(raw, { heldBy: 'cold', readings: [read(41, '10:50')] })).toBeNull()
  })

  it('[F26] what was cooled goes hot only after it was reheated, and nowhere before it is cooled', () => {
    const cooled = { state: 'cooled', startedAt: at('02:00'), at: at('07:00') } as const
    const cold = { heldBy: 'cold', readings: [read(38, '10:50')] } as const
    expect(why({ cooling: cooled })).toBe('not-reheated')
    expect(why({ cooling: cooled, reheat: { ok: false, why: 'too-low' } })).toBe('not-reheated')
    const by = { tenths: { F: 1650, C: 740 }, seconds: 15 }
    expect(why({ cooling: cooled, reheat: { ok: true, by, at: at('10:45') } })).toBeNull()
    expect(why({ cooling: cooled }, cold)).toBeNull()
    expect(why({ cooling: { state: 'missed', stage: 2, startedAt: 0 } }, cold)).toBe('not-cooled')
  })

  it('[F14] what is off sale or thrown out isn’t loaded', () => {
    expect(why({ offSale: true })).toBe('off-sale')
    expect(why({ thrownOutAt: at('10:45') })).toBe('thrown-out')
  })

  it('[F31] what must go first goes first, then first in, first out', () => {
    const one = { batch: 'new', throwOutAt: null, dateMark: null, finishedAt: at('11:00') }
    const stock = [
      one,
      { ...one, batch: 'old', finishedAt: at('09:00') },
      { ...one, batch: 'dated later', dateMark: stampOf('2026-10-03', 'UTC') },
      { ...one, batch: 'dated', dateMark: stampOf('2026-10-02', 'UTC') },
      { ...one, batch: 'on a clock', throwOutAt: at('15:00') },
      { ...one, batch: 'on an older clock', throwOutAt: at('14:00') },
    ]
    expect(firstOut(stock).map(({ batch }) => batch)).toEqual([
      'on an older clock',
      'on a clock',
      'dated',
      'dated later',
      'old',
      'new',
    ])
  })
})
