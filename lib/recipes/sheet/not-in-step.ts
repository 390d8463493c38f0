/** What of a whole card doesn't go up with its amounts: how long it takes, and how deep it lies. */
import type { PanDepthIn } from '#lib/measure/pans.ts'
import { isFarFromCard } from '#lib/recipes/by-itself.ts'
import { type Rational, times } from '#lib/recipes/rational.ts'
import type { Yield } from '#lib/recipes/typed-yield.ts'

export type NotInStep =
  /** More or less of it at once heats, cools and bakes in another time than the card's. */
  | { readonly code: 'time' }
  /** It lies in pans of another depth than the card's, or than anybody said: `card` null. */
  | { readonly code: 'depth'; readonly card: PanDepthIn | null; readonly made: PanDepthIn }

const depthOf = (yields: Yield | null): PanDepthIn | null =>
  yields?.kind === 'pans' ? yields.depthIn : null

/**
 * What is told of a card that is made at once `share` of `factor` times: its time where that is far
 * from the card's own amount, or in pans of another depth. Common practice, no source: so it is
 * told, and no other time is put in the place of the card's.
 *
 * @param madeIn pans that were named, under Make or as what fits at once
 */
export const notInStep = (
  card: Yield | null,
  factor: Rational,
  share: Rational,
  madeIn: readonly (Yield | null)[],
): readonly NotInStep[] => {
  const own = depthOf(card)
  const made = madeIn.map(depthOf).findLast((one) => one !== null) ?? null
  const isOther = made !== null && made !== own
  return [
    ...(isOther || isFarFromCard(times(factor, share)) ? [{ code: 'time' as const }] : []),
    ...(isOther ? [{ code: 'depth' as const, card: own, made }] : []),
  ]
}
