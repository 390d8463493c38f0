/** The middle one of measured values; NaN where there are none. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}
