import { needsOf } from '#lib/rooms/care/facts/held.ts'
import { isPast } from '#lib/rooms/shelf/views/is-past.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { itemOf } from '#lib/station/find.ts'

/** A made build that may be one of those which can't be told apart. */
export interface MayBeMixedUp {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  /** It is of the same item as the one that was picked, or is that one. */
  readonly isAlike: boolean
  readonly isKeptApart: boolean
  /** It is held: thrown out, it waits for the counter or the person in charge. */
  readonly isHeld: boolean
}

export interface MixedUpView {
  /** The one that was picked, those that look like it, then the rest; of each the oldest first. */
  readonly builds: readonly MayBeMixedUp[]
  /** Names of those that look like it and are past their time: they are initialled, each by itself. */
  readonly past: readonly string[]
}

const nameOf = ({ ticket, build }: QueuedBuild): string => buildName(ticket.number, build.letter)

/**
 * What stands made, for somebody who isn't sure which is which; null where the one that was picked
 * isn't there any more. `now` is the server's time, epoch milliseconds.
 */
export const mixedUpView = (
  state: RunningState,
  picked: string,
  now: number,
): MixedUpView | null => {
  const made = openBuilds(state)
    .filter(({ build }) => build.state === 'made')
    .sort((one, other) => one.build.since - other.build.since)
  const item = made.find((one) => nameOf(one) === picked)?.build.choice.item
  if (item === undefined) return null
  const isGone = (one: QueuedBuild) => one.build.hold === null && isPast(state, one, now)
  const rank = (one: MayBeMixedUp) => (one.name === picked ? 0 : one.isAlike ? 1 : 2)
  return {
    builds: made
      .filter((one) => !isGone(one))
      .map((one) => ({
        ticket: one.ticket.number,
        letter: one.build.letter,
        name: nameOf(one),
        item: itemOf(state.station, one.build.choice.item).name,
        isAlike: one.build.choice.item === item,
        isKeptApart: needsOf(one.build).some(({ handling }) => handling === 'keep-apart'),
        isHeld: one.build.hold !== null,
      }))
      .sort((one, other) => rank(one) - rank(other)),
    past: made.filter((one) => isGone(one) && one.build.choice.item === item).map(nameOf),
  }
}
