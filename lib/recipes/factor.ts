/** By how much a card is multiplied: the factor method of USDA and the armed forces' recipes. */
import { panCapacity } from '#lib/measure/pans.ts'
import { type Amount, type Density, timesIn } from '#lib/recipes/amount.ts'
import { dividedBy, fromNumber, isZero, type Rational, times } from '#lib/recipes/rational.ts'
import type { AmountCode } from '#lib/recipes/typed-parts.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import { US_ML } from '#lib/recipes/units.ts'

export type FactorCode =
  /** Nothing is made of nothing. */
  | 'zero'
  | 'no-yield'
  /** A card that says portions doesn't say of what size. */
  | 'no-portion-size'
  /** It says an amount, and no portions. */
  | 'no-portions'
  | 'no-depth'
  | 'no-capacity'
  | 'weight-and-volume'

export type Factor =
  | { readonly ok: true; readonly factor: Rational }
  | { readonly ok: false; readonly code: FactorCode }

const refused = (code: FactorCode): Factor => ({ ok: false, code })

const factorOf = (wanted: Rational, card: Rational): Factor =>
  isZero(wanted) || isZero(card) ? refused('zero') : { ok: true, factor: dividedBy(wanted, card) }

export type Made =
  | { readonly ok: true; readonly amount: Amount }
  | { readonly ok: false; readonly code: FactorCode }

/**
 * All that a card makes, as an amount. Pans count with the table's usable capacity; portions only
 * where the card says their size.
 */
export const madeBy = (yields: Yield): Made => {
  if (yields.kind === 'amount') return { ok: true, amount: yields.amount }
  if (yields.kind === 'portions')
    return yields.each === null
      ? { ok: false, code: 'no-portion-size' }
      : { ok: true, amount: { ...yields.each, size: times(yields.each.size, yields.count) } }
  if (yields.depthIn === null) return { ok: false, code: 'no-depth' }
  const capacity = panCapacity(yields.size, yields.depthIn)
  return capacity === null
    ? { ok: false, code: 'no-capacity' }
    : {
        ok: true,
        amount: {
          kind: 'volume',
          size: times(times(US_ML.flOz, fromNumber(capacity.usableFlOz)), yields.count),
          written: 'us',
        },
      }
}

/** 348 portions of a card for 100 are 3.48 of it. */
export const factorForPortions = (yields: Yield, portions: Rational): Factor =>
  yields.kind === 'portions' ? factorOf(portions, yields.count) : refused('no-portions')

/**
 * To an amount: portions × their size, what a pan takes. 348 portions of 3 oz from a card of 100
 * of 4 oz are 2.61 of it. Weight from a volume, and the other way, by a density alone.
 */
export const factorForAmount = (yields: Yield, wanted: Amount, density: Density | null): Factor => {
  const made = madeBy(yields)
  if (!made.ok) return refused(made.code)
  return factorOfLine(made.amount, wanted, density)
}

/** By what is at hand of one line of the card: 102 lb where it says 30 lb are 3.40 of it. */
export const factorOfLine = (card: Amount, atHand: Amount, density: Density | null): Factor => {
  if (isZero(card.size) || isZero(atHand.size)) return refused('zero')
  const factor = timesIn(atHand, card, density)
  return factor === null ? refused('weight-and-volume') : { ok: true, factor }
}

export type FactorOfRecipe =
  | { readonly ok: true; readonly factor: Rational }
  /** `at`: the piece of the yield that isn't understood; '' otherwise. */
  | { readonly ok: false; readonly code: FactorCode | AmountCode; readonly at: string }

/**
 * How many times a card is made for an amount of it, by its yield as typed: what is bought of it and
 * what it costs go by the same. A bare number counts portions where the card says no size of them.
 */
export const factorOfRecipe = (
  yieldsTyped: string,
  amount: Amount,
  density: Density | null,
): FactorOfRecipe => {
  if (yieldsTyped.trim() === '') return { ok: false, code: 'no-yield', at: '' }
  const typed = typedYield(yieldsTyped)
  if (!typed.ok) return typed
  const { yields } = typed
  const isBare = amount.kind === 'count' && amount.of === 'piece'
  const found =
    isBare && yields.kind === 'portions' && yields.each === null
      ? factorForPortions(yields, amount.size)
      : factorForAmount(yields, amount, density)
  return found.ok ? found : { ...found, at: '' }
}
