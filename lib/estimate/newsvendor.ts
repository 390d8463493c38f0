/** How much to have for one period: lost sales against left-over. */

export interface Stakes {
  /** Lost with each portion that was wanted and not there, in cents. */
  readonly lostCents: number
  /** Lost with each portion left over, in cents. */
  readonly leftCents: number
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
