import { describe, expect, it } from 'vitest'
import { frozenFrom, thawedMark } from '#lib/larder/days.ts'
import { coldRice, coolingRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at, read } from '#tests/support/readings.ts'

const { under } = coldRice()

describe('the last day of a lot is a day on which it is food', () => {
  it('[LA63] thawed with one day left, or on its maker’s date, it is sold on that day', () => {
    const frozen = { on: '2026-10-03', daysLeft: 1, useBy: null }
    expect(thawedMark({ under, frozen }, '2026-11-10')?.lastDay).toBe('2026-11-10')
    const more = { ...frozen, daysLeft: 5, useBy: '2026-11-10' }
    expect(thawedMark({ under, frozen: more }, '2026-11-10')?.lastDay).toBe('2026-11-10')
    expect(thawedMark({ under, frozen: more }, '2026-11-11')).toBeNull()
  })

  it('[LA63] frozen on its maker’s date it may be, which then binds it', () => {
    expect(frozenFrom(coldRice(), '2026-10-03', { useBy: '2026-10-03' })).toEqual({
      ...{ on: '2026-10-03', daysLeft: 5, useBy: '2026-10-03' },
    })
  })

  it('[LA63] what was cooled is cold since it was read so, and nobody has to stay any more', () => {
    const state = larderAfter([
      [at('14:30'), setAside('a', coolingRice('14:00', { presentUntil: at('20:00') }))],
      [at('18:00'), { type: 'lotRead', lot: 'a', reading: read(40, '18:00'), result: 'cooled' }],
    ])
    expect(state.lots.a).toMatchObject({
      ...{ kept: 'cold', since: at('18:00'), presentUntil: null, setAsideAt: at('14:30') },
    })
  })
})
