/** How much to have for one period: lost sales against left-over. */

export interface Stakes {
  /** Lost with each portion that was wanted and not there, in cents. */
  readonly lostCents: number
  /** Lost with each portion left over, in cents. */
  readonly leftCents: number
}

/** The chance of not running out at which one portion more costs as much as it brings: 0 to 1. */
export const criticalRatio = ({ lostCents, leftCents }: Stakes): number =>
  lostCents + leftCents > 0 ? lostCents / (lostCents + leftCents) : 0

/**
 * The smallest amount whose chance of being enough reaches the critical ratio.
 * Null where the chances given don't reach that far.
 */
export const bestAmount = (chances: Float64Array, stakes: Stakes): number | null => {
  const ratio = criticalRatio(stakes)
  let sum = 0
  for (let k = 0; k < chances.length; k += 1) {
    sum += chances[k] ?? 0
    if (sum >= ratio) return k
  }
  return null
}

/** Portions expected to be left over of an amount, which may be a fraction: E[(amount − wanted)+]. */
export const expectedLeft = (chances: Float64Array, amount: number): number => {
  let left = 0
  for (let k = 0; k < chances.length && k < amount; k += 1) left += (amount - k) * (chances[k] ?? 0)
  return left
}

/** Portions expected to be wanted and not there: E[(wanted − amount)+], by the mean wanted. */
export const expectedLost = (chances: Float64Array, mean: number, amount: number): number =>
  Math.max(0, mean - amount + expectedLeft(chances, amount))

/** Expected cost of an amount in cents. */
export const expectedCost = (
  chances: Float64Array,
  mean: number,
  amount: number,
  { lostCents, leftCents }: Stakes,
): number =>
  lostCents * expectedLost(chances, mean, amount) + leftCents * expectedLeft(chances, amount)
