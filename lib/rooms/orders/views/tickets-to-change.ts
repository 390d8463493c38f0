/** Builds that a guest comes back about. */

import { isFine, judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { shownNameKey } from '#lib/rooms/care/facts/name-shown.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { type BuildChoice, portionsTaken } from '#lib/service/events/build-choice.ts'
import { differencesOf } from '#lib/service/mark.ts'
import type { Build, RunningState, Ticket, ToFind } from '#lib/service/state.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'

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

const isUnsureNow = ({ hold }: Build): boolean => hold?.told?.asked === 'not-sure'

/** Whether it can be changed here: it is open or held, and assembly has no stop of it to answer. */
export const isOpenToChange = (build: Build): boolean =>
  !isUnsureNow(build) &&
  (build.hold !== null ||
    (build.stop === null && (build.state === 'waiting' || build.state === 'making')))

const shown = (ticket: Ticket, build: Build): TicketBuild => {
  const isHeld = build.hold !== null
  return {
    ticket,
    build,
    canChange: isOpenToChange(build),
    isUnsure: isUnsureNow(build),
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

/** How a build stands to a pan of the line, by the rule that its mark is written by. */
export type PanMark =
  /** Not in it, and not usually either. */
  | { readonly kind: 'none' }
  | { readonly kind: 'usual' }
  | { readonly kind: 'with' | 'side'; readonly portions: number }
  /** Usual, and left out: asked for, or there was none. */
  | { readonly kind: 'no' | 'gone' }
  /** Usual, and left out for this need. */
  | { readonly kind: 'need'; readonly code: NeedCode; readonly isApart: boolean }

/** What a build becomes once a stop is answered; else what it is. */
export const goesOnAs = ({ stop, choice }: Build): BuildChoice => stop?.to?.choice ?? choice

/** Which need rules a component out now; null where none does, or nothing can be compared. */
const worstOf = (state: RunningState, component: string, needs: readonly Need[]) => {
  try {
    const { findings } = judgeComponent(kitchenOf(state), component, needs)
    const worst = findings.find(({ why, level }) => why !== 'not-listed' || !isFine(level))
    return worst ? needs.find(({ code }) => code === worst.need) : undefined
  } catch {
    return undefined
  }
}

/** The need for which it was left out: by labels and scoops of now, else where only one was told. */
const needOf = (state: RunningState, component: string, needs: readonly Need[]): PanMark => {
  const need = worstOf(state, component, needs) ?? (needs.length === 1 ? needs[0] : undefined)
  return need
    ? { kind: 'need', code: need.code, isApart: need.handling === 'keep-apart' }
    : { kind: 'no' }
}

/** By component, as far as a build has to do with it. */
export const panMarks = (state: RunningState, build: Build): Readonly<Record<string, PanMark>> => {
  const choice = goesOnAs(build)
  const { without, onTheSide, added, extra } = differencesOf(state.station, choice)
  const markOf = (component: string): PanMark => {
    const because = choice.parts[component]?.because
    const portions = portionsTaken(choice, component)
    if (without.includes(component))
      return because === 'need'
        ? needOf(state, component, choice.needs)
        : { kind: because === 'gone' ? 'gone' : 'no' }
    if (onTheSide.includes(component)) return { kind: 'side', portions }
    if (added.includes(component) || extra.includes(component)) return { kind: 'with', portions }
    return { kind: portions > 0 ? 'usual' : 'none' }
  }
  return Object.fromEntries(state.station.components.map(({ id }) => [id, markOf(id)]))
}

export interface TicketSum {
  /** What is to be paid for, by name: what wasn't cancelled. */
  readonly builds: readonly string[]
  readonly cents: number
}

/** A ticket is paid as one sum. */
export const sumOfTicket = ({ number, builds }: Ticket): TicketSum => {
  const owed = builds.filter(({ state }) => state !== 'cancelled')
  return {
    builds: owed.map(({ letter }) => buildName(number, letter)),
    cents: owed.reduce((sum, { priceCents }) => sum + priceCents, 0),
  }
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
