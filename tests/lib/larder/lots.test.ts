import { describe, expect, it } from 'vitest'
import { decideLarder, SLIP_MS } from '#lib/larder/decide.ts'
import { LOT_READ_WITHIN_MS, larderFallsDue, nextLarderDue } from '#lib/larder/due.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { lotsToTake, lotTakeProblem } from '#lib/larder/take.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { coldRice, coolingRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at, degrees } from '#tests/support/readings.ts'

const day = (date: string, time = '12:00') => Date.parse(`${date}T${time}:00Z`)
const afternoon = at('14:30')
const told = (value: number, moment?: number) => ({
  ...degrees(value),
  probe: 'probe 1',
  where: 'thickest-part' as const,
  ...(moment === undefined ? {} : { at: moment }),
})
const reads = (value: number) =>
  ({ type: 'readLot', lot: 'a', reading: told(value), initials: 'KT' }) as const

const withRice = (food = coldRice(), amount = 1_000_000): LarderState =>
  larderAfter([[afternoon, setAside('a', food, amount)]])

const take = (state: LarderState, id: string, amount: number, now: number, saysWhy = false) =>
  lotTakeProblem(state, id, { amount, now, saysWhy })

const types = (state: LarderState, now: number) =>
  larderFallsDue(state, now).recorded.map(({ type, due }) => [type, due])

describe('a lot', () => {
  it.each([
    ['none', 0],
    ['less than none', -1],
    ['half a milligram', 0.5],
    ['more than can be counted', 2 ** 53],
  ])('[LA1] of %s is never set aside', (_, amount) => {
    expect(() => withRice(coldRice(), amount)).toThrow()
  })

  it('[LA1] comes once under its id, also after it is gone, and not without its date', () => {
    const state = withRice()
    expect(() => larderAfter([[afternoon, setAside('a', coldRice())]], state)).toThrow('already')
    const gone = larderAfter([[afternoon, { type: 'lotGone', lot: 'a', amount: 1_000_000 }]], state)
    expect(() => larderAfter([[afternoon, setAside('a', coldRice())]], gone)).toThrow('already')
    expect(() => withRice(coldRice({ dateMark: null }))).toThrow('no date')
    expect(withRice(coldRice({ kept: 'dry', dateMark: null })).lots.a?.amount).toBe(1_000_000)
  })

  it('[LA2] gives no more than it holds, and what is left stays', () => {
    const state = withRice()
    expect(take(state, 'a', 1_000_001, afternoon)).toEqual({
      code: 'lot-holds-less',
      left: 1_000_000,
      unit: 'mg',
    })
    for (const amount of [0, -5, 0.5, Number.NaN])
      expect(take(state, 'a', amount, afternoon)?.code).toBe('lot-holds-less')
    const by = { service: 's', station: 'line', batch: 'b9' }
    const rest = larderAfter(
      [[afternoon, { type: 'lotTaken', lot: 'a', amount: 400_001, by }]],
      state,
    )
    expect(rest.lots.a?.amount).toBe(599_999)
    expect(() =>
      larderAfter([[afternoon, { type: 'lotTaken', lot: 'a', amount: 600_000, by }]], rest),
    ).toThrow()
  })

  it('[LA3] that is gone is told as gone, and how', () => {
    const by = { service: 's', station: 'line', batch: 'b9' }
    const state = larderAfter(
      [[afternoon, { type: 'lotTaken', lot: 'a', amount: 1_000_000, by }]],
      withRice(),
    )
    expect(take(state, 'a', 1, afternoon)).toEqual({
      code: 'lot-gone',
      how: 'taken',
      at: afternoon,
    })
    expect(take(state, 'z', 1, afternoon)).toEqual({ code: 'no-such-lot' })
    expect(decideLarder(state, reads(39), afternoon)).toMatchObject({
      refusal: { code: 'lot-gone' },
    })
  })
})

describe('dates', () => {
  const last = day('2026-10-08', '00:00')
  // Read every day, so that nothing but its date counts.
  const fresh = (now: number) =>
    withRice(coldRice({ readings: [{ ...coldRice().readings[0], at: now - 1_000 } as never] }))

  it('[LA4] is taken to the last millisecond of its last day, and not a moment longer', () => {
    expect(take(fresh(last), 'a', 1, last - 1)).toBeNull()
    expect(take(fresh(last), 'a', 1, last)).toEqual({ code: 'lot-bound', why: 'date' })
  })

  it('[LA4] waits then to be thrown out by initials, and for nothing else', () => {
    const { state } = larderFallsDue(fresh(last), last)
    expect(state.lots.a?.bound).toEqual({ why: 'date', since: last })
    for (const command of [
      reads(39),
      { type: 'freezeLot', lot: 'a', initials: 'KT' } as const,
      { type: 'anotherTookLot', lot: 'a' } as const,
    ])
      expect(decideLarder(state, command, last)).toEqual({
        refusal: { code: 'lot-bound', why: 'date' },
      })
    const bin = { type: 'throwOutLot', lot: 'a', reason: 'past-date' } as const
    expect(decideLarder(state, bin, last)).toEqual({ refusal: { code: 'needs-initials' } })
    expect(decideLarder(state, { ...bin, initials: 'KT' }, last)).toEqual({
      events: [{ type: 'lotThrownOut', lot: 'a', amount: 1_000_000, reason: 'past-date' }],
    })
  })

  it('[LA4] isn’t given to another class past its date, nor is anything while the clock is in doubt', () => {
    const given = { type: 'anotherTookLot', lot: 'a' } as const
    expect(decideLarder(fresh(last), given, last - 1)).toMatchObject({ events: [{ lot: 'a' }] })
    // Before what is due was told, too.
    expect(decideLarder(fresh(last), given, last)).toEqual({
      refusal: { code: 'lot-bound', why: 'date' },
    })
    const unsure = larderAfter(
      [[last - 2_000, { type: 'larderClockJumped', byMs: 86_400_000 }]],
      fresh(last),
    )
    for (const now of [last - 1_000, last + 86_400_000])
      expect(decideLarder(unsure, given, now)).toEqual({ refusal: { code: 'larder-clock-unsure' } })
    // What is only to be read is read by the other class.
    const unread = decideLarder(withRice(), given, at('14:00') + LOT_READ_WITHIN_MS)
    expect(unread).toMatchObject({ events: [{ type: 'lotGone' }] })
  })

  it('[LA12] what fell due while nothing ran falls due at the start, in its order', () => {
    const state = larderAfter([
      [afternoon, setAside('a', coldRice())],
      [afternoon, setAside('b', coolingRice('14:00'))],
    ])
    const start = day('2026-10-20')
    expect(types(state, start)).toEqual([
      ['lotCoolingMissed', at('16:00') + 1],
      ['lotReadingMissed', at('14:00') + LOT_READ_WITHIN_MS],
      ['lotPastDate', last],
    ])
    expect(larderFallsDue(state, start).recorded.map((one) => one.at)).toEqual([
      start,
      start,
      start,
    ])
    expect(nextLarderDue(larderFallsDue(state, start).state)).toBeNull()
  })
})

describe('cooling', () => {
  it.each([
    ['from heat, 2 hours', coolingRice('14:00'), at('16:00'), 1],
    [
      'from heat once it is at 70 °F, 6 hours in all',
      coolingRice('14:00', {
        cooling: [
          ...coolingRice('14:00').cooling,
          { ...coolingRice('14:20').cooling[0], temperature: degrees(70) } as never,
        ],
      }),
      at('20:00'),
      2,
    ],
    [
      'from room temperature, 4 hours',
      coolingRice('14:00', { cooledFrom: 'room', finishedAt: null }),
      at('18:00'),
      2,
    ],
    [
      'from room temperature, 4 hours of when it was made',
      coolingRice('14:00', { cooledFrom: 'room', finishedAt: at('12:30') }),
      at('16:30'),
      2,
    ],
  ])('[LA5] %s: the last millisecond counts', (_, food, end, stage) => {
    const state = withRice(food)
    expect(types(state, end)).toEqual([])
    expect(larderFallsDue(state, end + 1).recorded).toMatchObject([
      { type: 'lotCoolingMissed', lot: 'a', stage, due: end + 1 },
    ])
    expect(take(state, 'a', 1, end + 1)).toEqual({ code: 'lot-bound', why: 'cooling-missed' })
    expect(take(state, 'a', 1, end)).toBeNull()
  })

  it('[LA5] read in time it is cold, read late or too warm by then it is thrown out', () => {
    const state = withRice(coolingRice())
    expect(decideLarder(state, reads(69), at('15:59'))).toMatchObject({
      events: [{ result: 'good' }],
    })
    expect(decideLarder(state, reads(41), at('15:59'))).toMatchObject({
      events: [{ result: 'cooled' }],
    })
    const cold = larderAfter(
      [
        [
          at('15:59'),
          {
            type: 'lotRead',
            lot: 'a',
            reading: { ...coldRice().readings[0], at: at('15:59') } as never,
            result: 'cooled',
          },
        ],
      ],
      state,
    )
    expect([cold.lots.a?.kept, nextLarderDue(cold)?.event.type]).toEqual([
      'cold',
      'lotReadingMissed',
    ])
    expect(decideLarder(state, reads(50), at('16:01'))).toEqual({
      refusal: { code: 'lot-bound', why: 'cooling-missed' },
    })
  })

  it('[LA5] without a reading from which it counts it is never taken', () => {
    const state = withRice(coolingRice('14:00', { cooling: [] }))
    expect(take(state, 'a', 1, afternoon)).toEqual({ code: 'lot-bound', why: 'cooling-missed' })
    expect(types(state, afternoon)).toEqual([['lotCoolingMissed', afternoon]])
  })
})

describe('readings', () => {
  const late = at('14:00') + LOT_READ_WITHIN_MS

  it('[LA6] unread for a day it isn’t taken until it is read in limits', () => {
    const state = withRice()
    expect(take(state, 'a', 1, late - 1)).toBeNull()
    expect(take(state, 'a', 1, late)).toEqual({ code: 'lot-unread', since: late })
    const { state: missed } = larderFallsDue(state, late)
    expect(decideLarder(missed, { type: 'freezeLot', lot: 'a', initials: 'KT' }, late)).toEqual({
      refusal: { code: 'lot-unread', since: late },
    })
    const decided = decideLarder(missed, reads(41), late)
    expect(decided).toMatchObject({ events: [{ type: 'lotRead', result: 'good' }] })
    if (!('events' in decided)) return
    const again = larderAfter(
      decided.events.map((event) => [late, event] as const),
      missed,
    )
    expect(take(again, 'a', 1, late)).toBeNull()
  })

  it('[LA6] above 41 °F it is thrown out, however good the next reading is', () => {
    const decided = decideLarder(withRice(), reads(41.1), at('15:00'))
    expect(decided).toMatchObject({ events: [{ result: 'out' }] })
    if (!('events' in decided)) return
    const out = larderAfter(
      decided.events.map((event) => [at('15:00'), event] as const),
      withRice(),
    )
    expect(decideLarder(out, reads(38), at('15:10'))).toEqual({
      refusal: { code: 'lot-bound', why: 'out-of-limits' },
    })
  })

  it('[LA6] a reading without initials or probe, or of the surface, is none', () => {
    const lacking = (more: object) =>
      decideLarder(withRice(), { ...reads(39), ...more }, at('15:00'))
    expect(lacking({ initials: undefined })).toMatchObject({
      refusal: { code: 'lot-reading-lacks', lack: 'not-initialled' },
    })
    expect(lacking({ reading: { ...told(39), probe: null } })).toMatchObject({
      refusal: { lack: 'no-probe' },
    })
    expect(lacking({ reading: { ...told(39), where: 'surface' } })).toMatchObject({
      refusal: { lack: 'surface-only' },
    })
    expect(lacking({ reading: told(39, at('13:00')) })).toMatchObject({
      refusal: { code: 'lot-wrong-moment' },
    })
  })
})

describe('a jump of the clock', () => {
  const jumped = larderAfter(
    [[afternoon, { type: 'larderClockJumped', byMs: 9 * HOUR_MS }]],
    withRice(),
  )

  it('[LA9] nothing falls due and nothing is taken until somebody says that it is right', () => {
    const later = day('2026-10-30')
    expect([nextLarderDue(jumped), types(jumped, later)]).toEqual([null, []])
    expect(take(jumped, 'a', 1, afternoon)).toEqual({ code: 'larder-clock-unsure' })
    expect(decideLarder(jumped, { type: 'confirmLarderClock' }, afternoon)).toEqual({
      events: [{ type: 'larderClockConfirmed', wall: afternoon }],
    })
    expect(decideLarder(withRice(), { type: 'confirmLarderClock' }, afternoon)).toEqual({
      refusal: { code: 'nothing-to-confirm' },
    })
    const confirmed = larderAfter(
      [[afternoon, { type: 'larderClockConfirmed', wall: afternoon }]],
      jumped,
    )
    expect(types(confirmed, later)).toHaveLength(2)
  })
})

describe('a clock that jumped and was set right again', () => {
  it('[LA57] is asked about all the same, and the larder’s time goes on from what it shows', () => {
    const ahead = afternoon + 24 * HOUR_MS
    const state = larderAfter(
      [
        [ahead, { type: 'larderClockJumped', byMs: 24 * HOUR_MS }],
        [ahead, { type: 'larderClockJumped', byMs: -24 * HOUR_MS }],
      ],
      withRice(),
    )
    expect(take(state, 'a', 1, afternoon)).toEqual({ code: 'larder-clock-unsure' })
    const decided = decideLarder(state, { type: 'confirmLarderClock' }, afternoon)
    expect(decided).toEqual({ events: [{ type: 'larderClockConfirmed', wall: afternoon }] })
    const confirmed = larderAfter(
      [[afternoon, { type: 'larderClockConfirmed', wall: afternoon }]],
      state,
    )
    expect(confirmed.at).toBe(afternoon)
  })
})

describe('a clock that was set back', () => {
  it('[LA9] leaves what cools as missed and what is cold as unread; its time goes on from there', () => {
    const state = larderAfter([
      [day('2027-10-01'), setAside('a', coldRice({ dateMark: stampOf('2027-10-07', 'UTC') }))],
      [day('2027-10-01'), setAside('b', coolingRice())],
      [day('2027-10-01'), { type: 'larderClockJumped', byMs: -365 * 24 * HOUR_MS }],
    ])
    const decided = decideLarder(state, { type: 'confirmLarderClock' }, afternoon)
    if (!('events' in decided)) throw new Error('not confirmed')
    expect(decided.events.map(({ type }) => type)).toEqual([
      'larderClockConfirmed',
      'lotReadingMissed',
      'lotCoolingMissed',
    ])
    const after = larderAfter(
      decided.events.map((event) => [afternoon, event] as const),
      state,
    )
    expect([after.at, take(after, 'a', 1, afternoon)?.code]).toEqual([afternoon, 'lot-unread'])
    expect(take(after, 'b', 1, afternoon)?.code).toBe('lot-bound')
  })
})

describe('another class took it', () => {
  it('[LA10] in one tap without initials, taken back within 10 minutes, its dates running on', () => {
    const decided = decideLarder(withRice(), { type: 'anotherTookLot', lot: 'a' }, afternoon)
    expect(decided).toEqual({ events: [{ type: 'lotGone', lot: 'a', amount: 1_000_000 }] })
    if (!('events' in decided)) return
    const gone = larderAfter(
      decided.events.map((event) => [afternoon, event] as const),
      withRice(),
    )
    expect(lotsToTake(gone, 'rice', afternoon)).toEqual([])
    const isBack = { type: 'lotIsBack', lot: 'a' } as const
    expect(decideLarder(gone, isBack, afternoon + SLIP_MS + 1)).toEqual({
      refusal: { code: 'lot-no-slip' },
    })
    expect(decideLarder(gone, isBack, afternoon + SLIP_MS)).toEqual({
      events: [{ type: 'lotBack', lot: 'a' }],
    })
    const back = larderAfter([[afternoon + SLIP_MS, { type: 'lotBack', lot: 'a' }]], gone)
    expect(back.lots.a).toEqual({ ...withRice().lots.a, version: 3 })
    expect(decideLarder(back, isBack, afternoon + SLIP_MS)).toEqual({
      refusal: { code: 'lot-no-slip' },
    })
  })
})
