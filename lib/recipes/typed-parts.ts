/** The words and numbers of an amount as somebody typed it on a card. */
import { fromDecimal, plus, type Rational, ratio } from '#lib/recipes/rational.ts'

/** Why an amount isn't understood. */
export type AmountCode =
  | 'empty'
  /** It starts with no number, and isn't "to taste". */
  | 'no-number'
  /** "2 to 3 lb": one amount is scaled, so one is asked for. */
  | 'range'
  /** "1,5": a point, or a thousand? */
  | 'decimal-comma'
  | 'unknown-word'
  /** A can whose content no source tells. */
  | 'unknown-can'
  /** "1 lb 2 cups": they don't add without a density. */
  | 'mixed-kinds'
  | 'zero'
  | 'too-much'

export interface NotUnderstood {
  readonly ok: false
  readonly code: AmountCode
  /** What it is about, as typed; '' where it is all of it. */
  readonly at: string
}

export const notUnderstood = (code: AmountCode, at = ''): NotUnderstood => ({ ok: false, code, at })

const FRACTIONS = /[\u00bc-\u00be\u2150-\u215e]/g

/** One way of writing for many: 1½ as 1 1/2, long dashes as short ones, 1,000 as 1000. */
const plainly = (typed: string): string =>
  typed
    .replace(FRACTIONS, (sign) => ` ${sign.normalize('NFKC')}`)
    .replaceAll('\u2044', '/')
    .replaceAll(/[\u2010-\u2015\u2212]/g, '-')
    .replaceAll('\u00d7', ' x ')
    .replaceAll(/(?<=\d),(?=\d{3}(?!\d))/g, '')
    .trim()

const TOKEN = /\s*(\d+\s*\/\s*\d+|\d+(?:\.\d+)?|\.\d+|[A-Za-z]+\.?|[#\-+,&()])/y

/** The tokens of a text, or what stands where none is one. */
export const tokensOf = (typed: string): readonly string[] | NotUnderstood => {
  const text = plainly(typed)
  if (text === '') return notUnderstood('empty')
  const comma = /\d+,\d+/.exec(text)
  if (comma) return notUnderstood('decimal-comma', comma[0])
  const tokens: string[] = []
  TOKEN.lastIndex = 0
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex
    const found = TOKEN.exec(text)
    if (found?.[1] === undefined) return notUnderstood('unknown-word', text.slice(at).trim())
    tokens.push(found[1].replaceAll(/\s/g, ''))
  }
  return tokens.map((token) => token.replace(/(?<=[A-Za-z])\.$/, ''))
}

const simple = (token: string | undefined): Rational | null => {
  if (token === undefined) return null
  const [, over, under] = /^(\d+)\/(\d+)$/.exec(token) ?? []
  if (over === undefined || under === undefined)
    return fromDecimal(token.startsWith('.') ? `0${token}` : token)
  return BigInt(under) === 0n ? null : ratio(BigInt(over), BigInt(under))
}

const isProper = (token: string | undefined): boolean => {
  const [, over, under] = /^(\d+)\/(\d+)$/.exec(token ?? '') ?? []
  return over !== undefined && under !== undefined && BigInt(over) < BigInt(under)
}

export interface NumberAt {
  readonly value: Rational
  /** The place of the token behind it. */
  readonly next: number
}

/**
 * The number at a place: 2, 1.5, 1/2, 1 1/2, 1-1/2 (as government cards write it) or "1 and 1/2".
 * null where there is none.
 */
export const numberAt = (tokens: readonly string[], at: number): NumberAt | null => {
  const first = simple(tokens[at])
  if (first === null) return null
  if (!/^\d+$/.test(tokens[at] ?? '')) return { value: first, next: at + 1 }
  const joint = /^(-|and|&)$/i.test(tokens[at + 1] ?? '') ? 1 : 0
  const part = isProper(tokens[at + 1 + joint]) ? simple(tokens[at + 1 + joint]) : null
  return part === null
    ? { value: first, next: at + 1 }
    : { value: plus(first, part), next: at + 2 + joint }
}

/** Whether a range goes on here: "- 3", "to 3", "or 3". */
export const isRangeAt = (tokens: readonly string[], at: number): boolean =>
  /^(-|to|or)$/i.test(tokens[at] ?? '') && simple(tokens[at + 1]) !== null
