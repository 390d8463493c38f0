/** What own batches really made against what the card states, and how sure that is. */
import type { Card, CardBox } from '#lib/recipes/card.ts'

/** Older ones were made by other hands. */
const NEWEST = 9

/** Of means so reckoned, so many hold the true one in their range. */
export const SURE = 0.95

export interface CorrectedYield {
  /** How many batches it comes of, one or more. */
  readonly batches: number
  /** Their mean, measured over stated: 0.88 makes 17.6 where the card states 20. */
  readonly ratio: number
  /** Where the mean of many batches lies, 95 times in 100; null of one batch, which says nothing of it. */
  readonly range: { readonly low: number; readonly high: number } | null
}

/**
 * The chance that Student's t lies within ±t; `freedom` a whole number of 1 or more. Exact finite
 * sums: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory).
 */
export const withinStudentT = (t: number, freedom: number): number => {
  const angle = Math.atan(t / Math.sqrt(freedom))
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)]
  const isOdd = freedom % 2 === 1
  let term = isOdd ? cosine : 1
  let sum = freedom === 1 ? 0 : term
  for (let n = isOdd ? 3 : 2; n < freedom; n += 2) {
    term *= ((n - 1) / n) * cosine * cosine
    sum += term
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum
}

/** The t within which Student's t lies with a chance above 0 and below 1: 12.706 at 0.95 with freedom 1. */
export const studentT = (chance: number, freedom: number): number => {
  let high = 1
  while (withinStudentT(high, freedom) < chance) high *= 2
  let low = 0
  for (let step = 0; step < 200 && high > low; step += 1) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if (withinStudentT(middle, freedom) < chance) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * The mean of the newest batches, and its range by Student's t: mean ± t·s/√n, as NIST/SEMATECH,
 * e-Handbook of Statistical Methods, 1.3.5.2 (from memory). An amount isn't below nothing, so no
 * range is.
 *
 * @param ratios measured over stated, above 0, the oldest first
 * @returns null where none was measured
 */
export const correctedYield = (ratios: readonly number[]): CorrectedYield | null => {
  const newest = ratios.slice(-NEWEST)
  const batches = newest.length
  if (batches === 0) return null
  const ratio = newest.reduce((sum, one) => sum + one, 0) / batches
  if (batches === 1) return { batches, ratio, range: null }
  const squares = newest.reduce((sum, one) => sum + (one - ratio) ** 2, 0)
  const off = studentT(SURE, batches - 1) * Math.sqrt(squares / (batches - 1) / batches)
  return { batches, ratio, range: { low: Math.max(0, ratio - off), high: ratio + off } }
}

/** Whole portions that so many stated ones come to; at least one, as no load is nothing. */
export const correctedPortions = (stated: number, corrected: CorrectedYield | undefined): number =>
  // What a double can't hold isn't a portion less: 20 × 0.85 is 17.
  corrected ? Math.max(1, Math.floor(stated * corrected.ratio + 1e-9)) : stated

/**
 * All that a card says of its amounts and its yield, with the cards that go into it: what was
 * measured of one counts for no other. Names may change.
 */
export const cardText = (card: Card, box: CardBox, within: readonly string[] = []): string => {
  const lines = card.lines.map(({ of, isRecipe, typed }) => {
    const other = isRecipe && !within.includes(of) ? box.cards.get(of) : undefined
    const inside = other ? [cardText(other, box, [...within, card.id])] : []
    return [of, typed.trim(), ...inside]
  })
  return JSON.stringify([card.yields.trim(), lines])
}
