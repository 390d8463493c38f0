/** Text on paper: where its lines break, and how small it gets before it takes one more. */
import { type Weight, widthEm } from '#lib/paper/page/letter-widths.ts'
import { type Box, LEAST_PT, LINE_EM, MM_PER_PT } from '#lib/paper/page/papers.ts'

export interface SetText {
  readonly pt: number
  readonly weight: Weight
  readonly lines: readonly string[]
}

/** A text as it stands on a page. */
export interface PlacedText extends SetText, Box {}

export interface Asked {
  readonly text: string
  /** The size that it has where there is room, points. */
  readonly pt: number
  readonly weight?: Weight
  /** In so many lines, if it can; 1 where nothing is said. */
  readonly lines?: number
}

const STEP_PT = 0.5

export const lineMm = (pt: number): number => pt * LINE_EM * MM_PER_PT

export const heightMm = ({ lines, pt }: SetText): number => lines.length * lineMm(pt)

const widthMm = (text: string, pt: number, weight: Weight): number =>
  widthEm(text, weight) * pt * MM_PER_PT

/** A word that is wider than a line, in parts that aren't; each has one letter at least. */
const broken = (word: string, fits: (text: string) => boolean): readonly string[] => {
  const parts: string[] = []
  let part = ''
  for (const sign of word) {
    if (part !== '' && !fits(part + sign)) {
      parts.push(part)
      part = ''
    }
    part += sign
  }
  return part === '' ? parts : [...parts, part]
}

/** Its words stay on one line where that is wide enough: an amount with what it is of. */
export const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0')

/** A number stays with its fraction and its unit: "1 3/4 cups", "12:20 PM". */
const measured = (text: string): string =>
  text.replace(/(\d) (?=\d+\/\d)/g, '$1\u00a0').replace(/(\d) (?=[A-Za-z°])/g, '$1\u00a0')

const JOINED = /\u00a0/
const BETWEEN = /[^\S\u00a0]+/

/** A text in lines no wider than so many millimetres, broken between words where that is possible. */
export const wrapped = (
  text: string,
  width: number,
  pt: number,
  weight: Weight = 'regular',
): readonly string[] => {
  const fits = (one: string) => widthMm(one, pt, weight) <= width
  const words = measured(text)
    .split(BETWEEN)
    .flatMap((one) => (fits(one.replaceAll('\u00a0', ' ')) ? [one] : one.split(JOINED)))
    .map((one) => one.replaceAll('\u00a0', ' '))
    .flatMap((word) => (fits(word) ? [word] : broken(word, fits)))
  const lines: string[] = []
  for (const word of words) {
    const last = lines.at(-1)
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines.filter((line) => line !== '')
}

const sizesFrom = (pt: number): readonly number[] =>
  Array.from({ length: Math.floor((pt - LEAST_PT) / STEP_PT) + 1 }, (_, at) => pt - at * STEP_PT)

/** It breaks within no word at this size. */
const isUnbroken = (text: string, width: number, pt: number, weight: Weight): boolean =>
  text.split(/\s+/).every((word) => widthMm(word, pt, weight) <= width)

/**
 * A text of a width: in its lines at its size, else smaller by half points down to the least size of
 * all paper, else at that size in as many lines as it takes. Nothing of it is ever left away.
 */
export const fitted = (
  { text, pt, weight = 'regular', lines: most = 1 }: Asked,
  width: number,
): SetText => {
  for (const size of sizesFrom(pt)) {
    const lines = wrapped(text, width, size, weight)
    if (lines.length <= most && isUnbroken(text, width, size, weight))
      return { pt: size, weight, lines }
  }
  return { pt: LEAST_PT, weight, lines: wrapped(text, width, LEAST_PT, weight) }
}

/** Lines of given texts, in a box of a width and height at one size; null where they don't fit at the least. */
export const inBox = (
  lines: readonly string[],
  { width, height }: Pick<Box, 'width' | 'height'>,
  pt: number,
  weight: Weight = 'regular',
): SetText | null => {
  const found = sizesFrom(pt).find(
    (size) =>
      lines.length * lineMm(size) <= height &&
      lines.every((line) => widthMm(line, size, weight) <= width),
  )
  return found === undefined ? null : { pt: found, weight, lines }
}

/** Texts below one another from a corner. */
export const stacked = (
  asked: readonly Asked[],
  { x, y, width }: Pick<Box, 'x' | 'y' | 'width'>,
): { readonly texts: readonly PlacedText[]; readonly height: number } => {
  const texts: PlacedText[] = []
  let top = y
  for (const one of asked.filter(({ text }) => text !== '')) {
    const set = fitted(one, width)
    texts.push({ ...set, x, y: top, width, height: heightMm(set) })
    top += heightMm(set)
  }
  return { texts, height: top - y }
}
