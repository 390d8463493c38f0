/** The textbook's single-period amount, to check the chances and the expected losses by. */
import { expectedLeft, expectedLost, type Stakes } from '#lib/estimate/newsvendor.ts'

/** P(count ≤ k), from chances that reach at least to k. */
export const chanceUpTo = (chances: Float64Array, k: number): number => {
  let sum = 0
  for (let i = 0; i <= k && i < chances.length; i += 1) sum += chances[i] ?? 0
  return Math.min(1, sum)
}

/** The chance of not running out at which one portion more costs as much as it brings: 0 to 1. */
export const criticalRatio = ({ lostCents, leftCents }: Stakes): number =>
  lostCents + leftCents > 0 ? lostCents / (lostCents + leftCents) : 0

/** The smallest amount whose chance of being enough reaches the critical ratio; null for none. */
export const bestAmount = (chances: Float64Array, stakes: Stakes): number | null => {
  const ratio = criticalRatio(stakes)
  let sum = 0
  for (let k = 0; k < chances.length; k += 1) {
    sum += chances[k] ?? 0
    if (sum >= ratio) return k
  }
  return null
}

/** Expected cost of an amount in cents. */
export const expectedCost = (
  chances: Float64Array,
  mean: number,
  amount: number,
  { lostCents, leftCents }: Stakes,
): number =>
  lostCents * expectedLost(chances, mean, amount) + leftCents * expectedLeft(chances, amount)
