/** Amounts as they are typed on a card: "2 #10 cans", "1 lb 4 oz", "2 qt 3 1/4 cups", "to taste". */
import { type Amount, together } from '#lib/recipes/amount.ts'
import { canOf } from '#lib/recipes/cans.ts'
import { compared, isZero, type Rational, ratio, times } from '#lib/recipes/rational.ts'
import {
  type AmountCode,
  isRangeAt,
  type NotUnderstood,
  notUnderstood,
  numberAt,
  tokensOf,
} from '#lib/recipes/typed-parts.ts'
import { countedOf, isCut, scoopMl, US_G, unitOf } from '#lib/recipes/units.ts'

export type Typed =
  | {
      readonly ok: true
      /** null: to taste, or as needed. */
      readonly amount: Amount | null
      /** The same said otherwise behind it, "6 lb (2 qt 3 1/4 cups)"; null where it isn't. */
      readonly also: Amount | null
    }
  | NotUnderstood

interface PartAt {
  readonly amount: Amount
  readonly next: number
}

/** More than a kitchen makes: 50 t, 50,000 L or 50 million pieces. */
const MOST = ratio(50_000_000)

/** They say how it is filled or how large a piece is, and no amount. */
const PASSED = /^(level|large|medium|whole|fresh|full)$/i

const isProblem = <Found>(found: Found | NotUnderstood): found is NotUnderstood =>
  typeof found === 'object' && found !== null && 'ok' in found && found.ok === false

/** What stands behind "#" or "No": a can or a scoop of that number; pounds where none follows. */
const numberedAt = (
  tokens: readonly string[],
  at: number,
  size: Rational,
): PartAt | NotUnderstood => {
  const number = numberAt(tokens, at)
  if (number === null)
    return { amount: { kind: 'weight', size: times(size, US_G.lb), written: 'us' }, next: at }
  const name = tokens.slice(at, number.next).join(' ')
  const word = tokens[number.next] ?? ''
  const next = number.next + 1
  if (/^scoops?$/i.test(word)) {
    const whole = number.value.under === 1n ? Number(number.value.over) : 0
    return whole < 4 || whole > 100
      ? notUnderstood('unknown-word', `#${name} ${word}`)
      : { amount: { kind: 'volume', size: times(size, scoopMl(whole)), written: 'us' }, next }
  }
  if (!/^cans?$/i.test(word)) return notUnderstood('unknown-word', word === '' ? `#${name}` : word)
  return canOf(name) === null
    ? notUnderstood('unknown-can', `#${name}`)
    : { amount: { kind: 'cans', size, can: name }, next }
}

/** What each of so many holds: "of 12 each" behind a case. */
const heldAt = (tokens: readonly string[], at: number, size: Rational): PartAt | NotUnderstood => {
  const one = partAt(tokens, at)
  return isProblem(one)
    ? one
    : { amount: { ...one.amount, size: times(size, one.amount.size) }, next: one.next }
}

const thingAt = (
  tokens: readonly string[],
  start: number,
  size: Rational,
): PartAt | NotUnderstood => {
  let at = start
  while (PASSED.test(tokens[at] ?? '')) at += 1
  const word = tokens[at]
  if (word === undefined || word === '(')
    return { amount: { kind: 'count', size, of: 'piece' }, next: at }
  if (word === '#') return numberedAt(tokens, at + 1, size)
  if (/^no$/i.test(word) && numberAt(tokens, at + 1)) return numberedAt(tokens, at + 1, size)
  const fluid = /^(fl|fluid)$/i.test(word) && /^(oz|ounces?)$/i.test(tokens[at + 1] ?? '')
  const unit = unitOf(fluid ? 'floz' : word)
  const next = at + (fluid ? 2 : 1)
  if (unit) {
    const { kind, written } = unit
    return { amount: { kind, size: times(size, unit.size), written }, next }
  }
  if (/^(dozens?|doz)$/i.test(word)) {
    const dozen = times(size, ratio(12))
    const of = countedOf(tokens[next] ?? '')
    return { amount: { kind: 'count', size: dozen, of: of ?? 'piece' }, next: next + (of ? 1 : 0) }
  }
  const of = countedOf(word)
  if (of === null) return notUnderstood('unknown-word', word)
  return isCut(of) && /^of$/i.test(tokens[next] ?? '')
    ? heldAt(tokens, next + 1, size)
    : { amount: { kind: 'count', size, of }, next }
}

const partAt = (tokens: readonly string[], at: number): PartAt | NotUnderstood => {
  const word = tokens[at] ?? ''
  const one = /^(an?|one)$/i.test(word) ? { value: ratio(1), next: at + 1 } : numberAt(tokens, at)
  if (one === null) return notUnderstood(/^\d+\/0+$/.test(word) ? 'zero' : 'no-number', word)
  if (isRangeAt(tokens, one.next))
    return notUnderstood('range', tokens.slice(at, one.next + 2).join(' '))
  if (!/^x$/i.test(tokens[one.next] ?? '')) return thingAt(tokens, one.next, one.value)
  const each = numberAt(tokens, one.next + 1)
  return thingAt(tokens, each?.next ?? one.next + 1, times(one.value, each?.value ?? ratio(1)))
}

/** Parts from a place to a bracket or the end, added. */
const sumAt = (tokens: readonly string[], start: number): PartAt | NotUnderstood => {
  const first = partAt(tokens, start)
  if (isProblem(first)) return first
  let { amount, next } = first
  while (next < tokens.length && !/^[()]$/.test(tokens[next] ?? '')) {
    if (isRangeAt(tokens, next)) return notUnderstood('range')
    if (/^([+,&]|and|plus)$/i.test(tokens[next] ?? '')) next += 1
    const more = partAt(tokens, next)
    if (isProblem(more))
      return more.code === 'no-number' ? notUnderstood('unknown-word', more.at) : more
    const sum = together(amount, more.amount)
    if (sum === null) return notUnderstood('mixed-kinds')
    ;({ amount, next } = { amount: sum, next: more.next })
  }
  return { amount, next }
}

const wrongSize = ({ size }: Amount): AmountCode | null =>
  isZero(size) ? 'zero' : compared(size, MOST) > 0 ? 'too-much' : null

/** An amount that starts at a token, and what the same is called in brackets behind it. */
export const amountFrom = (tokens: readonly string[], start: number): Typed => {
  const main = sumAt(tokens, start)
  if (isProblem(main)) return main
  const wrong = wrongSize(main.amount)
  if (wrong) return notUnderstood(wrong)
  if (tokens[main.next] !== '(') {
    const rest = tokens[main.next]
    return rest === undefined
      ? { ok: true, amount: main.amount, also: null }
      : notUnderstood('unknown-word', rest)
  }
  const also = sumAt(tokens, main.next + 1)
  if (isProblem(also)) return also
  const rest = tokens.slice(also.next).join(' ')
  if (rest !== ')') return notUnderstood('unknown-word', rest === '' ? '(' : rest)
  const other = wrongSize(also.amount)
  return other ? notUnderstood(other) : { ok: true, amount: main.amount, also: also.amount }
}

/**
 * An amount as typed in English, exactly, or why it isn't understood and at what. Ounces are a
 * weight and fluid ounces a volume; a bare number counts pieces; "5#" are pounds; "1 pinch" is
 * 1/16 tsp by custom; "1 case of 12 each" is 12 pieces. A range is refused: one amount is scaled.
 */
export const typedAmount = (typed: string): Typed => {
  if (/^\s*(to taste|as needed)\s*\.?\s*$/i.test(typed))
    return { ok: true, amount: null, also: null }
  const tokens = tokensOf(typed)
  return isProblem(tokens) ? tokens : amountFrom(tokens, 0)
}
