/**
 * Chances of counts: Poisson, negative binomial, and either compounded by how many portions one
 * taking has. Counts are failures before the nth success where a negative binomial has n and p.
 */

/** Expected count and its variance; a variance at or below the mean is taken as Poisson's. */
export interface Spread {
  readonly mean: number
  readonly variance: number
}

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
]

/** ln Γ(x) for x > 0, to about 14 digits (Lanczos, g = 7). */
export const logGamma = (x: number): number => {
  if (x < 0.5) return Math.log(Math.PI / Math.abs(Math.sin(Math.PI * x))) - logGamma(1 - x)
  const t = x + 6.5
  let sum = LANCZOS[0] ?? 0
  for (let i = 1; i < LANCZOS.length; i += 1) sum += (LANCZOS[i] ?? 0) / (x - 1 + i)
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum)
}

/** ln P(k) of a negative binomial: n > 0 (any real number), 0 < p < 1, k = 0, 1, 2 … */
export const logNegativeBinomial = (k: number, n: number, p: number): number =>
  logGamma(k + n) - logGamma(k + 1) - logGamma(n) + n * Math.log(p) + k * Math.log1p(-p)

/** ln P(k) of a Poisson count: mean > 0, k = 0, 1, 2 … */
export const logPoisson = (k: number, mean: number): number =>
  k * Math.log(mean) - mean - logGamma(k + 1)

/** Under this excess of variance over mean, by mean, a count is Poisson to more digits than shown. */
const NO_EXCESS = 1e-9

/** ln P(k) of the count that has this mean and variance. */
export const logCountChance = (k: number, { mean, variance }: Spread): number => {
  if (mean <= 0) return k === 0 ? 0 : Number.NEGATIVE_INFINITY
  if (variance - mean <= NO_EXCESS * mean) return logPoisson(k, mean)
  const p = mean / variance
  return logNegativeBinomial(k, (mean * p) / (1 - p), p)
}

const SHRINK = 1e-200
const LOG_SHRINK = Math.log(SHRINK)
/** Below this a factor loses digits, so that each chance is brought back by itself. */
const LEAST_LOG = -600

/**
 * Chances of 0, 1 … `most` portions, where takings are counted by `takings` and one taking has
 * 1, 2 … portions with the chances `perTaking` (which sum to 1). Panjer's recursion, exact for the
 * Poisson and negative binomial counts (H. H. Panjer, "Recursive evaluation of a family of compound
 * distributions", ASTIN Bulletin 12, 1981; from memory). Cost grows with `most`.
 */
export const portionChances = (
  { mean, variance }: Spread,
  perTaking: readonly number[],
  most: number,
): Float64Array => {
  const chances = new Float64Array(most + 1)
  chances[0] = 1
  if (mean <= 0) return chances
  const isPoisson = variance - mean <= NO_EXCESS * mean
  const p = isPoisson ? 1 : mean / variance
  const n = isPoisson ? 0 : (mean * p) / (1 - p)
  const a = isPoisson ? 0 : 1 - p
  const b = isPoisson ? mean : (n - 1) * (1 - p)
  let log = isPoisson ? -mean : n * Math.log(p)
  for (let k = 1; k <= most; k += 1) {
    let sum = 0
    for (let j = 1; j <= perTaking.length && j <= k; j += 1)
      sum += (a + (b * j) / k) * (perTaking[j - 1] ?? 0) * (chances[k - j] ?? 0)
    chances[k] = sum
    if (sum > 1 / SHRINK) {
      for (let i = 0; i <= k; i += 1) chances[i] = (chances[i] ?? 0) * SHRINK
      log -= LOG_SHRINK
    }
  }
  const isTiny = log < LEAST_LOG
  const scale = Math.exp(log)
  for (let k = 0; k <= most; k += 1) {
    const value = chances[k] ?? 0
    chances[k] = isTiny ? (value > 0 ? Math.exp(Math.log(value) + log) : 0) : value * scale
  }
  return chances
}

const ONE_EACH = [1]

/** Chances of the counts 0, 1 … `most`. */
export const countChances = (count: Spread, most: number): Float64Array =>
  portionChances(count, ONE_EACH, most)

/** Mean and variance of portions from those of takings. */
export const portionSpread = (takings: Spread, perTaking: readonly number[]): Spread => {
  let mean = 0
  let square = 0
  for (const [index, chance] of perTaking.entries()) {
    mean += (index + 1) * chance
    square += (index + 1) ** 2 * chance
  }
  const variance = Math.max(takings.variance, takings.mean)
  return {
    mean: takings.mean * mean,
    variance: takings.mean * (square - mean * mean) + variance * mean * mean,
  }
}

/** Φ(z) to about 7 digits (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17). */
export const normalUpTo = (z: number): number => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  return z > 0 ? 1 - tail : tail
}
