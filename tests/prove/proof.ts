/** What a proof found: figures to print, and everything that wasn't as it must be. */
export interface Proof {
  readonly title: string
  readonly figures: readonly string[]
  readonly failures: readonly string[]
}

/** Collects what isn't as it must be. */
export const createFindings = () => {
  const failures: string[] = []
  return {
    failures,
    require: (isSo: boolean, otherwise: string): void => {
      if (!isSo) failures.push(otherwise)
    },
  }
}

/** A quantile of measured values, which needn't be sorted; NaN where there are none. */
export const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN
}
