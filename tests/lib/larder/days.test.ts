import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { frozenFrom, thawedMark } from '#lib/larder/days.ts'
import { decideLarder } from '#lib/larder/decide.ts'
import { larderFallsDue } from '#lib/larder/due.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { lotBarred, lotsToTake, lotTakeProblem } from '#lib/larder/take.ts'
import { dateMark, type Freezing, stampOf } from '#lib/safety/date-marks.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { coldRice, coolingRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'

const day = (date: string, time = '12:00') => Date.parse(`${date}T${time}:00Z`)
const afternoon = at('14:30')

const withRice = (food = coldRice()): LarderState => larderAfter([[afternoon, setAside('a', food)]])

const take = (state: LarderState, id: string, amount: number, now: number, saysWhy = false) =>
  lotTakeProblem(state, id, { amount, now, saysWhy })

const types = (state: LarderState, now: number) =>
  larderFallsDue(state, now).recorded.map(({ type, due }) => [type, due])

describe('the freezer', () => {
  test.each([
    ['on day 1, which counts', '2026-10-01', undefined, 6],
    ['on day 2: one day is used', '2026-10-02', undefined, 6],
    ['on day 3: two are', '2026-10-03', undefined, 5],
    ['on its last day: six are', '2026-10-07', undefined, 1],
    ['told as older than its mark says', '2026-10-03', '2026-09-29', 3],
  ])('[LA7] %s', (_, on, preparedOn, left) => {
    expect(frozenFrom(coldRice(), on, { preparedOn })).toEqual({ on, daysLeft: left, useBy: null })
  })

  it('[LA7] nothing told lengthens its date, and what has none left isn’t frozen', () => {
    const short = coldRice({ dateMark: stampOf('2026-10-03', 'UTC') })
    expect(frozenFrom(short, '2026-10-02', { preparedOn: '2026-10-01' })).toMatchObject({
      daysLeft: 2,
    })
    expect(frozenFrom(coldRice(), '2026-10-08')).toBe('no-days-left')
    expect(frozenFrom(coldRice(), '2026-10-03', { useBy: '2026-10-02' })).toBe('no-days-left')
    expect(frozenFrom(coldRice(), '2026-10-03', { preparedOn: '2026-10-04' })).toBe('wrong-day')
    // A first day that nobody knows may be the day of freezing: that day is used.
    expect(frozenFrom(coldRice({ startedAt: null }), '2026-10-03')).toMatchObject({ daysLeft: 4 })
  })

  it('[LA7] thawed, the day of thawing counts, and the maker’s use-by binds', () => {
    const frozen = { on: '2026-10-03', daysLeft: 5, useBy: null }
    const { under } = coldRice()
    expect(thawedMark({ under, frozen }, '2026-11-10')?.lastDay).toBe('2026-11-14')
    expect(
      thawedMark({ under, frozen: { ...frozen, useBy: '2026-11-12' } }, '2026-11-10')?.lastDay,
    ).toBe('2026-11-12')
    expect(
      thawedMark({ under, frozen: { ...frozen, useBy: '2026-11-09' } }, '2026-11-10'),
    ).toBeNull()
  })

  it('[LA7] frozen again on the day of thawing that day is used, and days in the freezer are not', () => {
    const begun = day('2026-11-01', '09:00')
    const first = coldRice({ startedAt: begun, dateMark: stampOf('2026-11-07', 'UTC') })
    const cold = (frozen: ReturnType<typeof frozenFrom>, on: string) => {
      if (typeof frozen === 'string') throw new Error(frozen)
      return coldRice({ startedAt: begun, dateMark: thawedMark({ ...first, frozen }, on) })
    }
    const thawed = cold(frozenFrom(first, '2026-11-03'), '2026-11-25')
    expect(thawed.dateMark).toMatchObject({ lastDay: '2026-11-29', thawedOn: '2026-11-25' })
    expect(frozenFrom(thawed, '2026-11-25')).toMatchObject({ daysLeft: 4 })
    expect(frozenFrom(thawed, '2026-11-26')).toMatchObject({ daysLeft: 4 })
    expect(frozenFrom(thawed, '2026-11-27')).toMatchObject({ daysLeft: 3 })
    // Told as two days older than its mark knew, it has two fewer.
    expect(frozenFrom(thawed, '2026-11-26', { preparedOn: '2026-10-30' })).toMatchObject({
      daysLeft: 2,
    })
    const over = cold({ on: '2026-11-03', daysLeft: 1, useBy: null }, '2026-11-25')
    expect(frozenFrom(over, '2026-11-25')).toBe('no-days-left')
  })

  it('[LA7] [F28] however often it is frozen and thawed, it has the days that its date mark says', () => {
    const plus = (date: string, days: number) =>
      new Date(day(date) + days * 86_400_000).toISOString().slice(0, 10)
    const gaps = fc.array(fc.tuple(fc.nat(3), fc.nat(40)), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(gaps, fc.boolean(), (stays, isTold) => {
        const preparedOn = '2026-11-01'
        const startedAt = isTold ? day(preparedOn, '09:00') : null
        let lot = coldRice({ startedAt, dateMark: stampOf('2026-11-07', 'UTC') })
        const freezings: Freezing[] = []
        let on = preparedOn
        for (const [coldFor, frozenFor] of stays) {
          on = plus(on, coldFor)
          const expected = dateMark(
            {
              preparedOn,
              freezings: [...freezings, { frozenOn: on, thawedOn: null }],
              useBy: null,
            },
            MODEL_CODE,
          )
          const frozen = frozenFrom(lot, on)
          const left = typeof frozen === 'string' ? 0 : frozen.daysLeft
          const says = expected.mark === 'frozen' ? expected.daysLeft : 0
          // A first day that nobody knows may be the first day in the freezer.
          if (isTold) expect(left).toBe(says)
          else expect(left).toBeLessThanOrEqual(says)
          if (typeof frozen === 'string') return
          const thawedOn = plus(on, frozenFor)
          freezings.push({ frozenOn: on, thawedOn })
          on = thawedOn
          lot = coldRice({ startedAt, dateMark: thawedMark({ ...lot, frozen }, on) })
        }
      }),
    )
  })

  it('[LA59] thawed and frozen again, the maker’s use-by still binds', () => {
    const { under } = coldRice()
    const frozen = { on: '2026-10-03', daysLeft: 5, useBy: '2026-10-20' }
    const dateMark = thawedMark({ under, frozen }, '2026-10-04')
    expect(dateMark).toMatchObject({ lastDay: '2026-10-08', useBy: '2026-10-20' })
    const again = frozenFrom(coldRice({ dateMark }), '2026-10-05')
    expect(again).toMatchObject({ useBy: '2026-10-20', daysLeft: 4 })
    if (typeof again === 'string') throw new Error(again)
    expect(thawedMark({ under, frozen: again }, '2026-10-19')?.lastDay).toBe('2026-10-20')
    expect(thawedMark({ under, frozen: again }, '2026-10-21')).toBeNull()
    // What is told now never lengthens it.
    const told = frozenFrom(coldRice({ dateMark }), '2026-10-05', { useBy: '2026-12-24' })
    expect(told).toMatchObject({ useBy: '2026-10-20' })
    const over = coldRice({ dateMark: dateMark && { ...dateMark, useBy: '2026-10-04' } })
    expect(frozenFrom(over, '2026-10-05')).toBe('no-days-left')
  })

  it('[LA7] in it nothing falls due; what isn’t cold doesn’t go in', () => {
    const now = day('2026-10-02', '08:00')
    const decided = decideLarder(withRice(), { type: 'freezeLot', lot: 'a', initials: 'KT' }, now)
    if (!('events' in decided)) throw new Error('not frozen')
    const frozen = larderAfter(
      decided.events.map((event) => [now, event] as const),
      withRice(),
    )
    expect(types(frozen, day('2027-05-01'))).toEqual([])
    expect(lotBarred(frozen, 'a', day('2027-05-01'))).toBeNull()
    const thaw = decideLarder(
      frozen,
      { type: 'thawLot', lot: 'a', initials: 'KT' },
      day('2027-05-01'),
    )
    expect(thaw).toMatchObject({ events: [{ dateMark: { lastDay: '2027-05-06' } }] })
    const hot = withRice(coolingRice())
    expect(decideLarder(hot, { type: 'freezeLot', lot: 'a', initials: 'KT' }, at('15:00'))).toEqual(
      { refusal: { code: 'lot-cannot-freeze', because: 'not-cold' } },
    )
  })
})

describe('which goes first', () => {
  const state = larderAfter([
    [afternoon, setAside('late', coldRice({ dateMark: stampOf('2026-10-08', 'UTC') }))],
    [afternoon, setAside('younger', coldRice({ finishedAt: at('11:00') }))],
    [afternoon, setAside('older', coldRice())],
    [afternoon, setAside('unknown', coldRice({ finishedAt: null }))],
    [afternoon, setAside('beans', coldRice({ component: 'beans' }))],
  ])

  it('[LA8] the earliest date, then what was finished first, unknown age first of all', () => {
    expect(lotsToTake(state, 'rice', afternoon).map(([id]) => id)).toEqual([
      'unknown',
      'older',
      'younger',
      'late',
    ])
    expect(take(state, 'late', 1, afternoon)).toEqual({ code: 'older-lot', older: 'unknown' })
    expect(take(state, 'late', 1, afternoon, true)).toBeNull()
    expect(take(state, 'unknown', 1, afternoon)).toBeNull()
  })

  it('[LA8] what can’t be taken holds nothing up', () => {
    const out = larderAfter(
      ['unknown', 'older', 'younger'].map(
        (lot) => [afternoon, { type: 'lotPastDate', lot }] as const,
      ),
      state,
    )
    expect(take(out, 'late', 1, afternoon)).toBeNull()
  })
})
