/** An exact amount of a recipe. */
import { canOf } from '#lib/recipes/cans.ts'
import { dividedBy, plus, type Rational, times } from '#lib/recipes/rational.ts'
import type { Counted } from '#lib/recipes/units.ts'

export type Amount =
  /** Millilitres; `written` as the card has it. */
  | {
      readonly kind: 'volume'
      readonly size: Rational
      readonly written: 'us' | 'metric' | 'rough'
    }
  /** Grams. */
  | {
      readonly kind: 'weight'
      readonly size: Rational
      readonly written: 'us' | 'metric' | 'rough'
    }
  | { readonly kind: 'count'; readonly size: Rational; readonly of: Counted }
  /** Cans by the number on them. */
  | { readonly kind: 'cans'; readonly size: Rational; readonly can: string }

/** So much of it; a factor of 0 or more. */
export const scaled = (amount: Amount, factor: Rational): Amount => ({
  ...amount,
  size: times(amount.size, factor),
})

/** Grams per millilitre, and how far it may be off: 0.05 is 5 percent either way. */
export interface Density {
  readonly gPerMl: Rational
  readonly by: 'measured' | 'pan' | 'table' | 'card'
  readonly offBy: number
}

export type Measured = 'volume' | 'weight' | 'count'

/**
 * Millilitres of an amount, grams of it or pieces: what it is itself, cans as their usual content,
 * and volume and weight of each other by a density alone. null where that can't be said.
 */
export const sizeIn = (
  amount: Amount,
  measured: Measured,
  density: Density | null,
): Rational | null => {
  if (amount.kind === measured) return amount.size
  if (amount.kind === 'cans') {
    const ml = canOf(amount.can)?.ml
    return ml === undefined
      ? null
      : sizeIn({ kind: 'volume', size: times(ml, amount.size), written: 'us' }, measured, density)
  }
  if (density === null || amount.kind === 'count' || measured === 'count') return null
  return measured === 'weight'
    ? times(amount.size, density.gPerMl)
    : dividedBy(amount.size, density.gPerMl)
}

/** Whether two amounts are of one kind, and counts and cans of one thing. */
const isLike = (a: Amount, b: Amount): boolean =>
  a.kind === b.kind &&
  (a.kind !== 'count' || (b.kind === 'count' && a.of === b.of)) &&
  (a.kind !== 'cans' || (b.kind === 'cans' && a.can === b.can))

/** A bare number counts eggs, which are bought by number: "15 dozen". Nobody knows how many others hold, or are of one. */
const isCountable = (a: Amount, b: Amount): boolean =>
  a.kind === 'count' &&
  b.kind === 'count' &&
  [a.of, b.of].every((of) => of === 'piece' || of === 'egg')

/** Both together; null where they don't add without a density. */
export const together = (a: Amount, b: Amount): Amount | null =>
  isLike(a, b) ? { ...a, size: plus(a.size, b.size) } : null

/**
 * How many times one amount goes into another, exactly; null where they are of different kinds and
 * no density joins them. Throws RangeError where `one` is nothing.
 */
export const timesIn = (whole: Amount, one: Amount, density: Density | null): Rational | null => {
  if (isLike(whole, one) || isCountable(whole, one)) return dividedBy(whole.size, one.size)
  if (whole.kind === 'count' || one.kind === 'count') return null
  const measured = one.kind === 'weight' ? 'weight' : 'volume'
  const [a, b] = [sizeIn(whole, measured, density), sizeIn(one, measured, density)]
  return a === null || b === null ? null : dividedBy(a, b)
}
