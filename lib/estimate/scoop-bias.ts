/**
 * What the pans of a component really hold, and how heavy or light this station scoops it. Counts
 * are nominal: each made build uses its nominal portions. Readings correct both at once: a Kalman
 * filter over what is left and the bias (pan-reading.ts).
 */

/** Amounts in portions. */
export interface StockBelief {
  readonly left: number
  readonly leftVar: number
  /** What a scoop takes beyond nominal: 0.08 is 8 percent heavy. */
  readonly bias: number
  readonly biasVar: number
  readonly cov: number
  /** A reading far from what was believed, until another one of the same pan. */
  readonly doubted?: Doubted
}

export interface Doubted {
  readonly pan: string
  readonly kind: ReadingKind
  /** What the pan was read to hold, in the component's unit. */
  readonly amount: number
  /** Epoch milliseconds. */
  readonly at: number
  /** Portions beyond what is believed since: what comes or is used changes both alike. */
  readonly off: number
  readonly sd: number
}

/** How a component is portioned, as far as it is known beforehand. */
export interface Portioning {
  /** Standard deviation of the bias of a station that was never measured. */
  readonly biasSd: number
  /** Standard deviation of one portion around its mean, relative. */
  readonly scoopSd: number
}

/** Scooped food: bias within about 15 percent either way, single scoops by 10. Common practice, no source. */
export const SCOOPED: Portioning = { biasSd: 0.09, scoopSd: 0.1 }
/** Pieces and lidded cups are counted: a piece is a piece. */
export const COUNTED: Portioning = { biasSd: 0, scoopSd: 0 }

export type ReadingKind = 'weighing' | 'count' | 'eye-check'

/** Standard deviation of a reading in portions, of a pan that holds `full` when full. */
export const readingSd = (kind: ReadingKind, full: number): number => {
  switch (kind) {
    case 'weighing':
      return Math.max(0.15, 0.01 * full)
    case 'count':
      return 0.3
    case 'eye-check':
      // Quarters are 25 percent apart, which alone is 7; the eye adds as much again.
      return Math.max(0.7, 0.1 * full)
  }
}

/** Before anything is loaded; `known` is what earlier services of this station taught. */
export const firstBelief = (
  { biasSd }: Portioning,
  known: { readonly bias: number; readonly sd: number } | null = null,
): StockBelief => ({
  left: 0,
  leftVar: 0,
  bias: known?.bias ?? 0,
  biasVar: (known?.sd ?? biasSd) ** 2,
  cov: 0,
})

/** After portions were put in, with the standard deviation of how many it really was. */
export const afterLoad = (belief: StockBelief, portions: number, sd: number): StockBelief => ({
  ...belief,
  left: belief.left + portions,
  leftVar: belief.leftVar + sd * sd,
})

/** After portions were taken away whole, as a pan is: how many it really was is as unsure as they were. */
export const afterTakenAway = (belief: StockBelief, portions: number): StockBelief => {
  const left = Math.max(0, belief.left - portions)
  const share = belief.left > 0 ? left / belief.left : 0
  return { ...belief, left, leftVar: belief.leftVar * share ** 2, cov: belief.cov * share }
}

/** After nominal portions were used. */
export const afterUse = (
  belief: StockBelief,
  portions: number,
  { scoopSd }: Portioning,
): StockBelief => ({
  ...belief,
  left: belief.left - portions * (1 + belief.bias),
  leftVar:
    belief.leftVar -
    2 * portions * belief.cov +
    portions * portions * belief.biasVar +
    portions * scoopSd * scoopSd,
  cov: belief.cov - portions * belief.biasVar,
})

/** 5 percent lie beyond this many standard deviations on either side. */
const NINETY = 1.645

export interface BiasRange {
  readonly bias: number
  readonly from: number
  readonly to: number
}

/** The bias with its 90 percent interval. */
export const biasRange = ({ bias, biasVar }: StockBelief): BiasRange => {
  const reach = NINETY * Math.sqrt(biasVar)
  return { bias, from: bias - reach, to: bias + reach }
}

/** How many portions a pan still serves as this station scoops: mean and standard deviation. */
export const servings = (belief: StockBelief): { readonly mean: number; readonly sd: number } => {
  const scoop = 1 + belief.bias
  const mean = Math.max(0, belief.left / scoop)
  const variance = belief.leftVar - 2 * mean * belief.cov + mean * mean * belief.biasVar
  return { mean, sd: Math.sqrt(Math.max(0, variance)) / scoop }
}

/**
 * What a heavy or light hand makes of `nominal` portions in the pans: whole percent and whole portions
 * fewer (below zero: more). Null while the 90 percent interval doesn't tell heavy from light.
 */
export const biasSaid = (
  belief: StockBelief,
  nominal: number,
): { readonly percent: number; readonly fewer: number } | null => {
  const { bias, from, to } = biasRange(belief)
  if (from <= 0 && to >= 0) return null
  const percent = Math.round(bias * 100)
  return percent === 0 ? null : { percent, fewer: Math.round(nominal - nominal / (1 + bias)) }
}
