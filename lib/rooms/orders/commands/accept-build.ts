/** Whether a guest's choice can be accepted: of this menu, of what it may leave out, of its needs. */

import { fitting } from '#lib/rooms/care/facts/check-needs.ts'
import { chosen } from '#lib/rooms/care/facts/chosen.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import { type BuildChoice, priceOf, takesOf } from '#lib/service/events/build-choice.ts'
import type { AcceptedBuild } from '#lib/service/events/event.ts'
import { foodKey } from '#lib/service/events/food-key.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What a change starts from. */
interface Accepted extends Pick<AcceptedBuild, 'choice' | 'takes'> {
  /** "21A": acceptances that it used are its own. */
  readonly name: string
}

/** An acceptance counts for the food that it was given for, and so for no other. */
const underItsOwn = (state: RunningState, choice: BuildChoice): BuildChoice => {
  const acceptance = state.cautions[`c${choice.caution}`]
  return acceptance === undefined || acceptance.food === foodKey(choice)
    ? choice
    : { ...choice, caution: null }
}

/**
 * A choice as an accepted build, or why not. Says nothing about what the pans hold or what is sold.
 * `before` is the build that is changed, if one is.
 */
export const acceptBuild = (
  state: RunningState,
  letter: string,
  sent: BuildChoice,
  known: Pick<Circumstances, 'newestLabels' | 'checker'>,
  before: Accepted | null = null,
): { readonly build: AcceptedBuild } | { readonly refusal: Refusal } => {
  const found = chosen(state, sent)
  if ('refusal' in found) return found
  const { item } = found
  const own = underItsOwn(state, found.choice)
  const fit = fitting(state, letter, own, known, before?.name ?? null)
  if ('refusal' in fit) return fit
  const choice = { ...own, caution: fit.caution }
  const takes = takesOf(choice, state.portions)
  return { build: { letter, choice, takes, priceCents: priceOf(state.station, item, choice) } }
}
