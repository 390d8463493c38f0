import { describe, expect, test } from 'vitest'
import type { LotFood } from '#lib/larder/lot.ts'
import { atHandFor } from '#lib/rooms/food/facts/larder/at-hand.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { coldRice, coolingRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'
import { demoStation } from '#tests/support/service.ts'

const portions = portionsOf(demoStation)
const one = portions.rice?.amount ?? 0
const state = { station: demoStation, portions }
const here: Partial<LotFood> = {
  madeOf: ['brown-rice'],
  from: { service: 'lunch', station: demoStation.id, what: 'batch', id: 'b1' },
}
/** Set aside at half past two on 1 October; asked at three. */
const NOW = at('15:00')
const hand = (
  lots: Readonly<Record<string, LotFood>>,
  { on = '2026-10-02', amount = 10 * one }: { on?: string; amount?: number } = {},
) =>
  atHandFor(
    state,
    larderAfter(
      Object.entries(lots).map(([id, food]) => [at('14:30'), setAside(id, food, amount)] as const),
    ),
    'rice',
    { now: NOW, on, until: Date.parse(`${on}T18:00:00Z`) },
  )

describe('what of the larder a day ahead may count on', () => {
  test('[PR7] what may be sold until its doors close counts in whole portions, the earliest date first', () => {
    const later = coldRice({ ...here, dateMark: stampOf('2026-10-07', 'UTC') })
    const sooner = coldRice({ ...here, dateMark: stampOf('2026-10-05', 'UTC') })
    const found = hand({ a: later, b: sooner }, { amount: Math.round(10.6 * one) })
    expect(found.lots.map(({ lot, portions: count }) => [lot, count])).toEqual([
      ['b', 10],
      ['a', 10],
    ])
    expect(found.portions).toBe(21)
    expect(found.lots[0]?.lastDay).toBe('2026-10-05')
    expect(found.others).toBe(0)
  })

  test('[PR7] what is past its date by then isn’t counted on', () => {
    const lot = { a: coldRice({ ...here, dateMark: stampOf('2026-10-05', 'UTC') }) }
    expect(hand(lot, { on: '2026-10-05' }).portions).toBe(10)
    expect(hand(lot, { on: '2026-10-06' })).toMatchObject({ portions: 0, others: 1 })
  })

  test('[PR7] what still cools isn’t, what is made of something else or stood open elsewhere isn’t', () => {
    expect(hand({ a: coolingRice('14:00', here) })).toMatchObject({ portions: 0, others: 1 })
    expect(hand({ a: coldRice({ ...here, madeOf: ['white-rice'] }) }).portions).toBe(0)
    const open = { ...here, stoodOpen: true }
    expect(hand({ a: coldRice(open) }).portions).toBe(10)
    const other = { service: 'lunch', station: 'other', what: 'pan' as const, id: 'p' }
    expect(hand({ a: coldRice({ ...open, from: other }) }).portions).toBe(0)
  })

  test('[PR7] frozen food counts by the days that it has left once it is thawed that day', () => {
    const frozen = (daysLeft: number, useBy: string | null = null) =>
      coldRice({
        ...here,
        ...{ kept: 'frozen', dateMark: null, frozen: { on: '2026-10-01', daysLeft, useBy } },
      })
    expect(hand({ a: frozen(2) }).lots[0]).toMatchObject({ isFrozen: true, lastDay: '2026-10-03' })
    expect(hand({ a: frozen(3, '2026-10-01') }).portions).toBe(0)
  })
})
