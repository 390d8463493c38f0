import { describe, expect, it } from 'vitest'
import type { Ingredient, StationDocument } from '#lib/menu/station-document.ts'
import { LEFT_OUT_BY, NEED_CODES, TRAITS, US_NINE } from '#lib/needs/codes.ts'
import { declaredBy, declaredIn } from '#lib/needs/declared.ts'
import { demoStation } from '#tests/support/service.ts'

const mustard: Ingredient = {
  id: 'mustard',
  name: 'Mustard',
  declarations: { milk: 'free', egg: 'contains', soy: 'may-contain', wheat: 'unknown' },
  traits: ['egg'],
  readOn: '2026-11-20',
}

const withOne = (ingredients: readonly Ingredient[]): StationDocument => ({
  ...demoStation,
  ingredients: [...ingredients],
  components: demoStation.components.map((one) =>
    one.id === 'slaw' ? { ...one, ingredients: ingredients.map(({ id }) => id) } : one,
  ),
})

const saying = (id: string, milk: 'contains' | 'may-contain' | 'free' | 'unknown'): Ingredient => ({
  ...mustard,
  id,
  declarations: { milk },
})

describe('what an ingredient declares', () => {
  it('[N1] is what its label says, and unknown where it says nothing', () => {
    expect(declaredIn(mustard, 'milk')).toBe('free')
    expect(declaredIn(mustard, 'egg')).toBe('contains')
    expect(declaredIn(mustard, 'soy')).toBe('may-contain')
    expect(declaredIn(mustard, 'wheat')).toBe('unknown')
    expect(declaredIn(mustard, 'sesame')).toBe('unknown')
  })

  it('[N2] is unknown while nobody has read the label, except what it is said to contain', () => {
    const unread = { ...mustard, readOn: null }
    expect(declaredIn(unread, 'milk')).toBe('unknown')
    expect(declaredIn(unread, 'soy')).toBe('unknown')
    expect(declaredIn(unread, 'egg')).toBe('contains')
    expect(declaredIn(unread, 'vegetarian')).toBe('unknown')
    expect(declaredIn(unread, 'vegan')).toBe('contains')
  })

  it('[N3] is unknown to a diet where nobody has read what it is made of', () => {
    expect(declaredIn({ ...mustard, traits: null }, 'vegan')).toBe('unknown')
    expect(declaredIn({ ...mustard, traits: null }, 'egg')).toBe('contains')
    expect(declaredIn({ ...mustard, traits: [] }, 'vegan')).toBe('free')
  })

  it.each(TRAITS)(
    '[N4] of %s: a diet leaves it out or not, as ISO 23662:2021 defines it',
    (trait) => {
      const said = (code: 'vegetarian' | 'vegan') =>
        declaredIn({ ...mustard, traits: [trait] }, code)
      const passesBoth = ['alcohol', 'gluten-grain']
      const passesVegetarian = [...passesBoth, 'egg', 'dairy', 'honey']
      expect(said('vegetarian')).toBe(passesVegetarian.includes(trait) ? 'free' : 'contains')
      expect(said('vegan')).toBe(passesBoth.includes(trait) ? 'free' : 'contains')
    },
  )

  it('[N4] vegan leaves out all that vegetarian does', () => {
    for (const trait of LEFT_OUT_BY.vegetarian) expect(LEFT_OUT_BY.vegan).toContain(trait)
  })
})

describe('what a component declares', () => {
  it.each([
    ['contains', 'unknown', 'contains'],
    ['contains', 'may-contain', 'contains'],
    ['unknown', 'may-contain', 'unknown'],
    ['unknown', 'free', 'unknown'],
    ['may-contain', 'free', 'may-contain'],
  ] as const)(
    '[N5] with %s and %s ingredients is %s, whichever comes first',
    (one, other, worst) => {
      const first = saying('first', one)
      const second = saying('second', other)
      expect(declaredBy(withOne([first, second]), 'slaw', 'milk')).toEqual({
        state: worst,
        ingredient: 'first',
      })
      expect(declaredBy(withOne([second, first]), 'slaw', 'milk')).toEqual({
        state: worst,
        ingredient: 'first',
      })
    },
  )

  it('[N6] is free only where every ingredient is declared free', () => {
    expect(
      declaredBy(withOne([saying('first', 'free'), saying('second', 'free')]), 'slaw', 'milk'),
    ).toEqual({
      state: 'free',
      ingredient: null,
    })
    const station = withOne([saying('first', 'free')])
    const lost = {
      ...station,
      components: station.components.map((one) => ({
        ...one,
        ingredients: ['first', 'nobody-knows'],
      })),
    }
    expect(declaredBy(lost, 'slaw', 'milk')).toEqual({
      state: 'unknown',
      ingredient: 'nobody-knows',
    })
  })
})

describe('the codes of needs', () => {
  it('[N7] are the nine major allergens of US law, and two diets', () => {
    // FALCPA 2004 (Public Law 108-282), section 203(qq), and the FASTER Act of 2021 (Public Law 117-11).
    expect([...US_NINE].sort()).toEqual([
      ...['egg', 'fish', 'milk', 'peanut', 'sesame', 'shellfish', 'soy', 'tree-nuts', 'wheat'],
    ])
    expect(NEED_CODES).toEqual([...US_NINE, 'vegetarian', 'vegan'])
  })
})
