import { describe, expect, it } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import {
  type Allergens,
  askableAllergens,
  declarable,
  groupOf,
  isKnownNeed,
  kindsOf,
} from '#lib/station/codes/askable.ts'
import { askedCodes } from '#tests/lib/needs/oracle/laws.ts'
import { ingredient, kitchen } from '#tests/support/kitchens.ts'

const US: Allergens = { allergenSet: 'us-9', ownAllergens: [] }
const EU: Allergens = { allergenSet: 'eu-14', ownAllergens: [] }

const groups = ({ allergenSet }: Allergens) =>
  ALLERGEN_SETS[allergenSet].groups.map((one) => one.code).sort()

/** What a station's only component says, made of one ingredient with this name and label. */
const saidOf = (
  code: string,
  declarations: Parameters<typeof ingredient>[1],
  over: Parameters<typeof ingredient>[2] = {},
  allergenSet: Allergens['allergenSet'] = 'us-9',
) => {
  const { station } = kitchen()
  const [template] = station.components
  if (!template) throw new Error('no component')
  const only = { ...ingredient('stuff', {}, over), declarations: declarations ?? {} }
  return declaredBy(
    {
      ...station,
      allergenSet,
      ingredients: [only],
      components: [{ ...template, id: 'dish', ingredients: ['stuff'], recipes: [] }],
    },
    'dish',
    code,
  ).state
}

describe('United States', () => {
  // FALCPA, Public Law 108-282, title II (2004): eight; FASTER Act, Public Law 117-11 (2021): sesame.
  it('[N7] nine major allergens', () => {
    expect(groups(US)).toEqual(
      ['egg', 'fish', 'milk', 'peanut', 'sesame', 'shellfish', 'soy', 'tree-nuts', 'wheat'].sort(),
    )
  })

  // FDA, Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), Appendix I.
  it('[N7] twelve tree nuts, and none that the 2025 list dropped', () => {
    expect([...kindsOf(US, 'tree-nuts')].sort()).toEqual([
      'almond',
      'black-walnut',
      'brazil-nut',
      'california-walnut',
      'cashew',
      'hazelnut',
      'heartnut',
      'macadamia',
      'pecan',
      'pine-nut',
      'pistachio',
      'walnut',
    ])
    for (const dropped of [
      'beech-nut',
      'butternut',
      'chestnut',
      'chinquapin',
      'coconut',
      'cola-nut',
      'ginkgo',
      'hickory',
      'palm',
      'pili',
      'shea',
    ])
      expect(isKnownNeed(US, dropped), dropped).toBe(false)
    expect(isKnownNeed({ ...US, ownAllergens: ['coconut'] }, 'coconut')).toBe(true)
  })

  // The same law: crustacean shellfish, not molluscs; no gluten, mustard, celery, lupin, sulphites.
  it('[N7] molluscs and gluten are askable although they are no major allergens', () => {
    for (const code of ['molluscs', 'gluten', 'barley', 'rye', 'oats']) {
      expect(groups(US)).not.toContain(code)
      expect(groupOf(US, code)).toBeNull()
      expect(askableAllergens(US)).toContain(code)
    }
    for (const code of ['mustard', 'celery', 'lupin', 'sulphites'])
      expect(isKnownNeed(US, code), code).toBe(false)
  })

  // FDA Food Code 2022, 1-201.10(B), "Major food allergen" (2)(a): highly refined oil is none.
  it('[N1] a highly refined oil is free where that is declared; its name says nothing', () => {
    const name = 'Soybean oil, highly refined'
    expect(saidOf('soy', { soy: 'free' }, { name })).toBe('free')
    expect(saidOf('soy', {}, { name })).toBe('unknown')
    expect(saidOf('soy', { soy: 'contains' }, { name })).toBe('contains')
  })
})

describe('European Union', () => {
  // Regulation (EU) 1169/2011, Annex II, entries 1 to 14.
  it('[N7] fourteen allergens', () => {
    expect(groups(EU)).toEqual(
      [
        'celery',
        'egg',
        'fish',
        'gluten-cereals',
        'lupin',
        'milk',
        'molluscs',
        'mustard',
        'peanut',
        'sesame',
        'shellfish',
        'soy',
        'sulphites',
        'tree-nuts',
      ].sort(),
    )
  })

  // Annex II, entries 1 and 8.
  it('[N7] four cereals with gluten and eight nuts', () => {
    expect([...kindsOf(EU, 'gluten-cereals')].sort()).toEqual(['barley', 'oats', 'rye', 'wheat'])
    expect([...kindsOf(EU, 'tree-nuts')].sort()).toEqual([
      'almond',
      'brazil-nut',
      'cashew',
      'hazelnut',
      'macadamia',
      'pecan',
      'pistachio',
      'walnut',
    ])
  })
})

describe('where the two differ', () => {
  // Annex II entry 1 names oats, barley and rye; FALCPA names wheat alone.
  it('[N7] wheat is one of the nine, but a kind among the fourteen; oats are in one only', () => {
    expect(groups(US)).toContain('wheat')
    expect(groupOf(EU, 'wheat')).toBe('gluten-cereals')
    for (const grain of ['oats', 'barley', 'rye']) {
      expect(groupOf(EU, grain)).toBe('gluten-cereals')
      expect(groupOf(US, grain)).toBeNull()
    }
    expect(saidOf('gluten-cereals', { oats: 'contains' }, {}, 'eu-14')).toBe('contains')
  })

  // FDA Appendix I has the pine nut; Annex II entry 8 doesn't, nor the walnuts that it names apart.
  it('[N7] the pine nut is a tree nut in the United States only', () => {
    for (const nut of ['pine-nut', 'black-walnut', 'heartnut', 'california-walnut']) {
      expect(groupOf(US, nut)).toBe('tree-nuts')
      expect(isKnownNeed(EU, nut), nut).toBe(false)
    }
    expect(saidOf('tree-nuts', { 'pine-nut': 'contains' })).toBe('contains')
  })

  it('[N7] what can be asked is what the laws say, written down a second time', () => {
    for (const set of [US, EU, { ...US, ownAllergens: ['kiwi'] }]) {
      const codes = askedCodes(set)
      expect(codes.filter((code) => !isKnownNeed(set, code))).toEqual([])
      expect([...declarable(set)].filter((code) => !codes.includes(code))).toEqual([])
    }
  })
})

describe('gluten', () => {
  // 21 CFR 101.91(a)(1): wheat, rye, barley and their crosses; oats are not among them.
  it.each(['wheat', 'barley', 'rye'])('[N10] %s is gluten', (grain) => {
    expect(saidOf('gluten', { [grain]: 'contains' })).toBe('contains')
    expect(saidOf('gluten', { [grain]: 'contains' }, {}, 'eu-14')).toBe('contains')
  })

  it('[N10] a gluten grain that the label does not name, such as triticale, is gluten', () => {
    expect(saidOf('gluten', {}, { traits: ['gluten-grain'] })).toBe('contains')
  })

  it('[N10] oats are no gluten grain, and not free of it either', () => {
    expect(saidOf('gluten', { oats: 'contains' })).toBe('unknown')
  })

  // 21 CFR 101.91(a)(3): under 20 ppm, where the label says so; free of wheat is another thing.
  it('[N10] free of gluten only where that is declared', () => {
    const noGrain = { wheat: 'free', barley: 'free', rye: 'free', oats: 'free' } as const
    expect(saidOf('gluten', noGrain)).toBe('unknown')
    expect(saidOf('gluten', { gluten: 'free' })).toBe('free')
    expect(saidOf('wheat', { gluten: 'free' })).toBe('unknown')
    expect(saidOf('gluten', { 'gluten-cereals': 'free' }, {}, 'eu-14')).toBe('unknown')
  })

  // 21 CFR 101.91(b)(3): "wheat" may stand beside "gluten-free" with an explanation; else misbranded.
  it('[N30] what is declared free of gluten contains wheat with the statement only', () => {
    const wheat = { wheat: 'contains', gluten: 'free' } as const
    expect(saidOf('gluten', wheat)).toBe('contains')
    expect(saidOf('gluten', wheat, { glutenStatement: true })).toBe('free')
    expect(saidOf('wheat', wheat, { glutenStatement: true })).toBe('contains')
  })

  // The same paragraph speaks of the word "wheat" alone.
  it.each(['barley', 'rye'])('[N31] no statement makes %s free of gluten', (grain) => {
    const said = { [grain]: 'contains', gluten: 'free' } as const
    expect(saidOf('gluten', said, { glutenStatement: true })).toBe('contains')
  })
})
