/** What was weighed or counted at the end of a batch, against what its card states. */
import { type Amount, scaled, timesIn } from '#lib/recipes/amount.ts'
import { madeBy } from '#lib/recipes/factor.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { dividedBy, type Rational, times, toNumber } from '#lib/recipes/rational.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import type { Served } from '#lib/recipes/wanted.ts'

export type NotMeasured =
  | 'zero'
  | 'not-understood'
  /** The card counts it, by portions of no size or by pieces. */
  | 'weight-for-counted'
  | 'no-density'
  /** Nobody said how large a portion of the station's is. */
  | 'no-portion'
  /** The card doesn't say what it makes. */
  | 'nothing-stated'
  /** Four times as much or more, or a quarter or less: a slip of the pen, or another batch. */
  | 'far-off'

export type Measured =
  | { readonly ok: true; readonly ratio: number }
  | { readonly ok: false; readonly code: NotMeasured }

const FAR = 4

const refused = (code: NotMeasured): Measured => ({ ok: false, code })

const measuredAs = (ratio: Rational): Measured => {
  const value = toNumber(ratio)
  return value >= FAR || value <= 1 / FAR ? refused('far-off') : { ok: true, ratio: value }
}

const againstAmount = (made: Amount, stated: Amount, { density }: Served): Measured => {
  const ratio = timesIn(made, stated, density)
  if (ratio !== null) return measuredAs(ratio)
  return refused(stated.kind === 'count' ? 'weight-for-counted' : 'no-density')
}

/** What a card makes, as an amount; null where it counts portions of no size. */
const statedAmount = (stated: Yield, { portion }: Served): Amount | null => {
  const made = madeBy(stated)
  if (made.ok) return made.amount
  return stated.kind === 'portions' && portion ? portionTotal(portion, stated.count).total : null
}

/** As an amount; bare portions are the station's own. */
const typedAmountOf = (typed: Yield, { portion }: Served): Amount | null => {
  const made = madeBy(typed)
  if (made.ok) return made.amount
  return typed.kind === 'portions' && portion ? portionTotal(portion, typed.count).total : null
}

/**
 * @param stated of the card, made `factor` times
 * @param typed as a yield is typed: "1 lb 2 oz", "17 portions", "9"
 */
export const measuredRatio = (
  stated: Yield | null,
  factor: Rational,
  served: Served,
  typed: string,
): Measured => {
  if (stated === null) return refused('nothing-stated')
  const read = typedYield(typed)
  if (!read.ok) return refused(read.code === 'zero' ? 'zero' : 'not-understood')
  const { yields } = read
  const isBare = (one: Yield): boolean => one.kind === 'portions' && one.each === null
  if (stated.kind === 'portions' && yields.kind === 'portions' && isBare(yields))
    return measuredAs(dividedBy(yields.count, times(stated.count, factor)))
  const made = typedAmountOf(yields, served)
  if (made === null) return refused('no-portion')
  const of = statedAmount(stated, served)
  if (of === null) return refused('weight-for-counted')
  return againstAmount(made, scaled(of, factor), served)
}
