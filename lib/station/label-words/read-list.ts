/** Marks the words of an ingredient list that name allergens: proposals, and never an answer. */

import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { freeChain } from '#lib/station/label-words/free-chain.ts'
import { type Letters, lettersIn } from '#lib/station/label-words/letters.ts'
import { type Match, matchesIn, outdoneBy } from '#lib/station/label-words/matches.ts'
import { statementAt, statementsIn } from '#lib/station/label-words/statements.ts'
import type { WordRow } from '#lib/station/label-words/word-row.ts'

/** `free`: the label prints that it is free of it. `ask`: it may be, and only the reader can say. */
export type Proposal = 'contains' | 'may-contain' | 'free' | 'ask'

export interface Mark {
  /** Where the word stands in the text: from, and up to but without. */
  readonly from: number
  readonly to: number
  readonly word: string
  /** Allergen, kind or grain of the set, or one of the house's own. */
  readonly code: string
  readonly proposes: Proposal
  readonly source: string
}

/** Nuts that a set doesn't tell apart: as its nearest does. From memory. */
const NEAREST: Readonly<Record<string, string>> = {
  'black-walnut': 'walnut',
  'california-walnut': 'walnut',
  heartnut: 'walnut',
}

/** Words that take away what the next one names: "vegan cheese", "dairy-free butter". */
const MADE_LIKE = /(?:^|[^a-z])(?:vegan|plant[- ]?based|plant|imitation|mock|meatless|faux)[- \n]?$/
const ANIMAL: readonly string[] = ['milk', 'egg', 'fish', 'shellfish', 'crab', 'shrimp', 'lobster']
const FREE_BEFORE: readonly (readonly [RegExp, readonly string[]])[] = [
  [/(?:dairy|milk)[- ]free[- \n]?$/, ['milk']],
  [/egg[- ]free[- \n]?$/, ['egg']],
  [/gluten[- ]free[- \n]?$/, ['wheat', 'barley', 'rye', 'gluten', 'gluten-cereals']],
  [/wheat[- ]free[- \n]?$/, ['wheat', 'gluten']],
  [/soy[- ]free[- \n]?$/, ['soy']],
]

/** "milk-free", but not "milk free of hormones" and not "milk, free-range eggs". */
const FREE_AFTER = /^[- ]free(?![a-z])(?![- \n](?:from|of|range|run|choice|flow)(?![a-z]))/
/** A claim that a word follows is of that ingredient: "gluten-free oats". */
const OF_ONE = /^[- ]free[- ](?!and(?![a-z])|or(?![a-z]))[a-z]/

/** "Not milk-free", "99% gluten-free": in the same sentence before it. */
const NOT_SO =
  /(?:^|[^a-z])(?:not|never|isnt|arent|cannot|cant|no[- \n]longer)(?![a-z])[^.!?¶]*$|%[- \n]?$/

const isLikened = (letters: Letters, match: Match, code: string): boolean => {
  const before = letters.text.slice(Math.max(0, match.from - 24), match.from)
  if (ANIMAL.includes(code) && MADE_LIKE.test(before)) return true
  return FREE_BEFORE.some(([found, codes]) => codes.includes(code) && found.test(before))
}

const isInBrackets = (letters: Letters, at: number): boolean => {
  const before = letters.text.slice(0, at)
  return before.split(/[([{]/).length > before.split(/[)\]}]/).length
}

const ownRow = (code: string): WordRow => ({
  codes: [code],
  says: 'names',
  words: [code.replaceAll('-', ' ')],
  source: 'an addition of the house',
  plain: code,
})

/** Where a line goes on from the one before: it begins with a small letter. */
const wraps =
  (text: string, letters: Letters) =>
  (line: number): boolean => {
    const next = letters.starts[line + 1]
    if (next === undefined) return false
    const sign = text.charAt(next)
    return sign !== sign.toUpperCase()
  }

const byPlace = (one: Mark, other: Mark): number =>
  one.from - other.from || one.to - other.to || one.code.localeCompare(other.code)

/**
 * Words that name an allergen of the set, or hold one sometimes, each with what it proposes. A word
 * that only sounds like one isn't marked; where a line break makes it doubtful it is asked.
 * @param text ingredient list, statements and all, as typed or pasted
 * @param own the house's own additions, as codes
 */
export const readList = (
  text: string,
  set: AllergenSetId,
  own: readonly string[] = [],
): readonly Mark[] => {
  const known = declarable({ allergenSet: set, ownAllergens: own })
  const codeIn = (code: string): string | undefined =>
    [code, NEAREST[code] ?? code].find((one) => known.has(one))
  const letters = lettersIn(text)
  const matches = matchesIn(letters, own.map(ownRow))
  const statements = statementsIn(letters.text, wraps(text, letters))

  const proposed = (match: Match, code: string): Proposal | null => {
    const outdone = outdoneBy(match, code, matches)
    const isDoubtful =
      outdone?.row.says === 'despite' && letters.text.slice(outdone.from, outdone.to).includes('\n')
    if (match.row.says === 'despite' || (outdone !== null && !isDoubtful)) return null
    const statement = statementAt(statements, match.from)
    if (match.row.says === 'sometimes' || outdone !== null) return 'ask'
    if (statement?.mode === 'warned' || statement?.mode === 'denied') return 'may-contain'
    const isPlain = match.row.plain === code
    // "Wheat-free" says nothing of gluten, which a word of wheat speaks of beside wheat.
    const declared: Proposal | null = isPlain ? 'free' : match.row.plain ? null : 'ask'
    if (statement) {
      const reach = freeChain(letters.text, statement, matches)
      const chain = reach.find(({ from, to }) => from <= match.from && match.from < to)
      if (chain) return chain.isDeclared ? declared : 'ask'
    }
    const after = letters.text.slice(match.to)
    if (FREE_AFTER.test(after)) {
      const isOfOne =
        OF_ONE.test(after) ||
        isInBrackets(letters, match.from) ||
        NOT_SO.test(letters.text.slice(0, match.from))
      return declared === 'free' && isOfOne ? 'ask' : declared
    }
    const isSuspended = /^-[,;/]|^- ?(?:and|or)[- \n]/.test(after)
    return isSuspended || isLikened(letters, match, code) ? 'ask' : 'contains'
  }

  const marks = matches.flatMap((match) =>
    match.row.codes.flatMap((named): Mark[] => {
      const code = codeIn(named)
      const proposes = code === undefined ? null : proposed(match, named)
      if (code === undefined || proposes === null) return []
      const from = letters.starts[match.from] ?? 0
      const to = letters.ends[match.to - 1] ?? from
      const { source } = match.row
      return [{ from, to, word: text.slice(from, to), code, proposes, source }]
    }),
  )
  const isSame = (one: Mark, other: Mark) =>
    one.from === other.from && one.to === other.to && one.code === other.code
  return marks
    .filter((one, place) => marks.findIndex((other) => isSame(one, other)) === place)
    .toSorted(byPlace)
}
