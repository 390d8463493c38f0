/** Units of a recipe card, exactly, and the words that cards in English write them with. */
import { dividedBy, type Rational, ratio, times } from '#lib/recipes/rational.ts'

/** 231 cubic inches of 2.54 cm: NIST Handbook 44, Appendix C. */
const GALLON_ML = ratio(3_785_411_784n, 1_000_000n)
const share = (parts: number): Rational => dividedBy(GALLON_ML, ratio(parts))
/** 453.59237 g: NIST Handbook 44, Appendix C. */
const POUND_G = ratio(45_359_237n, 100_000n)

export const US_ML = {
  gal: GALLON_ML,
  qt: share(4),
  pt: share(8),
  cup: share(16),
  flOz: share(128),
  tbsp: share(256),
  tsp: share(768),
} as const

export const US_G = { lb: POUND_G, oz: dividedBy(POUND_G, ratio(16)) } as const

/** A level scoop numbered n is a quart shared by n: ICN Basics at a Glance. */
export const scoopMl = (number: number): Rational => dividedBy(US_ML.qt, ratio(number))

/**
 * `us` or `metric`: the way it is shown again. `rough`: custom only, without a legal definition
 * (a dash of salt weighs a fifteenth of its teaspoon by USDA, an eighth by custom).
 */
export interface Unit {
  readonly kind: 'volume' | 'weight'
  readonly size: Rational
  readonly written: 'us' | 'metric' | 'rough'
}

const us = (size: Rational): Unit => ({ kind: 'volume', size, written: 'us' })
const usWeight = (size: Rational): Unit => ({ kind: 'weight', size, written: 'us' })
const ml = (size: Rational): Unit => ({ kind: 'volume', size, written: 'metric' })
const g = (size: Rational): Unit => ({ kind: 'weight', size, written: 'metric' })
/** Dash and pinch, 1/8 and 1/16 tsp: custom, no legal definition. */
const rough = (under: number): Unit => ({
  kind: 'volume',
  size: times(US_ML.tsp, ratio(1, under)),
  written: 'rough',
})

const WORDS: readonly (readonly [Unit, string])[] = [
  [us(US_ML.gal), 'gal gals gallon gallons'],
  [us(US_ML.qt), 'qt qts quart quarts'],
  [us(US_ML.pt), 'pt pts pint pints'],
  [us(US_ML.cup), 'c cup cups'],
  [us(US_ML.flOz), 'floz'],
  [us(US_ML.tbsp), 'T tb tbs tbsp tbsps tablespoon tablespoons'],
  [us(US_ML.tsp), 't tsp tsps teaspoon teaspoons'],
  [usWeight(US_G.lb), 'lb lbs pound pounds'],
  [usWeight(US_G.oz), 'oz ounce ounces'],
  [ml(ratio(1)), 'ml milliliter milliliters millilitre millilitres'],
  [ml(ratio(10)), 'cl'],
  [ml(ratio(100)), 'dl'],
  [ml(ratio(1000)), 'l liter liters litre litres'],
  [g(ratio(1)), 'g gram grams gramme grammes'],
  [g(ratio(1, 1000)), 'mg'],
  [g(ratio(1000)), 'kg kilo kilos kilogram kilograms'],
  [rough(8), 'dash dashes'],
  [rough(16), 'pinch pinches'],
]

const BY_WORD = new Map(
  WORDS.flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
)

/** The unit that a word names; T is a tablespoon and t a teaspoon. null for any other word. */
export const unitOf = (word: string): Unit | null =>
  BY_WORD.get(word) ?? BY_WORD.get(word.toLowerCase()) ?? null

/**
 * What is counted. `whole`: shown in whole ones; the others are cut, and shown in quarters.
 * An egg is rounded to the nearest, a piece up, so that nobody goes short of one.
 */
export const COUNTED = {
  piece: 'each ea piece pieces pc pcs ct count',
  egg: 'egg eggs',
  slice: 'slice slices',
  clove: 'clove cloves',
  head: 'head heads',
  bunch: 'bunch bunches',
  stalk: 'stalk stalks rib ribs',
  leaf: 'leaf leaves',
  sheet: 'sheet sheets',
  stick: 'stick sticks',
  loaf: 'loaf loaves',
  pack: 'pack packs packet packets bag bags box boxes package packages pkg pkgs jar jars bottle bottles tub tubs',
  case: 'case cases cs',
} as const

export type Counted = keyof typeof COUNTED

const CUT: readonly Counted[] = ['head', 'bunch', 'stick', 'loaf', 'pack', 'case']

export const isCut = (counted: Counted): boolean => CUT.includes(counted)

const isCounted = (name: string): name is Counted => name in COUNTED

/** What a word counts; null for a word that counts nothing. */
export const countedOf = (word: string): Counted | null =>
  Object.keys(COUNTED)
    .filter(isCounted)
    .find((name) => COUNTED[name].split(' ').includes(word.toLowerCase())) ?? null
