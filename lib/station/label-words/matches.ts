/** Finds the words of the data in a text, the longest of each code. */
import { ALL_WORDS } from '#lib/station/label-words/all-words.ts'
import type { Letters } from '#lib/station/label-words/letters.ts'
import type { WordRow } from '#lib/station/label-words/word-row.ts'

export interface Match {
  /** Places in the letters. */
  readonly from: number
  readonly to: number
  readonly row: WordRow
  /** One word, also where a hyphen parts it: parts of it are no words. */
  readonly isSolid: boolean
}

/** Spellings of one word in American and British English. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/flavor/g, 'f-?l-?a-?v-?o-?u?-?r'],
  [/hydrolyz/g, 'h-?y-?d-?r-?o-?l-?y-?[sz]'],
  [/yogurt/g, 'y-?o-?g-?h?-?o?-?u-?r-?t'],
  [/sulf/g, 's-?u-?l-?(?:f|p-?h)'],
]

const PARTED = '[- \\n]?'

/** A word whose letters a hyphen at the end of a line may part, also as many of it. */
const wordPattern = (word: string): string => {
  const marked = SPELLINGS.reduce(
    (so, [found], place) => so.replace(found, String(place)),
    word.endsWith('y') ? word.slice(0, -1) : word,
  )
  const letters = [...marked]
    .map((one) => SPELLINGS[Number.parseInt(one, 10)]?.[1] ?? one)
    .join('-?')
  return word.endsWith('y') ? `${letters}-?(?:y(?:-?s)?|i-?e-?s)` : `${letters}(?:-?e?-?s)?`
}

const patternOf = (words: string): string => words.split(' ').map(wordPattern).join(PARTED)

interface Compiled {
  readonly row: WordRow
  readonly pattern: RegExp
  readonly solid: RegExp | null
}

/** One pattern a row: a longer alternative first, since the first that fits is taken. */
const compiled = (row: WordRow): Compiled => {
  const longestFirst = row.words.toSorted((one, other) => other.length - one.length)
  const any = longestFirst.map(patternOf).join('|')
  const solids = row.words.filter((one) => !one.includes(' ')).map(wordPattern)
  return {
    row,
    pattern: new RegExp(`(^|[^a-z])(${any})(?![a-z])`, 'g'),
    solid: solids.length === 0 ? null : new RegExp(`^(?:${solids.join('|')})$`),
  }
}

const COMPILED: readonly Compiled[] = ALL_WORDS.map(compiled)

const within = (inner: Match, outer: Match): boolean =>
  outer.from <= inner.from && inner.to <= outer.to

const isLonger = (one: Match, other: Match): boolean => one.to - one.from > other.to - other.from

/** Words of a row in the text, also where one begins inside another. */
const matchesOf = ({ row, pattern, solid }: Compiled, { text }: Letters): readonly Match[] => {
  const found: Match[] = []
  pattern.lastIndex = 0
  for (let hit = pattern.exec(text); hit !== null; hit = pattern.exec(text)) {
    const from = hit.index + (hit[1]?.length ?? 0)
    const letters = hit[2] ?? ''
    found.push({ row, from, to: from + letters.length, isSolid: solid?.test(letters) ?? false })
    pattern.lastIndex = from + 1
  }
  return found
}

/** @param own rows of the house's own additions */
export const matchesIn = (letters: Letters, own: readonly WordRow[]): readonly Match[] =>
  [...COMPILED, ...own.map(compiled)].flatMap((one) => matchesOf(one, letters))

/**
 * A longer match that says better what these letters are, for one code: one of the same code, or a
 * known single word (hazel-nut is no nut). null: none does.
 */
export const outdoneBy = (match: Match, code: string, all: readonly Match[]): Match | null =>
  all.find(
    (other) =>
      isLonger(other, match) &&
      within(match, other) &&
      (other.row.codes.includes(code) || other.isSolid),
  ) ?? null
