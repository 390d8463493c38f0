/** Slack for binary fractions: 38.9 / 2 is 19.45 on paper and a hair less in a double. */
const SLACK = 1e-12

function assertFinite(amount: number, name: string): void {
  if (!Number.isFinite(amount)) throw new RangeError(`${name} must be a finite number`)
}

/**
 * How many steps an amount comes to, rounded once; halves go away from zero (up, for amounts).
 * Amount and step share one unit; step must be above zero. Throws RangeError otherwise.
 * Halves up is what the servings columns of the USDA Food Buying Guide reproduce with.
 */
export function stepsHalfUp(amount: number, step: number): number {
  assertFinite(amount, 'amount')
  assertFinite(step, 'step')
  if (step <= 0) throw new RangeError('step must be above zero')
  const size = Math.abs(amount) / step
  const steps = Math.floor(size + 0.5 + Math.max(1, size) * SLACK)
  if (!Number.isSafeInteger(steps)) throw new RangeError('amount has too many steps to count')
  return amount < 0 && steps > 0 ? -steps : steps
}

/**
 * How many whole times `each` fits into `have`, in one unit; forgives binary fractions, so that
 * 14 quarts hold 140 tenths. Needs have ≥ 0 and each > 0; throws RangeError otherwise.
 */
export function wholeTimes(have: number, each: number): number {
  assertFinite(have, 'have')
  assertFinite(each, 'each')
  if (have < 0) throw new RangeError('have must not be below zero')
  if (each <= 0) throw new RangeError('each must be above zero')
  const times = have / each
  const whole = Math.floor(times + Math.max(1, times) * SLACK)
  if (!Number.isSafeInteger(whole)) throw new RangeError('too many to count')
  return whole
}
