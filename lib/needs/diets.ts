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
  /** Of an animal that the trait doesn't name: it may be the one that the diet leaves out. */
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
 * no beef.
 */
export const DIET_RULES: Readonly<Record<Diet, DietRule>> = {
  vegetarian: { out: VEGETARIAN, unclear: [] },
  'ovo-vegetarian': { out: [...VEGETARIAN, 'dairy'], unclear: [] },
  'lacto-vegetarian': { out: [...VEGETARIAN, 'egg'], unclear: [] },
  vegan: { out: [...VEGETARIAN, 'egg', 'dairy', 'honey'], unclear: [] },
  pescatarian: { out: [...FLESH, 'animal-rennet'], unclear: ['stock', 'gelatin'] },
  'no-pork': { out: ['pork', 'lard'], unclear: ['meat', 'stock', 'gelatin', 'animal-rennet'] },
  'no-beef': { out: ['beef'], unclear: ['meat', 'stock', 'gelatin', 'animal-rennet'] },
  'no-alcohol': { out: ['alcohol'], unclear: [] },
}

/** Traits that name the animal, so that an unclear one beside them is no longer unclear. */
export const NAMES_THE_ANIMAL: readonly Trait[] = ['pork', 'beef', 'poultry', 'fish', 'shellfish']

export const isDietCode = (code: string): boolean =>
  DIETS.some((one) => one === code) || CLAIMS.some((one) => one === code)

/** Allergens that a trait brings with it: what may contain the one may contain the other. */
export const ALLERGENS_OF: Readonly<Partial<Record<Trait, readonly string[]>>> = {
  fish: ['fish'],
  shellfish: ['shellfish', 'molluscs'],
  egg: ['egg'],
  dairy: ['milk'],
}
