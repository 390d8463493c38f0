/** Portion × count = total: reckoned here alone, for every sheet and screen that says it. */
import { type Amount, scaled } from '#lib/recipes/amount.ts'
import { type Rational, ratio } from '#lib/recipes/rational.ts'

export interface PortionTotal {
  readonly portion: Amount
  /** Whole portions, or the exact number of them that was asked for; above 0. */
  readonly count: Rational
  readonly total: Amount
}

/** So many portions and what they are together, exactly. */
export const portionTotal = (portion: Amount, count: Rational | number): PortionTotal => {
  const many = typeof count === 'number' ? ratio(count) : count
  return { portion, count: many, total: scaled(portion, many) }
}
