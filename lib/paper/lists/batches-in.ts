/** Into how many batches a plan's food is split, and what each is made in. */
import type { Vessel } from '#lib/editor/cards/card-box.ts'
import type { Amount, Density } from '#lib/recipes/amount.ts'
import { type Batches, batchesOf } from '#lib/recipes/batches.ts'
import { fitsTyped } from '#lib/recipes/wanted.ts'

type Fitting = Batches & { readonly ok: true }

export interface Split {
  /** As few even ones as fit; null where nobody said what is made at once at most. */
  readonly batches: Fitting | null
  /** The pot, griddle or oven of its card; null where nobody said. */
  readonly vessel: Vessel | null
  /** Whether one of the batches is known to fit into it; of no vessel true. */
  readonly isFitKnown: boolean
}

const fitting = (all: Amount, most: Amount | null, density: Density | null): Fitting | null => {
  const batches = most === null ? null : batchesOf(all, most, density)
  return batches?.ok ? batches : null
}

/**
 * By what goes into the vessel and what is made at once at most, whichever is less.
 * @param all what is made of it in all
 * @param most at once, as its pan says; null: nobody said
 */
export const splitOf = (
  all: Amount,
  most: Amount | null,
  vessel: Vessel | null,
  density: Density | null,
): Split => {
  const holds = vessel && fitsTyped(vessel.holds)
  const byMost = fitting(all, most, density)
  const byVessel = fitting(all, holds?.ok ? holds.fits : null, density)
  const isLess = byVessel !== null && byVessel.count >= (byMost?.count ?? 0)
  return {
    batches: isLess ? byVessel : byMost,
    vessel,
    isFitKnown: vessel === null || byVessel !== null,
  }
}
