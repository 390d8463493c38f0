/** Diets as rules over traits. What a label doesn't say is unknown, never inferred. */
export const TRAITS = [
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
  'egg',
  'dairy',
  'honey',
  'alcohol',
  'gluten-grain',
] as const

export type Trait = (typeof TRAITS)[number]

/** Traits of an animal or a plant that a label names with the trait itself, or not at all. */
export const SOURCED = ['stock', 'lard', 'gelatin', 'animal-rennet'] as const
export type Sourced = (typeof SOURCED)[number]

export const SOURCES = [
  'pork',
  'beef',
  'poultry',
  'fish',
  'shellfish',
  'other-animal',
  'plants',
] as const
export type Source = (typeof SOURCES)[number]

/**
 * What each can come of: common practice, no source. A rennet of plants or microbes is no animal
 * rennet, and a gelatin of plants no gelatin: neither is ticked.
 */
export const SOURCES_OF: Readonly<Record<Sourced, readonly Source[]>> = {
  stock: SOURCES,
  lard: ['pork', 'beef', 'other-animal'],
  gelatin: ['pork', 'beef', 'poultry', 'fish', 'other-animal'],
  'animal-rennet': ['pork', 'beef', 'other-animal'],
}

/** Declared on the ingredient by its label or certificate, or not known. */
export const CLAIMS = ['halal', 'kosher'] as const
export type Claim = (typeof CLAIMS)[number]

export const DIETS = [
  'vegetarian',
  'ovo-vegetarian',
  'lacto-vegetarian',
  'vegan',
  'pescatarian',
  'no-pork',
  'no-beef',
  'no-alcohol',
] as const

export type Diet = (typeof DIETS)[number]

interface DietRule {
  readonly out: readonly Trait[]
  /** Of an animal that the trait doesn't name: it may be one that the diet leaves out. */
  readonly unclear: readonly Trait[]
}

const FLESH: readonly Trait[] = ['meat', 'pork', 'beef', 'poultry', 'lard']
const SEA: readonly Trait[] = ['fish', 'shellfish']
const FROM_ANIMALS: readonly Trait[] = ['stock', 'gelatin', 'animal-rennet']
const VEGETARIAN: readonly Trait[] = [...FLESH, ...SEA, ...FROM_ANIMALS]

/**
 * ISO 23662:2021, clauses 4.2 to 4.5: vegetarian with milk and egg (honey passes), with egg only,
 * with milk only, and vegan. The others are common practice, no source. A stock or a gelatin
 * whose animal isn't named is unclear to pescatarian, and so is any flesh or rennet to no pork and
 * no beef. Lard is the fat of swine (9 CFR 319.702, from memory), so that no pork leaves it out; what
 * else is in it is unclear to no beef.
 */
export const DIET_RULES: Readonly<Record<Diet, DietRule>> = {
  vegetarian: { out: VEGETARIAN, unclear: [] },
  'ovo-vegetarian': { out: [...VEGETARIAN, 'dairy'], unclear: [] },
  'lacto-vegetarian': { out: [...VEGETARIAN, 'egg'], unclear: [] },
  vegan: { out: [...VEGETARIAN, 'egg', 'dairy', 'honey'], unclear: [] },
  pescatarian: { out: [...FLESH, 'animal-rennet'], unclear: ['stock', 'gelatin'] },
  'no-pork': { out: ['pork', 'lard'], unclear: ['meat', 'stock', 'gelatin', 'animal-rennet'] },
  'no-beef': { out: ['beef'], unclear: ['meat', ...SOURCED] },
  'no-alcohol': { out: ['alcohol'], unclear: [] },
}

/** Traits that name the meat that is ticked beside them. */
export const NAMES_THE_MEAT: readonly Trait[] = ['pork', 'beef', 'poultry']

export const isDietCode = (code: string): boolean =>
  DIETS.some((one) => one === code) || CLAIMS.some((one) => one === code)

/** Allergens that a trait brings with it: what may contain the one may contain the other. */
export const ALLERGENS_OF: Readonly<Partial<Record<Trait, readonly string[]>>> = {
  fish: ['fish'],
  shellfish: ['shellfish', 'molluscs'],
  egg: ['egg'],
  dairy: ['milk'],
}
