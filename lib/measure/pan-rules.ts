import { type PanDepthIn, type PanSize, panUsableMl } from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'

/** What a pan may hold at most, in its component's unit; null where nobody stated it. */
export type PanLimit =
  | { readonly unit: 'mg'; readonly most: number | null }
  | { readonly unit: 'piece'; readonly most: number | null }

/**
 * The most milligrams of a food that a pan holds, usable and not to the brim, rounded down in the
 * milligram; null where the pan's capacity or the food's density isn't known.
 */
export const mostMg = (
  size: PanSize,
  depthIn: PanDepthIn,
  gPerMl: number | null,
  statedUsableMl: number | null = null,
): number | null => {
  const ml = statedUsableMl ?? panUsableMl(size, depthIn)
  return ml === null || gPerMl === null ? null : Math.floor(ml * gPerMl * 1000)
}

export type AmountProblem =
  | { readonly code: 'no-amount' }
  | { readonly code: 'overfull'; readonly most: number }
  | { readonly code: 'below-tare'; readonly tareMg: number }

/**
 * Whether a pan can be filled with so much: whole and above 0, and not above what it holds. Where
 * its capacity is unknown nothing is refused for it.
 */
export const fillProblem = (amount: number, most: number | null): AmountProblem | null => {
  if (!Number.isSafeInteger(amount) || amount < 1) return { code: 'no-amount' }
  return most !== null && amount > most ? { code: 'overfull', most } : null
}

export type Weighed =
  | { readonly ok: true; readonly netMg: number }
  | { readonly ok: false; readonly problem: AmountProblem }

/**
 * What a pan holds by weighing: gross minus tare, whole milligrams, both 0 or more. A gross weight
 * below the tare is refused (the wrong pan, or the scale), and one above what the pan holds. Exactly
 * the tare is an empty pan. Throws RangeError for weights that aren't whole milligrams.
 */
export const weigh = (grossMg: number, tareMg: number, most: number | null): Weighed => {
  for (const one of [grossMg, tareMg])
    if (!Number.isSafeInteger(one) || one < 0) throw new RangeError('weights are whole milligrams')
  const netMg = grossMg - tareMg
  if (netMg < 0) return { ok: false, problem: { code: 'below-tare', tareMg } }
  return most !== null && netMg > most
    ? { ok: false, problem: { code: 'overfull', most } }
    : { ok: true, netMg }
}

export interface WellPans {
  readonly well: string
  readonly pans: readonly { readonly pan: string; readonly size: PanSize }[]
}

export type PlaceProblem =
  | { readonly code: 'no-such-well'; readonly well: string }
  | { readonly code: 'on-two-wells'; readonly pan: string; readonly well: string }
  | { readonly code: 'does-not-fit'; readonly well: string }

/**
 * Whether a pan can be set into a well, in place of another where `insteadOf` names one: it stands
 * nowhere else already, and fits beside what stays there.
 */
export const placeProblem = (
  wells: readonly WellPans[],
  into: string,
  pan: { readonly pan: string; readonly size: PanSize },
  insteadOf: string | null = null,
): PlaceProblem | null => {
  const well = wells.find((one) => one.well === into)
  if (!well) return { code: 'no-such-well', well: into }
  const other = wells.find((one) => one.pans.some((each) => each.pan === pan.pan))
  if (other && pan.pan !== insteadOf)
    return { code: 'on-two-wells', pan: pan.pan, well: other.well }
  const stays = well.pans.filter((one) => one.pan !== insteadOf && one.pan !== pan.pan)
  return fitsOneWell([...stays.map((one) => one.size), pan.size])
    ? null
    : { code: 'does-not-fit', well: into }
}
