/** How words of ingredient lists are written down as data. */

/** `names`: it is that food. `sometimes`: ask. `despite`: it isn't, whatever it is called. */
export type Says = 'names' | 'sometimes' | 'despite'

export interface WordRow {
  /** Allergens, kinds of one, grains or gluten that the words speak of. */
  readonly codes: readonly string[]
  readonly says: Says
  /** Lower case, one space between words, without accents and apostrophes; plurals are found too. */
  readonly words: readonly string[]
  readonly source: string
  /** The one code that the words name by its own name, so that "free from" them can declare it. */
  readonly plain?: string
}

/** @param list words with commas between them */
const wordsOf = (list: string): readonly string[] =>
  list
    .split(',')
    .map((one) => one.trim().replace(/\s+/g, ' '))
    .filter((one) => one !== '')

const rowsOf =
  (says: Says) =>
  (codes: string, list: string, source: string): WordRow => ({
    codes: codes.split(' '),
    says,
    words: wordsOf(list),
    source,
  })

export const names = rowsOf('names')
export const sometimes = rowsOf('sometimes')
export const despite = rowsOf('despite')

/** The name that a law uses itself: it comes first of its codes. */
export const plainly = (codes: string, list: string, source: string): WordRow => {
  const row = names(codes, list, source)
  return { ...row, plain: row.codes[0] ?? codes }
}

/** A reading guide is a reason to ask and no proof; some words stand in one of them only. */
export const GUIDE = {
  milk: 'reading guides: an allergy network’s “How to read a label”, and milk lists after J. Joneja',
  egg: 'reading guides: an allergy network’s list, and a list of egg words for vegans',
  wheat: 'reading guide: an allergy network’s list of wheat words',
  soy: 'reading guide: an allergy network’s list of soy words',
  peanut: 'reading guide: an allergy network’s “How to read a label”',
  sesame: 'reading guide: a sesame-free diet',
  shellfish: 'reading guide: an allergy network’s list of shellfish words',
  nuts: 'reading guide: an allergy network’s “How to read a label”',
} as const

export const FALCPA = 'FALCPA 2004, FD&C Act § 201(qq), and the FASTER Act 2021'
export const FDA_NUTS = 'FDA, Q&A Regarding Food Allergens, Edition 5 (2025), Appendix I'
export const FDA_DROPPED =
  'FDA, Q&A Regarding Food Allergens, Edition 5 (2025): no longer a tree nut'
export const GLUTEN_RULE = '21 CFR 101.91(a)(1)'
export const ANNEX_II = 'Regulation (EU) 1169/2011, Annex II'
export const MEMORY = 'from memory'
