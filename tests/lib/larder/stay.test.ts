import { describe, expect, it } from 'vitest'
import { stayAsked } from '#lib/larder/stay.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { read } from '#tests/support/readings.ts'

type Cools = Parameters<typeof stayAsked>[0]

const hot = read(150, '12:00')
const { at: start } = hot
const after = (hours: number) => start + hours * HOUR_MS
const cooks: Cools = {
  ...{ kept: 'cooling', bound: null, barred: null, presentUntil: null },
  next: { what: 'stage', stage: 1, at: after(2) },
  label: { cooling: [hot], cooledFrom: 'cooked', finishedAt: null, limits: {} },
}
/** Mixed an hour before it was read. */
const room: Cools = {
  ...cooks,
  next: { what: 'stage', stage: 2, at: after(3) },
  label: {
    ...cooks.label,
    cooling: [read(65, '12:00')],
    cooledFrom: 'room',
    finishedAt: after(-1),
  },
}

describe('who stays to read what cools in the larder', () => {
  it('[B80] is asked by both stages of cooked food, and by the second once the first is read', () => {
    expect(stayAsked(cooks, after(1))).toEqual([after(2), after(6)])
    const cool = { ...cooks.label, cooling: [hot, read(68, '13:00')] }
    const next = { what: 'stage', stage: 2, at: after(6) } as const
    expect(stayAsked({ ...cooks, next, label: cool }, after(1))).toEqual([after(6)])
  })

  it('[B80] is asked by the 4 hours since it was made of food from room temperature, 3-501.14(B)', () => {
    expect(stayAsked(room, after(1))).toEqual([after(3)])
  })

  it('[B80] isn’t asked where somebody is there by the end of its stage, nor of what doesn’t cool', () => {
    expect(stayAsked({ ...room, presentUntil: after(3) }, after(1))).toEqual([])
    expect(stayAsked({ ...room, presentUntil: after(3) - 1 }, after(1))).toEqual([after(3)])
    expect(stayAsked({ ...cooks, presentUntil: after(2) }, after(1))).toEqual([])
    expect(stayAsked({ ...cooks, kept: 'cold' }, after(1))).toEqual([])
    expect(stayAsked({ ...cooks, bound: 'cooling-missed' }, after(3))).toEqual([])
  })
})
