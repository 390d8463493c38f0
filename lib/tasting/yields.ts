/** Measured yields as they are saved, and what they come to for the cards of now. */
import { type CorrectedYield, correctedYield } from '#lib/recipes/measured-yield.ts'

export interface YieldSaved {
  readonly component: string
  /** Hash of all that the card said. */
  readonly card: string
  /** Civil date. */
  readonly on: string
  readonly from: 'tasting' | 'service'
  /** Measured over stated. */
  readonly ratio: number
  /** How often the card was made; null where nobody knows. */
  readonly factor: number | null
  /** As it was typed; null where it was told otherwise. */
  readonly typed: string | null
}

/**
 * By component, of those whose card is still what it was when they were measured.
 * @param cards hash of each component's card as it stands
 */
export const correctedBy = (
  saved: readonly YieldSaved[],
  cards: Readonly<Record<string, string>>,
): Readonly<Record<string, CorrectedYield>> =>
  Object.fromEntries(
    Object.entries(cards).flatMap(([component, card]) => {
      const own = saved
        .filter((one) => one.component === component && one.card === card)
        .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
      const corrected = correctedYield(own.map(({ ratio }) => ratio))
      return corrected ? [[component, corrected]] : []
    }),
  )
