import { describe, expect, it } from 'vitest'
import { factsOf } from '#lib/needs/kitchen.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { kitchen, touching } from '#tests/support/kitchens.ts'

const milk = (words: Readonly<Record<string, Declaration>>) =>
  Object.fromEntries(Object.entries(words).map(([id, word]) => [id, { milk: word }] as const))

describe('what reaches a pan', () => {
  it('[N16] is told by the worst of it, wherever that stands among the others', () => {
    const contacts = [touching('beside', 'leaf', 'sauce'), touching('scoop', 'leaf', 'cheese')]
    const touched = (sauce: Declaration, cheese: Declaration) =>
      factsOf(kitchen({ said: milk({ sauce, cheese }), contacts }))('leaf', 'milk').touched
    expect(touched('may-contain', 'contains')).toEqual({
      component: 'cheese',
      contact: 'scoop',
      declared: { state: 'contains', through: ['cheese'] },
      reached: ['cheese', 'sauce'],
      states: { cheese: 'contains', sauce: 'may-contain' },
    })
    expect(touched('contains', 'may-contain')).toMatchObject({
      component: 'sauce',
      contact: 'beside',
      reached: ['cheese', 'sauce'],
    })
  })
})

describe('scoops that went into a pan', () => {
  /** What they are to milk; the wrap lies beside the cheese, so that its scoop carries that. */
  const soiled = (words: Readonly<Record<string, Declaration>>, ...scoops: string[]) =>
    factsOf(
      kitchen({
        said: milk(words),
        contacts: [touching('beside', 'cheese', 'wrap')],
        soiled: scoops.map((by) => ({ component: 'leaf', by })),
      }),
    )('leaf', 'milk').soiled

  it('[N19] are told by the worst of those that have it themselves, in whatever order they went in', () => {
    const words = { sauce: 'contains', heart: 'may-contain' } as const
    for (const order of [
      ['sauce', 'heart'],
      ['heart', 'sauce'],
    ])
      expect(soiled(words, ...order)).toEqual({
        component: 'sauce',
        contact: 'scoop',
        declared: { state: 'contains', through: ['sauce'] },
        reached: ['heart', 'sauce'],
        states: { heart: 'may-contain', sauce: 'contains' },
      })
  })

  it('[N19] that have it themselves come before one that carries it, though that carries worse', () => {
    const words = { cheese: 'contains', sauce: 'may-contain' } as const
    for (const order of [
      ['wrap', 'sauce'],
      ['sauce', 'wrap'],
    ])
      expect(soiled(words, ...order)).toEqual({
        component: 'sauce',
        contact: 'scoop',
        declared: { state: 'may-contain', through: ['sauce'] },
        reached: ['sauce', 'wrap'],
        states: { sauce: 'may-contain', wrap: 'contains' },
      })
  })

  it('[N19] that only carry it went in all the same, and no ingredient of theirs decides it', () => {
    expect(soiled({ cheese: 'contains' }, 'wrap')).toEqual({
      component: 'wrap',
      contact: 'scoop',
      declared: { state: 'contains', through: [] },
      reached: ['wrap'],
      states: { wrap: 'contains' },
    })
    expect(soiled({ cheese: 'contains' }, 'bowl')).toBeNull()
  })
})

describe('the facts of a kitchen', () => {
  // Each is asked for every guest and pan of a screen.
  it('are worked out once a need', () => {
    const facts = factsOf(kitchen({ said: milk({ cheese: 'contains' }) }))
    const known = facts('cheese', 'milk')
    expect(facts('cheese', 'egg')).not.toBe(known)
    expect(facts('cheese', 'milk')).toBe(known)
  })
})
