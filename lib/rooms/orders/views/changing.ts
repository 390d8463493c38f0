/** Orders that begin with an accepted build: to change it, or because its guest tells a need late. */

import { keeps, knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { type Draft, draftOf, EMPTY_DRAFT, type Wish } from '#lib/rooms/orders/facts/draft.ts'
import { nextGuest, reopen } from '#lib/rooms/orders/views/order-answered.ts'
import type { BuildAt, Ordering, ShortWay, Told } from '#lib/rooms/orders/views/ordering.ts'
import { goesOnAs } from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, findTicket } from '#lib/service/tickets.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'
import { findItem } from '#lib/station/find.ts'

const inThatWay = (draft: Draft, choice: BuildChoice, way: ShortWay): Draft => {
  if (way.item !== null) return { ...draft, item: way.item, base: null, wishes: {} }
  const fewer = Object.entries(way.fewer).map(([id, portions]): [string, Wish] => [
    id,
    { placement: choice.parts[id]?.placement ?? 'in', portions },
  ])
  return {
    ...draft,
    base: way.base ?? draft.base,
    wishes: { ...draft.wishes, ...Object.fromEntries(fewer) },
  }
}

/** The accepted build as a draft; where it is held, with the needs that were told since. */
export const changeBuild = (
  ordering: Ordering,
  at: BuildAt,
  state: RunningState,
  way: ShortWay | null = null,
): Ordering => {
  const build = findBuild(state, at.ticket, at.letter)
  // Who isn't sure orders nothing anew: it is cancelled, or told of by the person in charge.
  if (!build || build.hold?.told?.asked === 'not-sure') return ordering
  const { hold } = build
  const choice = goesOnAs(build)
  const needs = knownNeeds(build)
  // What is held is ordered anew: nothing of it counts as accepted.
  const from: BuildChoice = hold
    ? { ...choice, needs, asked: needs.length > 0 ? 'needs' : choice.asked, caution: null }
    : choice
  const changing = { ticket: at.ticket, letter: at.letter, keeps: way?.keeps ?? null }
  const draft = draftOf(findItem(state.station, choice.item), from)
  const drafts = [way ? inThatWay(draft, choice, way) : draft]
  return reopen(ordering, { drafts, name: '', paid: false, changing }, null)
}

/** Asks a guest who has ordered, beginning with what they told before. */
export const tellNeed = (ordering: Ordering, at: BuildAt, state: RunningState): Ordering => {
  const build = findBuild(state, at.ticket, at.letter)
  if (!build) return ordering
  const { asked, item } = goesOnAs(build)
  const drafts = [{ ...EMPTY_DRAFT, asked, needs: knownNeeds(build), item }]
  return { ...nextGuest(ordering), drafts, step: 'ask', telling: at }
}

/** Whether needs told late say anything beyond what is known: a new one, or a stricter. */
export const isTelling = (own: readonly Need[], told: readonly Need[]): boolean =>
  told.some((need) => !keeps(own, need))

/** What no tap takes away or weakens: needs of the accepted build that an order is about. */
export const keptNeeds = (
  { changing, telling }: Ordering,
  state: RunningState,
): readonly Need[] => {
  const at = changing ?? telling
  const build = at && findBuild(state, at.ticket, at.letter)
  return build ? knownNeeds(build) : []
}

/** Whether a need that stays is kept apart: it can't be made less strict. */
export const staysApart = (kept: readonly Need[], code: NeedCode): boolean =>
  kept.some((one) => one.code === code && one.handling === 'keep-apart')

/** Letters of the ticket's other open builds that don't know yet what one's guest told. */
export const othersToAsk = (
  state: RunningState,
  { ticket, letter }: BuildAt,
  told: Told,
): readonly string[] =>
  (findTicket(state, ticket)?.builds ?? [])
    .filter(
      (build) =>
        build.letter !== letter &&
        (build.state === 'waiting' || build.state === 'making' || build.state === 'made') &&
        build.stop?.reason !== 'cancel' &&
        (told.asked === 'not-sure'
          ? build.hold?.told?.asked !== 'not-sure'
          : isTelling(knownNeeds(build), told.needs)),
    )
    .map((build) => build.letter)

/** It was told, and its build is stopped: the ticket's other builds are asked about, each. */
export const needTold = (ordering: Ordering, told: Told, state: RunningState): Ordering => {
  const { telling } = ordering
  if (!telling) return ordering
  const letters = othersToAsk(state, telling, told)
  return afterTelling({ ...ordering, step: 'others', others: { letters, told } }, state)
}

/** One of the others was answered; after the last the build that was told of is ordered anew. */
export const otherAnswered = (
  ordering: Ordering,
  letter: string,
  state: RunningState,
): Ordering => {
  const { others } = ordering
  if (ordering.step !== 'others' || !others) return ordering
  const letters = others.letters.filter((one) => one !== letter)
  return afterTelling({ ...ordering, others: { ...others, letters } }, state)
}

/** A guest who isn't sure orders nothing anew: what is stopped is cancelled, or the person in charge asks. */
const afterTelling = (ordering: Ordering, state: RunningState): Ordering => {
  const { others, telling } = ordering
  if (!others || !telling || others.letters.length > 0) return ordering
  return others.told.asked === 'not-sure'
    ? { ...nextGuest(ordering), step: 'tickets' }
    : changeBuild(ordering, telling, state)
}
