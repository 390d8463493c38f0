import { describe, expect, it } from 'vitest'
import { stayAsked } from '#lib/larder/stay.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { read } from '#tests/support/readings.ts'

type Cools = Parameters<typeof stayAsked>[0]

const hot = read(150, '12:00')
const { at: start } = hot
const later = (hours: number) => start + hours * HOUR_MS
const cooks: Cools = {
  ...{ kept: 'cooling', bound: null, barred: null, presentUntil: null },
  next: { what: 'stage', stage: 1, at: later(2) },
  label: { cooling: [hot], cooledFrom: 'cooked', finishedAt: null, limits: {} },
}
/** Mixed an hour before it was read. */
const room: Cools = {
  ...cooks,
  next: { what: 'stage', stage: 2, at: later(3) },
  label: {
    ...cooks.label,
    cooling: [read(65, '12:00')],
    cooledFrom: 'room',
    finishedAt: later(-1),
  },
}

describe('who stays to read what cools in the larder', () => {
  it('[B80] is asked by both stages of cooked food, and by the second once the first is read', () => {
    expect(stayAsked(cooks, later(1))).toEqual([later(2), later(6)])
    const cool = { ...cooks.label, cooling: [hot, read(68, '13:00')] }
    const next = { what: 'stage', stage: 2, at: later(6) } as const
    expect(stayAsked({ ...cooks, next, label: cool }, later(1))).toEqual([later(6)])
  })

  it('[B80] is asked by the 4 hours since it was made of food from room temperature, 3-501.14(B)', () => {
    expect(stayAsked(room, later(1))).toEqual([later(3)])
  })

  it('[B80] isn’t asked where somebody is there by the end of its stage, nor of what doesn’t cool', () => {
    expect(stayAsked({ ...room, presentUntil: later(3) }, later(1))).toEqual([])
    expect(stayAsked({ ...room, presentUntil: later(3) - 1 }, later(1))).toEqual([later(3)])
    expect(stayAsked({ ...cooks, presentUntil: later(2) }, later(1))).toEqual([])
    expect(stayAsked({ ...cooks, kept: 'cold' }, later(1))).toEqual([])
    expect(stayAsked({ ...cooks, bound: 'cooling-missed' }, later(3))).toEqual([])
  })
})
