/** How often a pot, a pan or an oven is filled. */
import { type Amount, type Density, scaled, timesIn } from '#lib/recipes/amount.ts'
import { ceilOf, dividedBy, isZero, type Rational, ratio } from '#lib/recipes/rational.ts'

export type Batches =
  | {
      readonly ok: true
      /** Whole ones, 1 or more, all of one size, so that each cooks alike. */
      readonly count: number
      readonly each: Amount
      /** Of the whole recipe as it is scaled. */
      readonly share: Rational
    }
  | { readonly ok: false; readonly code: 'weight-and-volume' | 'zero' }

/**
 * As few even batches as fit. `fits`: what is put in at once, usable and not to the brim.
 */
export const batchesOf = (all: Amount, fits: Amount, density: Density | null): Batches => {
  if (isZero(all.size) || isZero(fits.size)) return { ok: false, code: 'zero' }
  const times = timesIn(all, fits, density)
  if (times === null) return { ok: false, code: 'weight-and-volume' }
  const share = dividedBy(ratio(1), ratio(ceilOf(times)))
  return { ok: true, count: Number(ceilOf(times)), each: scaled(all, share), share }
}
