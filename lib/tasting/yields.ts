/** Measured yields as they are saved, and what they come to for the cards of now. */
import { type CorrectedYield, correctedYield } from '#lib/recipes/measured-yield.ts'

export interface YieldSaved {
  /** Of its tasting and food, or of its service and batch: no two in a house. */
  readonly id: string
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
  /** Portions of a load as the house said then; null where it says none. */
  readonly load: number | null
  /** Taken out again: it corrects nothing, and its row stays. null where it counts. */
  readonly out: YieldOut | null
}

export interface YieldOut {
  /** Epoch milliseconds. */
  readonly at: number
  /** Id of the command that took it out; whose initials those were lies in the second file. */
  readonly by: string
}

/**
 * By component, of those that weren't taken out and whose card is still what it was when they were measured, and its load too:
 * where somebody typed what a load really gives, that isn't corrected once more.
 * @param cards hash of each component's card as it stands
 * @param loads portions of its load as the house says it now
 */
export const correctedBy = (
  saved: readonly YieldSaved[],
  cards: Readonly<Record<string, string>>,
  loads: Readonly<Record<string, number | null>>,
): Readonly<Record<string, CorrectedYield>> =>
  Object.fromEntries(
    Object.entries(cards).flatMap(([component, card]) => {
      const own = saved
        .filter(
          (one) =>
            one.component === component &&
            one.card === card &&
            one.out === null &&
            one.load === (loads[component] ?? null),
        )
        .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
      const corrected = correctedYield(own.map(({ ratio }) => ratio))
      return corrected ? [[component, corrected]] : []
    }),
  )
