import { itemOf } from '#lib/menu/find.ts'
import type { BuildState, RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { type Mark, markOf } from '#lib/views/mark.ts'
import { shownNameKey } from '#lib/views/name-shown.ts'

/** Another build of the same ticket, and where it is. */
export interface Sibling {
  readonly name: string
  readonly state: BuildState
}

export interface OnShelf {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly mark: Mark
  /** It is handed over alone, after the guest was asked. */
  readonly askFirst: boolean
  /** The command under which a name is kept; null where no name may be shown. */
  readonly nameKey: string | null
  readonly madeAt: number
  readonly paid: boolean
  /** What the ticket costs, in cents, cancelled builds not counted. */
  readonly totalCents: number
  readonly siblings: readonly Sibling[]
}

export interface HandedOver {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly at: number
}

export interface Coming {
  readonly name: string
  readonly state: 'waiting' | 'making'
}

export interface HandOverView {
  /** Made, the one that stands longest first. */
  readonly shelf: readonly OnShelf[]
  /** Being made first, then what waits. */
  readonly coming: readonly Coming[]
  /** The newest first. */
  readonly recent: readonly HandedOver[]
  readonly handedOver: number
}

const RECENT_SHOWN = 6
const CHUNKS_LOOKED_AT = 2

const recentlyHandedOver = (state: RunningState): readonly HandedOver[] => {
  const chunks = Object.keys(state.past)
    .sort((one, other) => Number(other) - Number(one))
    .slice(0, CHUNKS_LOOKED_AT)
    .flatMap((chunk) => Object.values(state.past[chunk] ?? {}))
  return [...chunks, ...Object.values(state.tickets)]
    .flatMap((ticket) =>
      ticket.builds
        .filter((build) => build.state === 'handed-over')
        .map((build) => ({
          ticket: ticket.number,
          letter: build.letter,
          name: buildName(ticket.number, build.letter),
          item: itemOf(state.station, build.choice.item).name,
          at: build.since,
        })),
    )
    .sort((one, other) => other.at - one.at)
    .slice(0, RECENT_SHOWN)
}

/** What stands on the shelf, what comes, and what just went. */
export const handOverView = (state: RunningState): HandOverView => {
  const open = openBuilds(state)
  return {
    shelf: open
      .filter(({ build }) => build.state === 'made')
      .sort((one, other) => one.build.since - other.build.since)
      .map(({ ticket, build }) => ({
        ticket: ticket.number,
        letter: build.letter,
        name: buildName(ticket.number, build.letter),
        item: itemOf(state.station, build.choice.item).name,
        mark: markOf(state, ticket.number, build.letter, build.choice),
        askFirst: build.choice.needs.some((need) => need.handling === 'keep-apart'),
        nameKey: shownNameKey(ticket),
        madeAt: build.since,
        paid: ticket.paid,
        totalCents: ticket.builds
          .filter((one) => one.state !== 'cancelled')
          .reduce((sum, one) => sum + one.priceCents, 0),
        siblings: ticket.builds
          .filter((one) => one.letter !== build.letter)
          .map((one) => ({ name: buildName(ticket.number, one.letter), state: one.state })),
      })),
    coming: open
      .flatMap(({ ticket, build }): Coming[] =>
        build.state === 'waiting' || build.state === 'making'
          ? [{ name: buildName(ticket.number, build.letter), state: build.state }]
          : [],
      )
      .sort((one, other) => Number(other.state === 'making') - Number(one.state === 'making')),
    recent: recentlyHandedOver(state),
    handedOver: state.handedOver,
  }
}
