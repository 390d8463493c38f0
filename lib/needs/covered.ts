/** Whether a caution that stands is one that was accepted. */

import { byWorst } from '#lib/needs/allergen-word.ts'
import type { Finding } from '#lib/needs/judge.ts'

/** What an acceptance of a caution is about. */
interface Cautioned extends Pick<Finding, 'component' | 'need' | 'why' | 'touches' | 'reached'> {
  /** What each was declared; older acceptances don't say. */
  readonly states?: Finding['states']
}

const isWorse = (now: Cautioned['states'], then: Cautioned['states']): boolean =>
  then !== undefined &&
  (now === undefined ||
    Object.entries(now).some(([one, state]) => byWorst(state, then[one] ?? 'free') < 0))

/**
 * Whether what stands now was accepted: the same caution of the same component and need, nothing
 * reaches it that wasn't told then, and nothing of it is declared worse than was told.
 */
export const isCovered = (now: Cautioned, accepted: Cautioned): boolean =>
  now.component === accepted.component &&
  now.need === accepted.need &&
  now.why === accepted.why &&
  now.touches === accepted.touches &&
  now.reached.every((one) => accepted.reached.includes(one)) &&
  !isWorse(now.states, accepted.states)
