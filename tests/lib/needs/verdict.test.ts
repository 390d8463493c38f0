import { describe, expect, it } from 'vitest'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { type Verdict, verdictsFor } from '#tests/support/counter-verdicts.ts'
import { backup, kitchen, need, touching } from '#tests/support/kitchens.ts'

const meal = (plan: Kitchen, ...needs: Need[]): Verdict => {
  const found = verdictsFor(plan, needs).meal
  if (!found) throw new Error('no verdict')
  return found
}

describe('whether an item fits a guest', () => {
  it('[N22] it fits where its usual build does', () => {
    expect(meal(kitchen(), need('milk'))).toEqual({
      item: 'meal',
      kind: 'fits',
      leaveOut: [],
      bases: null,
      findings: [],
      fromBackup: [],
    })
  })

  it('[N22] else the smallest change: usual parts that don’t fit are left out', () => {
    const said = { cheese: { milk: 'contains' }, sauce: { egg: 'contains' } } as const
    expect(meal(kitchen({ said }), need('milk'), need('egg'))).toMatchObject({
      kind: 'with-change',
      leaveOut: ['cheese', 'sauce'],
      bases: null,
      findings: [
        { component: 'cheese', why: 'contains', need: 'milk' },
        { component: 'sauce', why: 'contains', need: 'egg' },
      ],
    })
    expect(meal(kitchen({ said }), need('milk')).leaveOut).toEqual(['cheese'])
  })

  it('[N22] and the base gives way where it doesn’t fit, to any of those that do', () => {
    const said = { wrap: { wheat: 'contains' } } as const
    expect(meal(kitchen({ said }), need('wheat'))).toMatchObject({
      kind: 'with-change',
      leaveOut: [],
      bases: ['bowl'],
      findings: [{ component: 'wrap', need: 'wheat' }],
    })
    const usual = kitchen({ said: { bowl: { wheat: 'contains' } } })
    expect(meal(usual, need('wheat'))).toMatchObject({ kind: 'fits', bases: null })
    const item = usual.station.items[0]
    if (!item) throw new Error('no item')
    const three = {
      ...item,
      base: { choices: ['wrap', 'bowl', 'leaf'], usual: 'wrap' },
      parts: item.parts.filter((part) => part.component !== 'leaf'),
    }
    expect(meal(kitchen({ said, over: { items: [three] } }), need('wheat')).bases).toEqual([
      'bowl',
      'leaf',
    ])
  })

  it('[N22] what may be accepted is left out where it can be, and a note changes nothing', () => {
    const unknown = kitchen({ said: { cheese: { milk: 'unknown' } } })
    expect(meal(unknown, need('milk', 'leave-out'))).toMatchObject({
      kind: 'with-change',
      leaveOut: ['cheese'],
      findings: [{ why: 'unknown', level: 'ask' }],
    })
    const noted = kitchen({ said: { wrap: { milk: 'may-contain' } } })
    expect(meal(noted, need('milk', 'leave-out'))).toMatchObject({
      kind: 'fits',
      bases: null,
      findings: [],
    })
  })

  it('[N23] it doesn’t fit where its heart, a part that stays or every base is ruled out', () => {
    const heart = kitchen({ said: { heart: { soy: 'unknown' }, cheese: { soy: 'contains' } } })
    expect(meal(heart, need('soy'))).toMatchObject({
      kind: 'no',
      findings: [{ component: 'heart', why: 'unknown', through: ['heart'] }],
    })
    const bases = kitchen({ said: { wrap: { soy: 'contains' }, bowl: { soy: 'contains' } } })
    expect(meal(bases, need('soy')).kind).toBe('no')
    const { station } = kitchen({ said: { leaf: { soy: 'contains' } } })
    const items = station.items.map((item) => ({
      ...item,
      parts: item.parts.map((part) => ({ ...part, required: part.component === 'leaf' })),
    }))
    const required = { station: { ...station, items }, soiled: [], lent: [], ready: [] }
    expect(meal(required, need('soy'))).toMatchObject({ kind: 'no', leaveOut: [] })
  })

  it('[N24] it is for the person in charge where what stays has only what may be accepted', () => {
    const warned = kitchen({
      said: { heart: { milk: 'may-contain' }, cheese: { milk: 'contains' } },
    })
    expect(meal(warned, need('milk'))).toMatchObject({
      kind: 'ask',
      leaveOut: ['cheese'],
      findings: [{ component: 'heart', why: 'may-contain', level: 'caution' }],
    })
    const unknown = kitchen({ said: { heart: { milk: 'unknown' } } })
    expect(meal(unknown, need('milk', 'leave-out')).kind).toBe('ask')
    expect(meal(unknown, need('milk')).kind).toBe('no')
  })

  it('[N24] and takes the base with the least to accept', () => {
    const plan = kitchen({
      said: { wrap: { milk: 'contains' }, bowl: { milk: 'may-contain' } },
    })
    expect(meal(plan, need('milk'))).toMatchObject({ kind: 'ask', bases: ['bowl'] })
  })

  it('says what is taken from a protected back-up pan, and fits by that', () => {
    const plan = {
      said: { cheese: { milk: 'contains' } },
      contacts: [touching('beside', 'heart', 'cheese')],
      backups: [backup('heart')],
    } as const
    const ready = kitchen({ ...plan, backups: [...plan.backups], ready: ['heart'] })
    expect(meal(ready, need('milk'))).toMatchObject({ kind: 'with-change', fromBackup: ['heart'] })
    expect(meal(kitchen({ ...plan, backups: [...plan.backups] }), need('milk')).kind).toBe('ask')
  })
})
