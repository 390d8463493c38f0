import { describe, expect, it } from 'vitest'
import { decideLarder, SLIP_MS } from '#lib/larder/decide.ts'
import type { LotFood } from '#lib/larder/lot.ts'
import { larderShown } from '#lib/larder/shelf-view.ts'
import { takenFromLarder } from '#lib/rooms/food/facts/larder/from-larder.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { coldRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'
import { demoStation, given, running } from '#tests/support/service.ts'

const NOW = at('15:00')
const from = { service: 'lunch', station: demoStation.id, what: 'batch', id: 'b1' } as const
const ours: Partial<LotFood> = { madeOf: ['brown-rice'], from }
const sooner = { dateMark: stampOf('2026-10-05', 'UTC') }
const service = running(given())

/** Ours lasts to the 7th, the other one to the 5th. */
const taken = (other: Partial<LotFood>, lot = 'ours', saysWhy = false) =>
  takenFromLarder(
    service,
    larderAfter([
      [at('14:30'), setAside('ours', coldRice(ours))],
      [at('14:31'), setAside('other', coldRice({ ...ours, ...sooner, ...other }))],
    ]),
    lot,
    { amount: 1000, now: NOW, saysWhy },
  )

describe('a lot that goes first and isn’t this station’s to take', () => {
  it.each([
    ['stood open elsewhere', { from: { ...from, station: 'other' }, stoodOpen: true }],
    ['is made of something else', { madeOf: ['white-rice'] }],
    ['has touched what isn’t known here', { touched: [{ component: 'kelp', madeOf: ['kelp'] }] }],
    ['has a label that changed since', { labels: { 'brown-rice': 7 } }],
  ])('[LA61] %s holds up none of ours', (_, other) => {
    expect(taken(other)).toHaveProperty('food')
  })

  it('[LA61] what is ours still goes first, and why it isn’t taken is said at once', () => {
    expect(taken({})).toEqual({ problem: { code: 'older-lot', older: 'other' } })
    expect(taken({}, 'ours', true)).toHaveProperty('food')
    const strange = { dateMark: stampOf('2026-10-09', 'UTC'), madeOf: ['white-rice'] }
    expect(taken(strange, 'other')).toEqual({ problem: { code: 'made-otherwise' } })
  })
})

describe('what another class took before the clock fell', () => {
  const gone = larderAfter([
    [at('14:30'), setAside('a', coldRice())],
    [at('15:00'), { type: 'lotGone', lot: 'a', amount: 1_000_000 }],
  ])
  const none = {
    ...{ newest: () => ({}), from: () => [], nameOf: (_: string, id: string) => id },
    ...{ labelOf: () => null, allergensOf: () => null },
  }
  const back = (state: typeof gone, now: number) =>
    decideLarder(state, { type: 'lotIsBack', lot: 'a' }, now)

  it('[LA62] doesn’t come back as a slip: nobody knows for how long it was away', () => {
    expect(back(gone, at('15:00') + SLIP_MS)).toHaveProperty('events')
    expect(back(gone, at('15:00') + SLIP_MS + 1)).toEqual({ refusal: { code: 'lot-no-slip' } })
    const wall = at('09:00')
    const fell = larderAfter(
      [
        [at('15:20'), { type: 'larderClockJumped', byMs: wall - at('15:20') }],
        [wall, { type: 'larderClockConfirmed', wall }],
      ],
      gone,
    )
    expect(back(fell, wall)).toEqual({ refusal: { code: 'lot-no-slip' } })
    expect(larderShown(fell, wall, none).slips).toEqual([])
    expect(larderShown(gone, at('15:01'), none).slips).toHaveLength(1)
  })
})
