/** Allergens that laws name, as data. A station adds its own. */
export interface AllergenGroup {
  readonly code: string
  /** Kinds that a guest can keep away from alone. */
  readonly kinds: readonly string[]
}

export const ALLERGEN_SET_IDS = ['us-9', 'eu-14'] as const
export type AllergenSetId = (typeof ALLERGEN_SET_IDS)[number]

export interface AllergenSet {
  readonly source: string
  readonly groups: readonly AllergenGroup[]
}

const group = (code: string, kinds: readonly string[] = []): AllergenGroup => ({ code, kinds })

/** FDA, Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), Appendix I. */
export const US_TREE_NUTS = [
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
] as const

/** Regulation (EU) 1169/2011, Annex II, entry 8. */
export const EU_NUTS = [
  'almond',
  'hazelnut',
  'walnut',
  'cashew',
  'pecan',
  'brazil-nut',
  'pistachio',
  'macadamia',
] as const

/** Kinds are named on labels; these are common ones, from memory. A station adds others. */
const FISH = ['anchovy', 'bass', 'cod', 'flounder', 'pollock', 'salmon', 'tilapia', 'tuna']
const CRUSTACEANS = ['crab', 'crayfish', 'lobster', 'shrimp']

export const ALLERGEN_SETS: Readonly<Record<AllergenSetId, AllergenSet>> = {
  'us-9': {
    source: 'FALCPA 2004, and the FASTER Act 2021 (sesame from 2023-01-01)',
    groups: [
      group('milk'),
      group('egg'),
      group('fish', FISH),
      group('shellfish', CRUSTACEANS),
      group('tree-nuts', US_TREE_NUTS),
      group('wheat'),
      group('peanut'),
      group('soy'),
      group('sesame'),
    ],
  },
  'eu-14': {
    source: 'Regulation (EU) 1169/2011, Annex II',
    groups: [
      group('gluten-cereals', ['wheat', 'rye', 'barley', 'oats']),
      group('shellfish', CRUSTACEANS),
      group('egg'),
      group('fish', FISH),
      group('peanut'),
      group('soy'),
      group('milk'),
      group('tree-nuts', EU_NUTS),
      group('celery'),
      group('mustard'),
      group('sesame'),
      group('sulphites'),
      group('lupin'),
      group('molluscs'),
    ],
  },
}

/** Askable whatever the set: molluscs, and gluten with its grains (21 CFR 101.91; oats apart). */
export const ALWAYS_ASKABLE = ['molluscs', 'gluten', 'wheat', 'barley', 'rye', 'oats'] as const

/** Grains whose presence is gluten: 21 CFR 101.91(a)(1). Oats are not among them. */
export const GLUTEN_GRAINS = ['wheat', 'barley', 'rye'] as const
