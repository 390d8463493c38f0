/** What the laws and the trade say, written down a second time: a wrong table of lib is found too. */
import type { StationDocument } from '#lib/station/station-document.ts'

type Groups = Readonly<Record<string, readonly string[]>>

/** Kinds of fish and crustaceans are named on labels; which ones is no law. */
const FISH = ['anchovy', 'bass', 'cod', 'flounder', 'pollock', 'salmon', 'tilapia', 'tuna']
const CRUSTACEANS = ['crab', 'crayfish', 'lobster', 'shrimp']

/**
 * FALCPA (Public Law 108-282, 2004) and the FASTER Act (Public Law 117-11, 2021); the twelve tree
 * nuts of FDA, Questions and Answers Regarding Food Allergens, Edition 5 (January 2025), Appendix I.
 */
const US_NINE: Groups = {
  milk: [],
  egg: [],
  fish: FISH,
  shellfish: CRUSTACEANS,
  'tree-nuts': [
    'walnut',
    'pistachio',
    'pine-nut',
    'pecan',
    'macadamia',
    'heartnut',
    'hazelnut',
    'cashew',
    'california-walnut',
    'brazil-nut',
    'black-walnut',
    'almond',
  ],
  wheat: [],
  peanut: [],
  soy: [],
  sesame: [],
}

/** Regulation (EU) 1169/2011, Annex II, entries 1 to 14 in their order. */
const EU_FOURTEEN: Groups = {
  'gluten-cereals': ['wheat', 'rye', 'barley', 'oats'],
  shellfish: CRUSTACEANS,
  egg: [],
  fish: FISH,
  peanut: [],
  soy: [],
  milk: [],
  'tree-nuts': [
    'almond',
    'hazelnut',
    'walnut',
    'cashew',
    'pecan',
    'brazil-nut',
    'pistachio',
    'macadamia',
  ],
  celery: [],
  mustard: [],
  sesame: [],
  sulphites: [],
  lupin: [],
  molluscs: [],
}

/**
 * What a label has to name by the law of its pack, of what a station asks. US: the nine, and of tree
 * nuts, fish and crustaceans which (Federal Food, Drug, and Cosmetic Act, sections 201(qq) and
 * 403(w)). EU: the fourteen, and of cereals and nuts which (Annex II, "namely"). A group is the law's
 * own where the law knows every kind that the station counts as it.
 */
const NAMED_BY: Readonly<Record<string, readonly string[]>> = {
  'us-9': [...Object.keys(US_NINE), ...FISH, ...CRUSTACEANS, ...(US_NINE['tree-nuts'] ?? [])],
  'eu-14': [
    ...Object.keys(EU_FOURTEEN),
    ...(EU_FOURTEEN['gluten-cereals'] ?? []),
    ...(EU_FOURTEEN['tree-nuts'] ?? []),
  ],
}

export const hasToName = (
  station: Pick<StationDocument, 'allergenSet'>,
  law: string | undefined,
  code: string,
): boolean =>
  law !== undefined &&
  (NAMED_BY[law] ?? []).includes(code) &&
  // A pack of the EU doesn't have to name pine nuts, which are tree nuts to a station of the US.
  !(code === 'tree-nuts' && law === 'eu-14' && station.allergenSet === 'us-9')

/** Whether none of a group listed means none of a kind of it: fish of any kind is fish. */
export const isOneOf = (law: string | undefined, group: string, kind: string): boolean => {
  if (law === undefined) return false
  if (['fish', 'shellfish'].includes(group)) return true
  return (NAMED_BY[law] ?? []).includes(kind)
}

const BESIDE = ['molluscs', 'gluten', 'wheat', 'barley', 'rye', 'oats']

/** 21 CFR 101.91(a)(1). */
export const GLUTEN_GRAINS = ['wheat', 'rye', 'barley']

export const groupsOf = (station: Pick<StationDocument, 'allergenSet'>): Groups =>
  station.allergenSet === 'us-9' ? US_NINE : EU_FOURTEEN

/** Diets of ISO 23662:2021, clauses 4.2 to 4.5; the others are common practice, no source. */
const NEITHER_MEAT_NOR_FISH =
  'meat pork beef poultry fish shellfish stock lard gelatin animal-rennet'.split(' ')
const UNNAMED = ['meat', 'stock', 'gelatin', 'animal-rennet']

/** Lard is swine's: 9 CFR 319.702, from memory. Mixed with another fat it may be of cattle too. */
const UNNAMED_TO_BEEF = [...UNNAMED, 'lard']

export interface Rule {
  readonly never: readonly string[]
  readonly dependsOnTheAnimal: readonly string[]
}

export const DIETS: Readonly<Record<string, Rule>> = {
  vegetarian: { never: NEITHER_MEAT_NOR_FISH, dependsOnTheAnimal: [] },
  'ovo-vegetarian': { never: [...NEITHER_MEAT_NOR_FISH, 'dairy'], dependsOnTheAnimal: [] },
  'lacto-vegetarian': { never: [...NEITHER_MEAT_NOR_FISH, 'egg'], dependsOnTheAnimal: [] },
  vegan: { never: [...NEITHER_MEAT_NOR_FISH, 'dairy', 'egg', 'honey'], dependsOnTheAnimal: [] },
  pescatarian: {
    never: ['meat', 'pork', 'beef', 'poultry', 'lard', 'animal-rennet'],
    dependsOnTheAnimal: ['stock', 'gelatin'],
  },
  'no-pork': { never: ['pork', 'lard'], dependsOnTheAnimal: UNNAMED },
  'no-beef': { never: ['beef'], dependsOnTheAnimal: UNNAMED_TO_BEEF },
  'no-alcohol': { never: ['alcohol'], dependsOnTheAnimal: [] },
}

/** Flesh that is the meat of the same label. */
export const MEATS = ['pork', 'beef', 'poultry']

/** What they come of, where the label names it; each for itself. Common practice, no source. */
export const COMES_OF = {
  stock: ['pork', 'beef', 'poultry', 'fish', 'shellfish', 'other-animal', 'plants'],
  lard: ['pork', 'beef', 'other-animal'],
  gelatin: ['pork', 'beef', 'poultry', 'fish', 'other-animal'],
  'animal-rennet': ['pork', 'beef', 'other-animal'],
} as const

export const CLAIMED = ['halal', 'kosher'] as const

/** Allergens that are what a trait says: milk is dairy. */
export const ALLERGENS_OF_TRAITS: Readonly<Record<string, readonly string[]>> = {
  dairy: ['milk'],
  egg: ['egg'],
  fish: ['fish'],
  shellfish: ['shellfish', 'molluscs'],
}

interface Asked {
  readonly allergenSet: StationDocument['allergenSet']
  readonly ownAllergens: readonly string[]
}

/** Allergens and kinds that a label of this station can declare. */
export const allergenCodes = (station: Asked): readonly string[] => [
  ...new Set([
    ...Object.entries(groupsOf(station)).flatMap(([group, kinds]) => [group, ...kinds]),
    ...BESIDE,
    ...station.ownAllergens,
  ]),
]

/** Everything that a guest can ask for at this station. */
export const askedCodes = (station: Asked): readonly string[] => [
  ...allergenCodes(station),
  ...Object.keys(DIETS),
  ...CLAIMED,
]
