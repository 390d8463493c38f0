/** Looks at every accepted build again when a label, a pan or a back-up isn't as it was. */

import type { Checker } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import { standsInTheWay } from '#lib/service/commands/check-needs.ts'
import type { BuildHeld } from '#lib/service/event.ts'
import { everyTicket } from '#lib/service/every-ticket.ts'
import type { Build, RunningState, Ticket } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

interface Change {
  readonly before: RunningState
  readonly after: RunningState
  readonly reason: BuildHeld['reason']
  readonly checker: Checker | undefined
}

/** The choice with which a build goes on; null where it doesn't, so that nothing is to be checked. */
const goesOnWith = ({ state, choice, stop, hold }: Build) => {
  if (state === 'cancelled' || stop?.reason === 'cancel') return null
  if (stop?.to) return stop.to.choice
  // What is held for a pan may go on when that is found good.
  return hold && hold.reason !== 'off-sale' ? null : choice
}

interface Suspect {
  readonly choice: BuildChoice
  readonly at: { readonly ticket: number; readonly letter: string }
  /** What stands in its way now; null where that can't be said. */
  readonly now: ReadonlySet<string> | null
}

/** Builds in whose way anything stands now. What can't be checked does. */
const suspectsIn = (
  tickets: readonly Ticket[],
  { after, checker }: Change,
  isMeant: (build: Build) => boolean,
): readonly Suspect[] =>
  tickets.flatMap((ticket) =>
    ticket.builds.flatMap((build): Suspect[] => {
      if (!isMeant(build)) return []
      const choice = goesOnWith(build)
      if (!choice || choice.needs.length === 0) return []
      const at = { ticket: ticket.number, letter: build.letter }
      const now = standsInTheWay(after, choice, checker, buildName(at.ticket, at.letter))
      return now?.size === 0 ? [] : [{ choice, at, now }]
    }),
  )

/** Those in whose way something stands that didn't before. Each kitchen is worked out once. */
const holdsOf = (change: Change, isMeant: (build: Build) => boolean): readonly BuildHeld[] =>
  suspectsIn(everyTicket(change.before), change, isMeant).flatMap(
    ({ choice, at, now }): BuildHeld[] => {
      const name = buildName(at.ticket, at.letter)
      const then = now && standsInTheWay(change.before, choice, change.checker, name)
      return !now || !then || [...now].some((one) => !then.has(one))
        ? [{ type: 'buildHeld', ...at, reason: change.reason }]
        : []
    },
  )

/** Whether food for it is still to be taken, as what it is or as what it is to become. */
const isUnmade = ({ state, stop }: Build): boolean =>
  state === 'waiting' || state === 'making' || stop?.to != null

/** Holds for the builds whose food is still to be taken, where that wouldn't fit their guests. */
export const unmadeHolds = (change: Change): readonly BuildHeld[] => holdsOf(change, isUnmade)

/** As above, with the made ones: what got into a pan may be in their food. */
export const openHolds = (change: Change): readonly BuildHeld[] =>
  holdsOf(change, (build) => build.state === 'made' || isUnmade(build))

/** As above, with the handed-over builds of the whole service: their guests are to be found. */
export const allHolds = (change: Change): readonly BuildHeld[] => holdsOf(change, () => true)
