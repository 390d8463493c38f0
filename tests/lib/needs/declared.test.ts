import { describe, expect, it } from 'vitest'
import { declaredBy, declaredIn } from '#lib/needs/declared.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import { askableAllergens, declarable, isKnownNeed } from '#lib/station/codes/askable.ts'
import { TRAITS } from '#lib/station/codes/diets.ts'
import type { Declaration, Ingredient } from '#lib/station/station-document.ts'
import { ingredient, kitchen } from '#tests/support/kitchens.ts'

const US: Allergens = { allergenSet: 'us-9', ownAllergens: [] }
const EU: Allergens = { allergenSet: 'eu-14', ownAllergens: [] }

const mustard: Ingredient = {
  id: 'mustard',
  name: 'Mustard',
  declarations: { milk: 'free', egg: 'contains', soy: 'may-contain', wheat: 'unknown' },
  traits: ['egg'],
  claims: {},
  readOn: '2026-11-20',
  readBy: 'lead',
}

const word = (
  declarations: Ingredient['declarations'],
  code: string,
  station: Allergens = US,
): Declaration => declaredIn(station, { ...mustard, declarations, traits: [] }, code)

const ofTraits = (traits: Ingredient['traits'], code: string): Declaration =>
  declaredIn(US, ingredient('one', {}, { traits }), code)

describe('what an ingredient declares', () => {
  it('[N1] is what its label says, and unknown where it says nothing', () => {
    expect(declaredIn(US, mustard, 'milk')).toBe('free')
    expect(declaredIn(US, mustard, 'egg')).toBe('contains')
    expect(declaredIn(US, mustard, 'soy')).toBe('may-contain')
    expect(declaredIn(US, mustard, 'wheat')).toBe('unknown')
    expect(declaredIn(US, mustard, 'sesame')).toBe('unknown')
    expect(declaredIn(US, mustard, 'nothing-that-is-known')).toBe('unknown')
  })

  it('[N2] is unknown while nobody has read the label, except what it is said to contain', () => {
    const unread = { ...mustard, readOn: null }
    expect(declaredIn(US, unread, 'milk')).toBe('unknown')
    expect(declaredIn(US, unread, 'soy')).toBe('unknown')
    expect(declaredIn(US, unread, 'egg')).toBe('contains')
    expect(declaredIn(US, unread, 'vegetarian')).toBe('unknown')
    expect(declaredIn(US, unread, 'vegan')).toBe('contains')
  })

  it('[N3] is unknown to a diet where nobody has read what it is made of', () => {
    const unread = { ...mustard, traits: null }
    expect(declaredIn(US, unread, 'vegetarian')).toBe('unknown')
    expect(declaredIn(US, unread, 'vegan')).toBe('contains')
    expect(declaredIn(US, unread, 'egg')).toBe('contains')
    expect(ofTraits(null, 'vegetarian')).toBe('unknown')
    expect(ofTraits([], 'vegetarian')).toBe('free')
  })

  it.each(TRAITS)('[N4] of %s: a diet leaves it out or not', (trait) => {
    const passesAll = ['alcohol', 'gluten-grain']
    const said = (code: string) => ofTraits([trait], code)
    const passes = (...also: string[]) =>
      [...passesAll, ...also].includes(trait) ? 'free' : 'contains'
    expect(said('vegetarian')).toBe(passes('egg', 'dairy', 'honey'))
    expect(said('ovo-vegetarian')).toBe(passes('egg', 'honey'))
    expect(said('lacto-vegetarian')).toBe(passes('dairy', 'honey'))
    expect(said('vegan')).toBe(passes())
    expect(said('no-alcohol')).toBe(trait === 'alcohol' ? 'contains' : 'free')
  })

  it('[N8] of a kind follows its group only where that is declared free or warns', () => {
    expect(word({ 'tree-nuts': 'contains', almond: 'contains', walnut: 'free' }, 'walnut')).toBe(
      'free',
    )
    expect(word({ 'tree-nuts': 'contains', almond: 'contains' }, 'walnut')).toBe('unknown')
    expect(word({ 'tree-nuts': 'contains', almond: 'contains' }, 'almond')).toBe('contains')
    expect(word({ 'tree-nuts': 'free' }, 'walnut')).toBe('free')
    expect(word({ 'tree-nuts': 'may-contain' }, 'walnut')).toBe('may-contain')
    expect(word({}, 'walnut')).toBe('unknown')
    expect(word({ 'tree-nuts': 'may-contain', almond: 'contains' }, 'walnut')).toBe('unknown')
  })

  it('[N9] of a group is contained where one of its kinds is, and never free by kinds alone', () => {
    expect(word({ almond: 'contains' }, 'tree-nuts')).toBe('contains')
    expect(word({ 'tree-nuts': 'may-contain', almond: 'contains' }, 'tree-nuts')).toBe('contains')
    expect(word({ almond: 'free', walnut: 'free' }, 'tree-nuts')).toBe('unknown')
    expect(word({ almond: 'may-contain' }, 'tree-nuts')).toBe('unknown')
  })

  it('[N10] of gluten is free only where that is declared, and a gluten grain is gluten', () => {
    expect(word({ wheat: 'free' }, 'gluten')).toBe('unknown')
    expect(word({ wheat: 'free', barley: 'free', rye: 'free' }, 'gluten')).toBe('unknown')
    expect(word({ gluten: 'free' }, 'gluten')).toBe('free')
    for (const grain of ['wheat', 'barley', 'rye'])
      expect(word({ [grain]: 'contains' }, 'gluten')).toBe('contains')
    expect(word({ oats: 'contains' }, 'gluten')).toBe('unknown')
    expect(word({ wheat: 'contains', gluten: 'free' }, 'wheat')).toBe('contains')
    const trait = { ...mustard, traits: ['gluten-grain' as const] }
    expect(declaredIn(US, trait, 'gluten')).toBe('contains')
    expect(word({ 'gluten-cereals': 'free' }, 'gluten', EU)).toBe('unknown')
    expect(word({ rye: 'contains' }, 'gluten', EU)).toBe('contains')
  })

  it('[N10] of gluten stays as declared where no cereals are contained', () => {
    for (const cereals of ['free', 'may-contain', 'unknown'] as const)
      expect(word({ 'gluten-cereals': cereals, gluten: 'free' }, 'gluten', EU), cereals).toBe(
        'free',
      )
    expect(word({ 'gluten-cereals': 'contains', gluten: 'free' }, 'gluten', EU)).toBe('unknown')
  })

  it('[N11] of an animal that nobody named is unknown to who leaves out pork or beef', () => {
    for (const trait of ['stock', 'gelatin', 'animal-rennet', 'meat'] as const)
      for (const code of ['no-pork', 'no-beef']) {
        expect(ofTraits([trait], code)).toBe('unknown')
        expect(ofTraits([trait, 'poultry'], code)).toBe(trait === 'meat' ? 'free' : 'unknown')
      }
    expect(ofTraits(['gelatin', 'pork'], 'no-pork')).toBe('contains')
    expect(ofTraits(['gelatin', 'pork'], 'no-beef')).toBe('unknown')
    expect(ofTraits(['lard'], 'no-pork')).toBe('contains')
    expect(ofTraits(['stock'], 'pescatarian')).toBe('unknown')
    expect(ofTraits(['stock', 'fish'], 'pescatarian')).toBe('unknown')
    expect(ofTraits(['poultry'], 'pescatarian')).toBe('contains')
  })

  it('[N12] to a diet takes in what its allergens say', () => {
    const said = (declarations: Ingredient['declarations'], code: string) =>
      declaredIn(US, ingredient('one', declarations), code)
    expect(said({ milk: 'may-contain' }, 'vegan')).toBe('may-contain')
    expect(said({ milk: 'may-contain' }, 'vegetarian')).toBe('free')
    expect(said({ fish: 'contains' }, 'vegetarian')).toBe('contains')
    expect(said({ molluscs: 'contains' }, 'vegan')).toBe('contains')
    expect(said({ milk: 'unknown' }, 'vegan')).toBe('unknown')
    expect(said({ milk: 'unknown' }, 'ovo-vegetarian')).toBe('unknown')
    expect(said({ milk: 'unknown' }, 'vegetarian')).toBe('free')
    expect(said({ molluscs: 'unknown' }, 'vegan')).toBe('free')
    const european = { allergenSet: 'eu-14', ownAllergens: [] } as const
    const silent = { ...ingredient('one'), declarations: {} }
    expect(declaredIn(US, silent, 'vegan')).toBe('unknown')
    expect(declaredIn(european, ingredient('one', { molluscs: 'unknown' }), 'vegan')).toBe(
      'unknown',
    )
    expect(said({ fish: 'may-contain', salmon: 'may-contain' }, 'vegetarian')).toBe('may-contain')
    expect(said({ fish: 'unknown', salmon: 'may-contain' }, 'vegetarian')).toBe('unknown')
    expect(said({ fish: 'unknown', salmon: 'contains' }, 'vegetarian')).toBe('contains')
  })

  it('[N13] of halal and kosher is known only where it is declared', () => {
    const plain = ingredient('one')
    for (const claim of ['halal', 'kosher'] as const) {
      expect(declaredIn(US, plain, claim)).toBe('unknown')
      expect(declaredIn(US, { ...plain, claims: { [claim]: 'declared' } }, claim)).toBe('free')
      expect(declaredIn(US, { ...plain, claims: { [claim]: 'not' } }, claim)).toBe('contains')
      const unread = { ...plain, readOn: null, claims: { [claim]: 'declared' as const } }
      expect(declaredIn(US, unread, claim)).toBe('unknown')
    }
  })
})

describe('what a component declares', () => {
  const made = (ingredients: readonly Ingredient[], over: object = {}) => {
    const { station } = kitchen()
    return {
      ...station,
      ingredients: [...ingredients],
      components: station.components.map((one) => ({
        ...one,
        ingredients: ingredients.map(({ id }) => id),
        ...over,
      })),
    }
  }
  const saying = (id: string, milk: Declaration) => ingredient(id, { milk })

  it('[N5] is the worst of its ingredients: contains, unknown, may contain, free', () => {
    const order = ['contains', 'unknown', 'may-contain', 'free'] as const
    for (const [index, worse] of order.entries())
      for (const better of order.slice(index + 1))
        for (const pair of [
          [saying('one', worse), saying('two', better)],
          [saying('two', better), saying('one', worse)],
        ])
          expect(declaredBy(made(pair), 'leaf', 'milk')).toEqual({ state: worse, through: ['one'] })
  })

  it('[N5] goes through recipes and the recipes in them, and names the way', () => {
    const station = {
      ...made([saying('salt', 'free'), saying('butter', 'contains')], {
        ingredients: ['salt'],
        recipes: ['filling'],
      }),
      recipes: [
        { id: 'filling', name: 'Filling', ingredients: ['salt'], recipes: ['roux'] },
        { id: 'roux', name: 'Roux', ingredients: ['butter'], recipes: [] },
      ],
    }
    expect(declaredBy(station, 'leaf', 'milk')).toEqual({
      state: 'contains',
      through: ['filling', 'roux', 'butter'],
    })
  })

  it('[N5] names the first of those that are as bad', () => {
    const two = made([
      saying('salt', 'free'),
      saying('one', 'may-contain'),
      saying('two', 'may-contain'),
    ])
    expect(declaredBy(two, 'leaf', 'milk')).toEqual({ state: 'may-contain', through: ['one'] })
    const worse = made([saying('one', 'may-contain'), saying('two', 'unknown')])
    expect(declaredBy(worse, 'leaf', 'milk')).toEqual({ state: 'unknown', through: ['two'] })
  })

  it('[N6] is free only where every ingredient is declared free', () => {
    const free = made([saying('one', 'free'), saying('two', 'free')])
    expect(declaredBy(free, 'leaf', 'milk')).toEqual({ state: 'free', through: [] })
    const lost = { ...free, ingredients: free.ingredients.slice(1) }
    expect(declaredBy(lost, 'leaf', 'milk')).toEqual({ state: 'unknown', through: ['one'] })
    expect(declaredBy(made([], {}), 'leaf', 'milk').state).toBe('unknown')
  })

  it('fails on a recipe that contains itself, or isn’t there', () => {
    const round = {
      ...made([saying('salt', 'free')], { recipes: ['a'] }),
      recipes: [
        { id: 'a', name: 'A', ingredients: [], recipes: ['b'] },
        { id: 'b', name: 'B', ingredients: [], recipes: ['a'] },
      ],
    }
    expect(() => declaredBy(round, 'leaf', 'milk')).toThrow('contains itself')
    expect(() => declaredBy({ ...round, recipes: [] }, 'leaf', 'milk')).toThrow('no recipe a')
    expect(() => declaredBy(round, 'nothing', 'milk')).toThrow('no component nothing')
  })
})

describe('what can be asked', () => {
  it('[N7] is the station’s set with its kinds, its own additions, and gluten and molluscs beside', () => {
    expect(askableAllergens(US)).toEqual([
      ...['milk', 'egg', 'fish', 'shellfish', 'tree-nuts', 'wheat', 'peanut', 'soy', 'sesame'],
      ...['molluscs', 'gluten', 'barley', 'rye', 'oats'],
    ])
    expect(askableAllergens({ ...EU, ownAllergens: ['kiwi'] })).toEqual([
      ...['gluten-cereals', 'shellfish', 'egg', 'fish', 'peanut', 'soy', 'milk', 'tree-nuts'],
      ...['celery', 'mustard', 'sesame', 'sulphites', 'lupin', 'molluscs', 'gluten', 'kiwi'],
    ])
    for (const code of ['almond', 'shrimp', 'oats']) expect(declarable(US).has(code)).toBe(true)
    for (const code of ['vegan', 'halal', 'no-pork', 'gluten', 'walnut'])
      expect(isKnownNeed(EU, code)).toBe(true)
    for (const code of ['kiwi', 'pine-nut', 'nothing']) expect(isKnownNeed(EU, code)).toBe(false)
  })
})
