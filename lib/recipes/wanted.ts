/** How much is wanted, as typed: "348", "348 portions of 3 oz", "2 half pans, 4 in", "6 qt", "x 2". */
import { type Amount, type Density, scaled, timesIn } from '#lib/recipes/amount.ts'
import {
  type FactorCode,
  factorForAmount,
  factorForPortions,
  factorOfLine,
  madeBy,
} from '#lib/recipes/factor.ts'
import {
  dividedBy,
  isZero,
  times as multiplied,
  ONE,
  type Rational,
} from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { type AmountCode, numberAt, tokensOf } from '#lib/recipes/typed-parts.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'

export interface NotWanted {
  readonly ok: false
  readonly code: AmountCode | FactorCode
  readonly at: string
}

export type Wanted =
  | {
      readonly ok: true
      readonly factor: Rational
      /** Where portions were asked for. */
      readonly portions: Rational | null
    }
  | NotWanted

const refused = (code: NotWanted['code'], at = ''): NotWanted => ({ ok: false, code, at })

/** "x 2", "2 x", "2 times": that often the card; null for what isn't said so. */
const timesTyped = (typed: string): Rational | null => {
  const tokens = tokensOf(typed)
  if ('ok' in tokens) return null
  const isFirst = /^x$/i.test(tokens[0] ?? '')
  const number = numberAt(tokens, isFirst ? 1 : 0)
  if (number === null || isZero(number.value)) return null
  const rest = tokens.slice(number.next).join(' ')
  return (isFirst ? rest === '' : /^(x|times)$/i.test(rest)) ? number.value : null
}

/** One portion of a station's tool, and what the food weighs; null where either isn't known. */
export interface Served {
  readonly portion: Amount | null
  readonly density: Density | null
}

const forPortions = (
  yields: Yield,
  count: Rational,
  each: Amount | null,
  { portion, density }: Served,
): Wanted => {
  const size = each ?? (yields.kind === 'portions' ? null : portion)
  const found =
    size === null
      ? factorForPortions(yields, count)
      : factorForAmount(yields, scaled(size, count), density)
  return found.ok ? { ...found, portions: count } : refused(found.code)
}

const portionsOf = (yields: Yield | null, factor: Rational): Rational | null =>
  yields?.kind === 'portions' ? multiplied(yields.count, factor) : null

/**
 * The factor of a card's yield for what is typed. Portions without a size are the card's where it
 * states portions, else the station's own.
 */
export const wantedOf = (yields: Yield | null, typed: string, served: Served): Wanted => {
  const times = timesTyped(typed)
  if (times !== null) return { ok: true, factor: times, portions: portionsOf(yields, times) }
  if (yields === null) return refused('no-yield')
  const wanted = typedYield(typed)
  if (!wanted.ok) return wanted
  if (wanted.yields.kind === 'portions')
    return forPortions(yields, wanted.yields.count, wanted.yields.each, served)
  if (wanted.yields.kind === 'pans' && yields.kind === 'pans' && isSamePan(wanted.yields, yields))
    return { ok: true, factor: dividedBy(wanted.yields.count, yields.count), portions: null }
  const made = madeBy(wanted.yields)
  if (!made.ok) return refused(made.code)
  const found = factorForAmount(yields, made.amount, served.density)
  return found.ok ? { ...found, portions: null } : refused(found.code)
}

type Pans = Extract<Yield, { kind: 'pans' }>

const isSamePan = (a: Pans, b: Pans): boolean => a.size === b.size && a.depthIn === b.depthIn

/** The factor by what is at hand of one of its lines. */
export const wantedOfLine = (
  lineTyped: string,
  atHandTyped: string,
  density: Density | null,
): Wanted => {
  const [line, atHand] = [typedAmount(lineTyped), typedAmount(atHandTyped)]
  if (!line.ok) return line
  if (!atHand.ok) return atHand
  if (line.amount === null || atHand.amount === null) return refused('no-number')
  const like = line.also !== null && timesIn(atHand.amount, line.also, null) !== null
  const found = factorOfLine(like && line.also ? line.also : line.amount, atHand.amount, density)
  return found.ok ? { ...found, portions: null } : refused(found.code)
}

/** What is put in at once: "20 qt", "2 half pans, 4 in". */
export const fitsTyped = (
  typed: string,
): { readonly ok: true; readonly fits: Amount } | NotWanted => {
  const found = typedYield(typed)
  if (!found.ok) return found
  const made = madeBy(found.yields)
  return made.ok ? { ok: true, fits: made.amount } : refused(made.code)
}

/** As the card has it. */
export const asItIs = (yields: Yield | null): Wanted => ({
  ok: true,
  factor: ONE,
  portions: portionsOf(yields, ONE),
})
