/** Whole eggs and whole cans: by how much a card is made where a rest of one would be left over. */
import type { Amount } from '#lib/recipes/amount.ts'
import { ceilOf, floorOf, plus, type Rational, ratio } from '#lib/recipes/rational.ts'

export interface WholeOnes {
  /** 1 or more. */
  readonly count: number
  /** As it is typed for what is at hand: "3 #10 cans", "28 eggs". */
  readonly typed: string
}

const nearest = (size: Rational): bigint => floorOf(plus(size, ratio(1, 2)))

/**
 * The next whole can, the nearest whole egg, at least one; null where it is whole already, or is
 * nothing that comes in whole ones.
 */
export const wholeOnes = (amount: Amount): WholeOnes | null => {
  const isEgg = amount.kind === 'count' && amount.of === 'egg'
  if ((amount.kind !== 'cans' && !isEgg) || amount.size.under === 1n) return null
  const whole = isEgg ? nearest(amount.size) : ceilOf(amount.size)
  const count = Math.max(1, Number(whole))
  const what = amount.kind === 'cans' ? `#${amount.can} can` : 'egg'
  return { count, typed: `${count} ${what}${count === 1 ? '' : 's'}` }
}
