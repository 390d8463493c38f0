/** Builds that a guest comes back about. */

import { shownNameKey } from '#lib/rooms/care/facts/name-shown.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import type { Build, RunningState, Ticket, ToFind } from '#lib/service/state.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'

export interface TicketBuild extends QueuedBuild {
  readonly canChange: boolean
  readonly canCancel: boolean
  /** Its guest told that they aren't sure: it isn't changed here. */
  readonly isUnsure: boolean
  /** Its guest can still tell a need. */
  readonly canTell: boolean
  /** The command under which a name is kept; null where no name may be shown. */
  readonly nameKey: string | null
}

/** How many handed-over builds are listed: their guests may still stand there. */
const MOST_HANDED_OVER = 12

const shown = (ticket: Ticket, build: Build): TicketBuild => {
  const isHeld = build.hold !== null
  const isUnsure = build.hold?.told?.asked === 'not-sure'
  const isOpen = build.state === 'waiting' || build.state === 'making'
  return {
    ticket,
    build,
    canChange: !isUnsure && (isHeld || (build.stop === null && isOpen)),
    isUnsure,
    canCancel: isHeld || (build.stop === null && build.state !== 'handed-over'),
    canTell: build.state !== 'cancelled',
    nameKey: shownNameKey(ticket),
  }
}

/** Builds that the pans can no longer fill, by name, newest first, without those whose guests wait. */
export const shortNow = (state: RunningState): readonly string[] => {
  const short = shortBuilds(state)
  if (short.size === 0) return []
  return openBuilds(state)
    .toReversed()
    .map(({ ticket, build }) => buildName(ticket.number, build.letter))
    .filter((name) => short.has(name) && state.waits[name]?.component !== short.get(name))
}

/** Held ones first, then short ones, then the newest ticket first: the one that a guest comes back about. */
export const ticketsToChange = (state: RunningState): readonly TicketBuild[] => {
  const short = shortBuilds(state)
  const isShort = ({ ticket, build }: QueuedBuild) =>
    short.has(buildName(ticket.number, build.letter))
  return [...openBuilds(state)]
    .sort(
      (one, other) =>
        Number(other.build.hold !== null) - Number(one.build.hold !== null) ||
        Number(isShort(other)) - Number(isShort(one)) ||
        other.ticket.number - one.ticket.number ||
        (isShort(one) ? other.build.letter.localeCompare(one.build.letter) : 0),
    )
    .map(({ ticket, build }) => shown(ticket, build))
}

/** The newest handed-over builds, those whose guests are to be found before the others. */
export const handedOverLately = (state: RunningState): readonly TicketBuild[] => {
  const tickets = [
    ...Object.values(state.tickets),
    ...Object.values(state.past).flatMap((chunk) => Object.values(chunk)),
  ]
  return tickets
    .flatMap((ticket) =>
      ticket.builds
        .filter((build) => build.state === 'handed-over')
        .map((build) => shown(ticket, build)),
    )
    .sort(
      (one, other) =>
        Number(other.build.hold !== null) - Number(one.build.hold !== null) ||
        other.build.since - one.build.since,
    )
    .slice(0, MOST_HANDED_OVER)
}

export interface Held {
  /** Builds that are stopped until they are ordered anew or cancelled, by name. */
  readonly builds: readonly string[]
  /** Handed-over builds whose guests are to be found. */
  readonly find: readonly ToFind[]
}

export const heldNow = (state: RunningState): Held => ({
  builds: openBuilds(state)
    .filter(({ build }) => build.hold !== null)
    .map(({ ticket, build }) => buildName(ticket.number, build.letter)),
  find: Object.values(state.toFind),
})
