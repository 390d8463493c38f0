import { describe, expect, it } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { DIET_RULES, DIETS, TRAITS, type Trait } from '#lib/station/codes/diets.ts'
import { DIETS as SECOND } from '#tests/lib/needs/oracle/laws.ts'
import { kitchen } from '#tests/support/kitchens.ts'

const saidOf = (code: string, traits: readonly Trait[], over: { milk?: 'may-contain' } = {}) =>
  declaredBy(
    kitchen({ traits: { cheese: [...traits] }, said: { cheese: over } }).station,
    'cheese',
    code,
  ).state

const KINDS = ['vegetarian', 'ovo-vegetarian', 'lacto-vegetarian', 'vegan'] as const

const passes = (...traits: Trait[]) => KINDS.filter((kind) => saidOf(kind, traits) === 'free')

/** ISO 23662:2021, clauses 4.2 to 4.5, as far as they are published; vegan from memory. */
describe('ISO 23662:2021, kinds of vegetarian', () => {
  it('[N4] honey passes vegetarian, and fails vegan', () => {
    expect(passes('honey')).toEqual(['vegetarian', 'ovo-vegetarian', 'lacto-vegetarian'])
    expect(saidOf('vegan', ['honey'])).toBe('contains')
  })

  it('[N4] egg passes with milk and egg and with egg only, and fails with milk only and vegan', () => {
    expect(passes('egg')).toEqual(['vegetarian', 'ovo-vegetarian'])
  })

  it('[N4] dairy passes with milk and egg and with milk only, and fails with egg only and vegan', () => {
    expect(passes('dairy')).toEqual(['vegetarian', 'lacto-vegetarian'])
  })

  it.each([
    'meat',
    'pork',
    'beef',
    'poultry',
    'fish',
    'shellfish',
    'stock',
    'lard',
    'gelatin',
    'animal-rennet',
  ] as const)('[N4] %s fails every kind: it needs an animal that is killed', (trait) => {
    expect(passes(trait)).toEqual([])
  })

  it('[N4] plants pass every kind', () => {
    expect(passes()).toEqual(KINDS)
    expect(passes('gluten-grain', 'alcohol')).toEqual(KINDS)
  })

  it('[N12] vegan is no claim about allergens, but a warning of milk is one about vegan', () => {
    expect(saidOf('vegan', [], { milk: 'may-contain' })).toBe('may-contain')
    expect(saidOf('vegetarian', [], { milk: 'may-contain' })).toBe('free')
  })
})

/** Common practice, no source: no standard defines them. */
describe('other diets', () => {
  it('[N11] [N33] a stock of an unnamed animal is not clear, whatever else is named', () => {
    expect(saidOf('no-pork', ['stock'])).toBe('unknown')
    expect(saidOf('no-pork', ['stock', 'poultry'])).toBe('unknown')
    expect(saidOf('no-beef', ['gelatin'])).toBe('unknown')
    expect(saidOf('pescatarian', ['stock', 'fish'])).toBe('unknown')
    expect(saidOf('pescatarian', ['stock', 'poultry'])).toBe('contains')
    expect(saidOf('no-pork', ['lard'])).toBe('contains')
  })

  it('[N4] the rules are those that were written down a second time', () => {
    for (const diet of DIETS) {
      const { never = [], dependsOnTheAnimal = [] } = SECOND[diet] ?? {}
      expect([...DIET_RULES[diet].out].sort(), diet).toEqual([...never].sort())
      expect([...DIET_RULES[diet].unclear].sort(), diet).toEqual([...dependsOnTheAnimal].sort())
      expect(
        [...never, ...dependsOnTheAnimal].filter((one) => !TRAITS.some((t) => t === one)),
        diet,
      ).toEqual([])
    }
  })

  // No certificate is inferred from what something is made of.
  it('[N13] halal and kosher are unknown where they are not declared', () => {
    expect(saidOf('halal', [])).toBe('unknown')
    expect(saidOf('kosher', ['pork'])).toBe('unknown')
  })
})
