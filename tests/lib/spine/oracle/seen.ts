/** One thing that happened, as the laws look at it. */
import type { Recorded } from '#lib/service/events/event.ts'
import { everyTicket } from '#lib/service/every-ticket.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import type { Ledger } from '#tests/lib/spine/oracle/ledger.ts'

export interface Seen {
  readonly before: RunningState
  readonly after: RunningState
  readonly events: readonly Recorded[]
  /** A document is newer than the one that the service works with. */
  readonly isStale: boolean
  /** As it was before this happened. */
  readonly earlier: Ledger
  /** With this written down. */
  readonly ledger: Ledger
}

/** What isn't as it must be, in a sentence; nothing where all is. */
export type Law = (seen: Seen) => readonly string[]

export interface Named {
  readonly name: string
  readonly build: Build
}

export const everyBuild = (state: RunningState): readonly Named[] =>
  everyTicket(state).flatMap(({ number, builds }) =>
    builds.map((build) => ({ name: buildName(number, build.letter), build })),
  )

export const isUnmade = ({ state, stop }: Build): boolean =>
  state === 'waiting' || state === 'making' || stop?.to != null
