/** Ids and short names, made from names, so that nobody types one. */
import { type Draft, type Kind, rowsOf } from '#lib/editor/draft.ts'

const LETTERS: Readonly<Record<string, string>> = Object.fromEntries([
  ...pairs('ßæœøðþłđıħ', ['ss', 'ae', 'oe', 'o', 'd', 'th', 'l', 'd', 'i', 'h']),
  // Greek and Cyrillic letter by letter; a spelling that a reader recognises, no standard's.
  ...pairs('αβγδεζηθικλμνξοπρσςτυφχψω', [
    ...['a', 'v', 'g', 'd', 'e', 'z', 'i', 'th', 'i', 'k', 'l', 'm', 'n', 'x', 'o', 'p', 'r'],
    ...['s', 's', 't', 'y', 'f', 'ch', 'ps', 'o'],
  ]),
  ...pairs('абвгдежзиклмнопрстуфхцчшщъыьэюяіє', [
    ...['a', 'b', 'v', 'g', 'd', 'e', 'zh', 'z', 'i', 'k', 'l', 'm', 'n', 'o', 'p', 'r', 's'],
    ...['t', 'u', 'f', 'kh', 'ts', 'ch', 'sh', 'shch', '', 'y', '', 'e', 'yu', 'ya', 'i', 'ye'],
  ]),
])

function pairs(letters: string, said: readonly string[]): readonly (readonly [string, string])[] {
  return [...letters].map((letter, place) => [letter, said[place] ?? ''] as const)
}

const MOST_LETTERS = 40

/** A name in the letters of an id; empty where it has none that can be said in them. */
export const slug = (name: string): string =>
  [...name.toLowerCase().normalize('NFKD')]
    .map((letter) => LETTERS[letter] ?? letter)
    .join('')
    .replace(/\p{M}|['’]/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')

/** Refusals and screens look up names by the id alone: within these no id is there twice. */
const TOGETHER: readonly (readonly Kind[])[] = [
  ['component', 'item', 'pan', 'backup'],
  ['ingredient', 'recipe'],
]

const togetherWith = (kind: Kind): readonly Kind[] =>
  TOGETHER.find((group) => group.includes(kind)) ?? [kind]

const cut = (text: string, most: number): string => text.slice(0, most).replace(/-+$/, '')

/**
 * The id of something new by its name; numbered where there is one already, or it has no letters.
 * @param others that it must not be called by either
 */
export const newId = (
  draft: Draft,
  kind: Kind,
  name: string,
  others: readonly string[] = [],
): string => {
  const there = togetherWith(kind).flatMap((one) => rowsOf(draft, one).map(({ id }) => id))
  const taken = new Set([...there, ...others])
  // "constructor" is a key that every record inherits.
  const said = slug(name)
  const isWord = /^[a-z]/.test(said) && said !== 'constructor'
  const stem = cut(isWord ? said : said === '' ? kind : `${kind}-${said}`, MOST_LETTERS)
  if (!taken.has(stem)) return stem
  for (let number = 2; ; number += 1) {
    const id = `${cut(stem, MOST_LETTERS - 1 - String(number).length)}-${number}`
    if (!taken.has(id)) return id
  }
}

const MOST_ON_A_LINE = 12

const lengthOf = (words: readonly string[]): number => words.join(' ').length

const cutLine = (text: string): string => {
  if (text.length <= MOST_ON_A_LINE) return text
  let line = ''
  for (const sign of text) if (line.length + sign.length < MOST_ON_A_LINE) line += sign
  return `${line.trimEnd()}.`
}

/** Whether what stands beside the name is the one proposed from it. */
export const isProposedShort = (name: string, short: unknown): boolean =>
  JSON.stringify(short) === JSON.stringify(proposedShort(name))

/**
 * How a name stands on a narrow pan: one line of a word, two of several, 12 signs each at most. What
 * doesn't fit is cut with a full stop; the person can say it better.
 */
export const proposedShort = (name: string): readonly string[] => {
  const words = name
    .trim()
    .split(/\s+/)
    .filter((word) => word !== '')
  if (words.length < 2) return [cutLine(words.join(''))]
  const splits = words.slice(1).map((_, place) => {
    const [first, second] = [words.slice(0, place + 1), words.slice(place + 1)]
    return { first, second, widest: Math.max(lengthOf(first), lengthOf(second)) }
  })
  const best = splits.reduce((one, other) => (other.widest < one.widest ? other : one))
  return [cutLine(best.first.join(' ')), cutLine(best.second.join(' '))]
}
