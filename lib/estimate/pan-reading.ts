/**
 * What a reading teaches of the pans and of the scoops. Each reading may be a bad one, as of the wrong
 * pan or tare: both cases are weighed and their outcomes merged, so that one bad reading wrecks nothing.
 */
import { normalUpTo } from '#lib/estimate/count-chances.ts'
import type { Doubted, StockBelief } from '#lib/estimate/scoop-bias.ts'

/** Of a hundred readings so many are bad. Common practice, no source. */
const BAD = 0.04
/** A bad reading is off by this part of a full pan (standard deviation). */
const BAD_SD = 0.5

const withReading = (belief: StockBelief, surprise: number, noise: number): StockBelief => {
  const spread = belief.leftVar + noise
  const byLeft = belief.leftVar / spread
  const byBias = belief.cov / spread
  return {
    left: belief.left + byLeft * surprise,
    leftVar: belief.leftVar * (1 - byLeft),
    bias: belief.bias + byBias * surprise,
    biasVar: Math.max(0, belief.biasVar - byBias * belief.cov),
    cov: belief.cov * (1 - byLeft),
  }
}

/** Below this the tail of the normal is too thin for its ratio to be taken of two small numbers. */
const THIN = -6

/** φ(z) / Φ(z), the mean of a standard normal above −z (inverse Mills ratio). */
const tailMean = (z: number): number =>
  z < THIN ? -z - 1 / z : Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / normalUpTo(z)

/**
 * After it was read to be so much or more: the normal that has the mean and variance of a normal cut
 * softly from below (Barr and Sherrill, "Mean and variance of truncated normal distributions", The
 * American Statistician 53, 1999; from memory).
 */
const withAtLeast = (belief: StockBelief, atLeast: number, noise: number): StockBelief => {
  const spread = belief.leftVar + noise
  const z = (belief.left - atLeast) / Math.sqrt(spread)
  const up = tailMean(z)
  const moved = up / Math.sqrt(spread)
  const surer = Math.min(1, Math.max(0, up * (z + up))) / spread
  return {
    left: belief.left + belief.leftVar * moved,
    leftVar: belief.leftVar - belief.leftVar ** 2 * surer,
    bias: belief.bias + belief.cov * moved,
    biasVar: Math.max(0, belief.biasVar - belief.cov ** 2 * surer),
    cov: belief.cov - belief.leftVar * belief.cov * surer,
  }
}

/** How likely a surprise is, up to a factor that all spreads share. */
const likelihood = (surprise: number, spread: number): number =>
  Math.exp((-surprise * surprise) / (2 * spread)) / Math.sqrt(spread)

/** A reading of what all pans of a component on the line hold, in portions. */
export interface Seen {
  readonly read: number
  /** Standard deviation. */
  readonly sd: number
  /** Nobody sees how far a pan is heaped: it was read to hold so much or more. */
  readonly atLeast?: number
}

const likelihoodOf = (belief: StockBelief, { read, sd, atLeast }: Seen, more: number): number => {
  const spread = belief.leftVar + sd * sd + more
  return atLeast === undefined
    ? likelihood(read - belief.left, spread)
    : normalUpTo((belief.left - atLeast) / Math.sqrt(spread))
}

const withSeen = (belief: StockBelief, { read, sd, atLeast }: Seen, more: number): StockBelief =>
  atLeast === undefined
    ? withReading(belief, read - belief.left, sd * sd + more)
    : withAtLeast(belief, atLeast, sd * sd + more)

/** Chance that a reading is a bad one, 0 to 1: the farther from what was expected, the likelier. */
export const chanceBad = (belief: StockBelief, seen: Seen, full: number): number => {
  const good = (1 - BAD) * likelihoodOf(belief, seen, 0)
  const bad = BAD * likelihoodOf(belief, seen, (BAD_SD * full) ** 2)
  return good + bad > 0 ? bad / (good + bad) : 1
}

/**
 * After a reading, where the pans hold `full` portions when full. Closed form: two normal cases
 * merged into one of the same means, variances and covariance.
 */
export const afterReading = (belief: StockBelief, seen: Seen, full: number): StockBelief => {
  const bad = chanceBad(belief, seen, full)
  const one = withSeen(belief, seen, 0)
  const other = withSeen(belief, seen, (BAD_SD * full) ** 2)
  const left = (1 - bad) * one.left + bad * other.left
  const bias = (1 - bad) * one.bias + bad * other.bias
  const merged = (of: (belief: StockBelief) => number): number =>
    (1 - bad) * of(one) + bad * of(other)
  return {
    left: Math.max(0, left),
    leftVar: merged((each) => each.leftVar + (each.left - left) ** 2),
    bias,
    biasVar: merged((each) => each.biasVar + (each.bias - bias) ** 2),
    cov: merged((each) => each.cov + (each.left - left) * (each.bias - bias)),
  }
}

/**
 * After a reading that nothing of before is weighed against: what is left is as it says, and of the
 * bias nothing is learnt. `sd` is its standard deviation in portions.
 */
export const asRead = ({ bias, biasVar }: StockBelief, read: number, sd: number): StockBelief => ({
  left: read,
  leftVar: sd * sd,
  bias,
  biasVar,
  cov: 0,
})

/** From this chance of being bad on a reading is doubted. */
const DOUBTED_FROM = 0.5
/** Readings within so many standard deviations agree. */
const AGREE = 2

/** As a reading of one pan comes. */
export type PanReading = Pick<Doubted, 'pan' | 'kind' | 'amount' | 'at'> & Seen

/**
 * After a reading that may have to be doubted: far from what is believed it moves little, and is
 * remembered. A second one of the same pan that agrees with it and not with the belief wins: what is
 * left is as both say, as sure as the surer of them, and the bias learns nothing of it.
 */
export const afterPanReading = (
  belief: StockBelief,
  { read, atLeast, ...reading }: PanReading,
  full: number,
): StockBelief => {
  const { doubted } = belief
  const { sd } = reading
  if (doubted && doubted.pan === reading.pan) {
    const before = belief.left + doubted.off
    const isAgreed = Math.abs(read - before) <= AGREE * Math.hypot(sd, doubted.sd)
    const off = read - belief.left
    const isFar =
      (atLeast === undefined ? Math.abs(off) : off) >
      AGREE * Math.hypot(sd, Math.sqrt(belief.leftVar))
    if (isAgreed && isFar) {
      const [own, other] = [1 / (sd * sd), 1 / (doubted.sd * doubted.sd)]
      const { bias, biasVar } = belief
      const left = Math.max(0, (own * read + other * before) / (own + other))
      return { left, leftVar: Math.min(sd, doubted.sd) ** 2, bias, biasVar, cov: 0 }
    }
  }
  const seen = { read, sd, ...(atLeast === undefined ? {} : { atLeast }) }
  const after = afterReading(belief, seen, full)
  return chanceBad(belief, seen, full) > DOUBTED_FROM
    ? { ...after, doubted: { ...reading, off: read - after.left } }
    : after
}
