/** Looks at every accepted build again when a label, a pan or a back-up isn't as it was. */

import type { Checker } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import { standsInTheWay } from '#lib/service/commands/check-needs.ts'
import type { BuildHeld } from '#lib/service/event.ts'
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
  return hold ? null : choice
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
  handedOver: boolean,
): readonly Suspect[] =>
  tickets.flatMap((ticket) =>
    ticket.builds.flatMap((build): Suspect[] => {
      if (build.state === 'handed-over' && !handedOver) return []
      const choice = goesOnWith(build)
      if (!choice || choice.needs.length === 0) return []
      const at = { ticket: ticket.number, letter: build.letter }
      const now = standsInTheWay(after, choice, checker, buildName(at.ticket, at.letter))
      return now?.size === 0 ? [] : [{ choice, at, now }]
    }),
  )

/** Those in whose way something stands that didn't before. Each kitchen is worked out once. */
const holdsIn = (tickets: readonly Ticket[], change: Change, handedOver: boolean): BuildHeld[] =>
  suspectsIn(tickets, change, handedOver).flatMap(({ choice, at, now }): BuildHeld[] => {
    const name = buildName(at.ticket, at.letter)
    const then = now && standsInTheWay(change.before, choice, change.checker, name)
    return !now || !then || [...now].some((one) => !then.has(one))
      ? [{ type: 'buildHeld', ...at, reason: change.reason }]
      : []
  })

const byNumber = (tickets: readonly Ticket[]): readonly Ticket[] =>
  [...tickets].sort((one, other) => one.number - other.number)

/** Holds for the open builds that no longer fit their guests. */
export const openHolds = (change: Change): readonly BuildHeld[] =>
  holdsIn(byNumber(Object.values(change.before.tickets)), change, false)

/** As above, with the handed-over builds of the whole service: their guests are to be found. */
export const allHolds = (change: Change): readonly BuildHeld[] =>
  holdsIn(
    byNumber([
      ...Object.values(change.before.tickets),
      ...Object.values(change.before.past).flatMap((chunk) => Object.values(chunk)),
    ]),
    change,
    true,
  )
