import { describe, expect, it } from 'vitest'
import { declaredIn } from '#lib/needs/declared.ts'
import { SOURCED, SOURCES_OF, type Source, type Sourced } from '#lib/station/codes/diets.ts'
import { sourceProblem } from '#lib/station/sources.ts'
import type { Ingredient } from '#lib/station/station-document.ts'
import { ingredient } from '#tests/support/kitchens.ts'

const US = { allergenSet: 'us-9', ownAllergens: [] } as const

const word = (
  traits: NonNullable<Ingredient['traits']>,
  code: string,
  sources?: Partial<Record<Sourced, Source[]>>,
) =>
  declaredIn(
    US,
    ingredient('one', {}, { traits, ...(sources === undefined ? {} : { sources }) }),
    code,
  )

describe('what a trait comes of', () => {
  it.each(SOURCED)('[N33] %s of an animal that isn’t named isn’t cleared by another', (trait) => {
    for (const other of ['poultry', 'fish', 'shellfish', 'beef', 'pork'] as const) {
      const noPork = trait === 'lard' || other === 'pork' ? 'contains' : 'unknown'
      expect(word([trait, other], 'no-pork'), other).toBe(noPork)
      expect(word([trait, other], 'no-beef'), other).toBe(other === 'beef' ? 'contains' : 'unknown')
    }
    expect(word([trait, 'fish'], 'no-beef', { [trait]: [] })).toBe('unknown')
  })

  it('[N33] each has a source of its own', () => {
    const both = ['gelatin', 'animal-rennet'] as const
    expect(word([...both], 'no-pork', { gelatin: ['beef'] })).toBe('unknown')
    expect(word([...both], 'no-pork', { gelatin: ['beef'], 'animal-rennet': ['beef'] })).toBe(
      'free',
    )
    expect(word([...both], 'no-beef', { gelatin: ['beef'] })).toBe('contains')
    expect(word(['gelatin'], 'no-beef', { gelatin: ['pork', 'beef'] })).toBe('contains')
    expect(word(['gelatin'], 'no-beef', { gelatin: ['pork'] })).toBe('free')
    expect(word(['gelatin'], 'no-beef', { gelatin: ['other-animal'] })).toBe('free')
  })

  it('[N33] lard is of pigs; of which others too is said or not known', () => {
    for (const sources of [
      undefined,
      { lard: [] },
      { lard: ['pork'] },
      { lard: ['beef'] },
    ] as const)
      expect(word(['lard'], 'no-pork', sources && { lard: [...sources.lard] })).toBe('contains')
    expect(word(['lard'], 'no-beef')).toBe('unknown')
    expect(word(['lard'], 'no-beef', { lard: ['pork'] })).toBe('free')
    expect(word(['lard'], 'no-beef', { lard: ['pork', 'beef'] })).toBe('contains')
  })

  it('[N33] to who eats fish, a stock or gelatin is as what it comes of', () => {
    for (const trait of ['stock', 'gelatin'] as const) {
      expect(word([trait, 'fish'], 'pescatarian')).toBe('unknown')
      expect(word([trait, 'fish'], 'pescatarian', { [trait]: ['fish'] })).toBe('free')
      for (const one of ['pork', 'beef', 'poultry', 'other-animal'] as const)
        expect(word([trait], 'pescatarian', { [trait]: [one] }), one).toBe('contains')
    }
    expect(word(['animal-rennet'], 'pescatarian', { 'animal-rennet': ['beef'] })).toBe('contains')
  })

  it('[N34] a stock of plants alone is of no animal', () => {
    for (const diet of ['vegetarian', 'vegan', 'pescatarian', 'no-pork', 'no-beef']) {
      expect(word(['stock'], diet, { stock: ['plants'] }), diet).toBe('free')
      const mixed = word(['stock'], diet, { stock: ['plants', 'poultry'] })
      expect(mixed, diet).toBe(diet.startsWith('no-') ? 'free' : 'contains')
    }
    expect(word(['stock', 'gelatin'], 'vegan', { stock: ['plants'] })).toBe('contains')
    expect(word(['gelatin'], 'vegan', { gelatin: ['plants'] })).toBe('contains')
    expect(word(['gelatin'], 'no-pork', { gelatin: ['plants'] })).toBe('unknown')
  })

  it('[N35] a meat is named by flesh, and not by a fish', () => {
    for (const flesh of ['pork', 'beef', 'poultry'] as const)
      expect(word(['meat', flesh], 'no-pork')).toBe(flesh === 'pork' ? 'contains' : 'free')
    for (const other of ['fish', 'shellfish'] as const)
      for (const code of ['no-pork', 'no-beef']) expect(word(['meat', other], code)).toBe('unknown')
  })
})

describe('sources that a label can’t have', () => {
  const problem = (
    traits: Ingredient['traits'],
    sources: Partial<Record<Sourced, Source[]>>,
    declarations: Ingredient['declarations'] = {},
  ) => sourceProblem(US, { traits, sources, declarations })

  it('[M40] are those of what isn’t ticked, of what it never comes of, and of what is declared free', () => {
    expect(problem(['stock'], { stock: ['fish'] })).toBeNull()
    expect(problem(['stock'], { stock: [] })).toBeNull()
    expect(problem(['gelatin'], { stock: ['fish'] })).toEqual({
      why: 'source-of-nothing',
      trait: 'stock',
    })
    expect(problem(null, { stock: [] })).toEqual({ why: 'source-of-nothing', trait: 'stock' })
    for (const trait of SOURCED)
      for (const source of ['fish', 'plants', 'shellfish', 'pork'] as const)
        expect(problem([trait], { [trait]: [source] })).toEqual(
          SOURCES_OF[trait].includes(source) ? null : { why: 'no-such-source', trait, source },
        )
    for (const fish of ['free', 'may-contain'] as const)
      expect(problem(['stock'], { stock: ['fish'] }, { fish })).toEqual({
        why: 'source-not-contained',
        trait: 'stock',
        source: 'fish',
        code: 'fish',
      })
    expect(problem(['stock'], { stock: ['fish'] }, { fish: 'contains' })).toBeNull()
    const crabs = { shellfish: 'free', molluscs: 'contains' } as const
    expect(problem(['stock'], { stock: ['shellfish'] }, crabs)).toBeNull()
    expect(problem(['stock'], { stock: ['shellfish'] }, { ...crabs, molluscs: 'free' })).toEqual({
      why: 'source-not-contained',
      trait: 'stock',
      source: 'shellfish',
      code: 'shellfish',
    })
  })
})
