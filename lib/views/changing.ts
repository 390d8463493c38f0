/** Orders that begin with an accepted build: to change it, or because its guest tells a need late. */
import { findItem } from '#lib/menu/find.ts'
import type { Need } from '#lib/needs/codes.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { withTold } from '#lib/views/asking.ts'
import { draftOf, EMPTY_DRAFT } from '#lib/views/draft.ts'
import { nextGuest, reopen } from '#lib/views/order-answered.ts'
import type { BuildAt, Ordering } from '#lib/views/ordering.ts'

/** The accepted build as a draft; where it is held, with the needs that were told since. */
export const changeBuild = (ordering: Ordering, at: BuildAt, state: RunningState): Ordering => {
  const build = findBuild(state, at.ticket, at.letter)
  if (!build) return ordering
  const { choice, hold } = build
  const needs = withTold(choice.needs, hold?.told?.needs ?? [])
  // What is held is ordered anew: nothing of it counts as accepted.
  const from: BuildChoice = hold
    ? { ...choice, needs, asked: needs.length > 0 ? 'needs' : choice.asked, caution: null }
    : choice
  const draft = draftOf(findItem(state.station, choice.item), from)
  const unsure = hold?.told?.asked === 'not-sure'
  const drafts = [unsure ? { ...draft, asked: null } : draft]
  return reopen(ordering, { drafts, name: '', paid: false, changing: at }, null)
}

/** Asks a guest who has ordered, beginning with what they told before. */
export const tellNeed = (ordering: Ordering, at: BuildAt, state: RunningState): Ordering => {
  const build = findBuild(state, at.ticket, at.letter)
  if (!build) return ordering
  const { asked, needs } = build.choice
  const drafts = [{ ...EMPTY_DRAFT, asked, needs, item: build.choice.item }]
  return { ...nextGuest(ordering), drafts, step: 'ask', telling: at }
}

/** Whether needs told late say anything beyond those of the order: a new one, or a stricter. */
export const isTelling = (own: readonly Need[], told: readonly Need[]): boolean =>
  told.some((need) => {
    const before = own.find((one) => one.code === need.code)
    return (
      before === undefined || (need.handling === 'keep-apart' && before.handling === 'leave-out')
    )
  })
