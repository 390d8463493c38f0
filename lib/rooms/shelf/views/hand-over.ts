import { needsOf, type WhyHeld, whyHeld } from '#lib/rooms/care/facts/held.ts'
import { shownNameKey } from '#lib/rooms/care/facts/name-shown.ts'
import { acceptedUnder } from '#lib/rooms/care/facts/standing.ts'
import { isPartlyOut, isSettled, totalCentsOf } from '#lib/rooms/shelf/facts/unpaid.ts'
import { isPast } from '#lib/rooms/shelf/views/is-past.ts'
import { type Strip, stripOf } from '#lib/rooms/shelf/views/strip.ts'
import type { MadeUntil } from '#lib/safety/time-control.ts'
import type { AcceptedFinding } from '#lib/service/events/event.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { differsFrom, type Mark, markOf } from '#lib/service/mark.ts'
import type { Build, BuildState, RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf } from '#lib/station/find.ts'

/** Another build of the same ticket, and where it is. */
export interface Sibling {
  readonly name: string
  readonly state: BuildState
}

/** A caution that the guest was told of and accepted; names, not ids. */
export interface ToldCaution {
  readonly component: string
  readonly need: NeedCode
  readonly why: AcceptedFinding['why']
  readonly touches: string | null
}

/** Other builds of the same item on the shelf, and what only this one's mark says. */
export interface Alike {
  readonly names: readonly string[]
  readonly differs: Mark
}

export interface OnShelf {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly mark: Mark
  /** The line on its wrap; null of what is kept apart: nothing of it is seen by others. */
  readonly strip: Strip | null
  /** null where no other build on the shelf is of the same item. */
  readonly alike: Alike | null
  readonly told: readonly ToldCaution[]
  /** It is handed over alone, after the guest was asked. */
  readonly askFirst: boolean
  /** The command under which a name is kept; null where no name may be shown. */
  readonly nameKey: string | null
  readonly madeAt: number
  /** Until when it may wait for its guest, and when it is thrown out; null where nothing binds it. */
  readonly until: MadeUntil | null
  readonly paid: boolean
  /** Whether its ticket isn't paid, and nobody was asked yet: none of it is out. */
  readonly asksToPay: boolean
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

/** A build that may not be given to its guest, or that was and may not have been. */
export interface Kept {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly why: WhyHeld
  readonly at: number
}

export interface PastBuild {
  readonly name: string
  readonly item: string
  /** Since when it is past its time, or what it took is thrown out; epoch milliseconds. */
  readonly since: number
  readonly because: 'time' | 'out-of-limits'
}

export interface Coming {
  readonly name: string
  readonly state: 'waiting' | 'making'
}

export interface HandOverView {
  /** Handed over, and no longer fit for their guests: who is to be found, the oldest first. */
  readonly toFind: readonly Kept[]
  /** Made and stopped: they stay here and are thrown out, the oldest first. */
  readonly held: readonly Kept[]
  /** Made, and past its time: thrown out and made again. */
  readonly toThrowOut: readonly PastBuild[]
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
        .filter((build) => build.state === 'handed-over' && build.hold === null)
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

const toFind = (state: RunningState): readonly Kept[] =>
  Object.values(state.toFind)
    .flatMap(({ ticket, letter, reason, at }): Kept[] => {
      const build = findBuild(state, ticket, letter)
      if (!build) return []
      const hold = build.hold ?? { reason, at, told: null }
      return [kept(state, { ticket, letter, build, why: whyHeld(state, build, hold), at })]
    })
    .sort((one, other) => one.at - other.at)

const kept = (
  state: RunningState,
  { build, ...rest }: { ticket: number; letter: string; build: Build; why: WhyHeld; at: number },
): Kept => ({
  ...rest,
  name: buildName(rest.ticket, rest.letter),
  item: itemOf(state.station, build.choice.item).name,
})

const held = (state: RunningState, made: readonly QueuedBuild[]): readonly Kept[] =>
  made
    .flatMap(({ ticket, build }): Kept[] => {
      const { letter, hold } = build
      if (!hold) return []
      const why = whyHeld(state, build, hold)
      return [kept(state, { ticket: ticket.number, letter, build, why, at: hold.at })]
    })
    .sort((one, other) => one.at - other.at)

const toldCautions = (state: RunningState, { choice }: Build): readonly ToldCaution[] =>
  (acceptedUnder(state, choice)?.findings ?? []).map(({ component, need, why, touches }) => ({
    component: componentOf(state.station, component).name,
    need,
    why,
    touches: touches === null ? null : componentOf(state.station, touches).name,
  }))

const shelf = (state: RunningState, made: readonly QueuedBuild[]): readonly OnShelf[] => {
  const standing = made
    .filter(({ build }) => build.hold === null)
    .sort((one, other) => one.build.since - other.build.since)
    .map(({ ticket, build }) => {
      const choice = { ...build.choice, needs: needsOf(build) }
      return { ticket, build, mark: markOf(state, ticket.number, build.letter, choice) }
    })
  return standing.map(({ ticket, build, mark }) => {
    const alike = standing.filter(
      (one) => one.build !== build && one.build.choice.item === build.choice.item,
    )
    const others = alike.map((one) => one.mark)
    return {
      ticket: ticket.number,
      letter: build.letter,
      name: mark.name,
      item: itemOf(state.station, build.choice.item).name,
      mark,
      strip: mark.keepFrom.length > 0 ? null : stripOf(state.station, build.choice),
      alike:
        others.length === 0
          ? null
          : { names: others.map((one) => one.name), differs: differsFrom(mark, others) },
      told: toldCautions(state, build),
      askFirst: mark.keepFrom.length > 0,
      nameKey: shownNameKey(ticket),
      madeAt: build.since,
      until: build.until,
      paid: ticket.paid,
      asksToPay: !isSettled(ticket) && !isPartlyOut(ticket),
      totalCents: totalCentsOf(ticket),
      siblings: ticket.builds
        .filter((one) => one.letter !== build.letter)
        .map((one) => ({ name: buildName(ticket.number, one.letter), state: one.state })),
    }
  })
}

const pastBuild = (state: RunningState, { ticket, build }: QueuedBuild): PastBuild => {
  const name = buildName(ticket.number, build.letter)
  const told = boundAt(state, 'build', name)
  const isOut = told?.because === 'out-of-limits' || told?.because === 'too-warm'
  return {
    name,
    item: itemOf(state.station, build.choice.item).name,
    since: isOut ? told.since : (build.until?.throwOutAt ?? build.since),
    because: isOut ? 'out-of-limits' : 'time',
  }
}

/**
 * What stands on the shelf, what comes, what just went, and whom to find. `now` is the server's
 * time, epoch milliseconds: what is past its time then isn't on the shelf any more.
 */
export const handOverView = (state: RunningState, now: number): HandOverView => {
  const open = openBuilds(state)
  const made = open.filter(({ build }) => build.state === 'made')
  const past = made.filter((one) => one.build.hold === null && isPast(state, one, now))
  return {
    toFind: toFind(state),
    held: held(state, made),
    toThrowOut: past.map((one) => pastBuild(state, one)),
    shelf: shelf(
      state,
      made.filter((one) => !past.includes(one)),
    ),
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
