import { describe, expect, it } from 'vitest'
import { topUpProblem } from '#lib/needs/top-up.ts'
import { untilOf } from '#lib/rooms/making/facts/food-of-build.ts'
import { at, madeBefore, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  buildIn,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  inPan,
  load,
  at as of,
  ofPortions,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const tuna = (count: number) => ofPortions('tuna', count)
const clock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
}
const on1A = (type: 'start' | 'finish' | 'handOver' | 'remake'): Given => ({ type, ...of('1A') })
const takeBack = (made: boolean): Given => ({ type: 'takeBack', ...of('1A'), made })
const throwOut = (
  what: 'pan' | 'batch' | 'build',
  id: string,
  reason: Extract<Given, { type: 'throwOut' }>['reason'] = 'past-time',
): Given => ({ type: 'throwOut', what, id, reason, initials: 'KT' })
const throwOutNuts: Given = throwOut('pan', 'pan-almonds', 'quality')
const count = (pan: string, amount: number): Given => ({ type: 'correct', pan, amount })
const fallen = (pan = 'pan-chicken'): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id: pan,
  ...read(118),
})

/** Tuna on time alone until 14:10, the other pans read in between. */
const timed = at(given(), 12, clock)
const late = at(at(timed, 95, ...readAll(timed)), 195, ...readAll(timed))
/** Made of it at 13:20, and past its time. */
const standing = until(
  at(late, 200, send(choose('harbor-tuna')), on1A('start'), on1A('finish')),
  250,
)
const out = at(given(), 30, fallen())

describe('ways around a throw-out time', () => {
  it('[B18] made food past its time is neither taken back as never made nor made again unsigned', () => {
    expect(standing.state.toThrowOut['build/1A']).toBeDefined()
    for (const command of [takeBack(false), takeBack(true), on1A('remake')])
      expect(refusalOf(whenAt(standing, 251, command))).toEqual({
        code: 'past-throw-out',
        id: '1A',
      })
    expect(buildIn(at(standing, 251, throwOut('build', '1A')), '1A').state).toBe('waiting')
  })

  it('[B18] what was taken beyond the counts carries the time of the pan it came from', () => {
    const empty = at(late, 200, count('pan-tuna', 0))
    const withdrawal = { took: [], uncounted: { tuna: tuna(1) } }
    expect(untilOf(running(empty), withdrawal, minute(201)).throwOutAt).toBe(minute(250))
  })

  it('[B16] a pan to be thrown out that was counted empty is still signed off, and loaded after it', () => {
    const empty = at(late, 251, count('pan-tuna', 0))
    expect(codeOf(whenAt(empty, 252, changePan('pan-tuna', tuna(10))))).toBe('throw-out-first')
    expect(codeOf(whenAt(empty, 252, load('pan-tuna', tuna(10))))).toBe('throw-out-first')
    const away = at(empty, 253, throwOut('pan', 'pan-tuna'))
    expect(away.state.toThrowOut).toEqual({})
    const fresh = at(away, 254, ...madeBefore('b-fresh', 'tuna', tuna(10)))
    const again = { ...load('pan-tuna', tuna(10)), batch: 'b-fresh' } as Given
    expect(inPan(at(fresh, 254, again), 'pan-tuna')).toBe(tuna(10))
  })

  it('[B16] food is not put back into a pan that was thrown out since', () => {
    const made = at(given(), 5, send(choose('harbor-tuna')), on1A('start'), on1A('finish'))
    const away = at(made, 6, throwOut('pan', 'pan-tuna', 'quality'))
    const back = at(away, 7, takeBack(false))
    expect(inPan(back, 'pan-tuna')).toBe(0)
    expect(accountOf(back, 'tuna').takenAway).toBe(buildIn(back, '1A').takes.tuna)
  })

  it('[B16] dry food of a batch that was thrown out is not loaded', () => {
    const batch: Given = { type: 'startBatch', batch: 'b-nuts', component: 'almonds', loads: 1 }
    const amount = ofPortions('almonds', 20)
    const gone = at(
      given(throwOutNuts),
      10,
      batch,
      { type: 'finishBatch', batch: 'b-nuts', amount },
      throwOut('batch', 'b-nuts', 'quality'),
    )
    const again: Given = {
      type: 'load',
      pan: 'pan-almonds',
      amount,
      batch: 'b-nuts',
      notFirst: true,
    }
    expect(refusalOf(whenAt(gone, 11, again))).toMatchObject({ problem: { code: 'thrown-out' } })
  })
})

describe('ways around what is off sale', () => {
  it('[B12] a pan off sale is not counted empty and loaded: somebody initials it first', () => {
    const empty = at(out, 31, count('pan-chicken', 0))
    const amount = ofPortions('chicken', 10)
    expect(codeOf(whenAt(empty, 32, load('pan-chicken', amount)))).toBe('throw-out-first')
    expect(codeOf(whenAt(empty, 32, changePan('pan-chicken', amount)))).toBe('throw-out-first')
    expect(refusalOf(whenAt(empty, 32, { type: 'close' }))).toMatchObject({
      code: 'throw-out-first',
    })
    const away = at(empty, 33, throwOut('pan', 'pan-chicken', 'out-of-limits'))
    expect(inPan(at(away, 34, load('pan-chicken', amount)), 'pan-chicken')).toBe(amount)
  })

  it.each(['quality', 'left-over', 'other', 'out-of-limits'] as const)(
    '[B16] thrown out off sale, whatever the reason said (%s), stops what is being made of it',
    (reason) => {
      const making: Told = at(given(), 20, send(choose('garden-chicken')), on1A('start'))
      const events = eventsOf(
        whenAt(at(making, 30, fallen()), 31, throwOut('pan', 'pan-chicken', reason)),
      )
      expect(events).toContainEqual(
        expect.objectContaining({ type: 'buildStopped', ticket: 1, reason: 'throw-out' }),
      )
    },
  )

  it('[B13] a pan is not resolved by a reheating that was read before it fell', () => {
    const reheat = (heatedAt: number): Given => ({
      type: 'resolveOffSale',
      what: 'pan',
      id: 'pan-chicken',
      way: 'reheat',
      place: 'range',
      startedAt: heatedAt,
      reading: { ...read(170, { at: heatedAt }).reading, heldSeconds: 20 },
      initials: 'KT',
    })
    const signedOn = at(out, 31, { type: 'signOn' })
    const resolve = (heatedAt: number) =>
      whenAt(signedOn, 40, reheat(heatedAt), { by: 'in-charge' })
    expect(refusalOf(resolve(minute(29)))).toMatchObject({
      code: 'wrong-moment',
      problem: { code: 'clock-back' },
    })
    expect(eventsOf(resolve(minute(39)))).toHaveLength(1)
  })
})

describe('ways around a date or a rule', () => {
  const amount = ofPortions('tuna', 8)
  const finish = (preparedOn: string): Given => ({
    type: 'finishBatch',
    batch: 'b-tuna',
    amount,
    preparedOn,
  })
  const started = at(given(), 1, {
    type: 'startBatch',
    batch: 'b-tuna',
    component: 'tuna',
    loads: 1,
  })

  it('[B1] a date of preparation is not ahead, and said again moves to the earlier only', () => {
    expect(refusalOf(whenAt(started, 2, finish('2026-11-26')))).toMatchObject({
      code: 'wrong-date',
      problem: { code: 'day-ahead' },
    })
    const dated = at(started, 2, finish('2026-11-22'))
    const lastDay = (told: Told) => told.state.batches['b-tuna']?.dateMark?.lastDay
    expect(lastDay(dated)).toBe('2026-11-28')
    expect(codeOf(whenAt(dated, 3, finish('2026-11-25')))).toBe('already-so')
    expect(lastDay(at(dated, 3, finish('2026-11-20')))).toBe('2026-11-26')
  })

  it('[B11] food under another rule of time is not added: neither rule would bind both', () => {
    const food = (rule: '4h' | '6h') =>
      ({
        heldBy: 'time',
        clock: { rule, startedAt: 0, throwOutAt: 240 },
        dateMark: null,
        finishedAt: 0,
        says: {},
        guarded: false,
      }) as const
    expect(topUpProblem(food('4h'), food('6h'), 10)).toBe('other-holding')
    expect(topUpProblem(food('6h'), food('6h'), 10)).toBeNull()
  })
})
