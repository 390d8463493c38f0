import { soiledPans } from '#lib/rooms/making/views/assembly-pan.ts'
import { type Stopped, stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { elsewhere, type TakenAway } from '#lib/rooms/making/views/at-screen.ts'
import {
  type InQueue,
  inQueue,
  type NowBuild,
  nowBuild,
} from '#lib/rooms/making/views/now-build.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { componentOf, itemOf } from '#lib/station/find.ts'

/** One thing to put on the heat for builds that come soon. */
export interface WarmNext {
  readonly component: string
  readonly seconds: number
  readonly on: string
  readonly builds: readonly string[]
}

export interface MadeBuild {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly since: number
  /** Name of the other screen that made it; null where it is this one's. */
  readonly elsewhere: string | null
}

export interface AssemblyView {
  /** The oldest stop of this screen's builds, or the one that was chosen to be answered here. */
  readonly stopped: Stopped | null
  /** Stops that another screen is to answer; none is lost where that screen is gone. */
  readonly stoppedElsewhere: readonly TakenAway[]
  /** What was taken over from this screen, and isn't finished. */
  readonly takenAway: readonly TakenAway[]
  readonly now: NowBuild | null
  /** The other builds that wait or are being made, in order. */
  readonly queue: readonly InQueue[]
  /** The first of the queue that can be started. */
  readonly next: string | null
  readonly warmNext: readonly WarmNext[]
  /** What went into a pan by a wrong scoop, by pan. */
  readonly soiled: Readonly<Record<string, readonly string[]>>
  /** Made, not handed over; this screen's first, of those the newest. */
  readonly lastMade: readonly MadeBuild[]
  readonly made: number
}

const WARM_AHEAD = 3
const MADE_SHOWN = 6

const warmNext = (state: RunningState, following: readonly QueuedBuild[]): readonly WarmNext[] => {
  const found = new Map<string, { seconds: number; on: string; builds: string[] }>()
  for (const { ticket, build } of following.slice(0, WARM_AHEAD))
    for (const id of takenComponents(build.choice)) {
      const { warm } = componentOf(state.station, id)
      if (!warm) continue
      const entry = found.get(id) ?? { ...warm, builds: [] }
      entry.builds.push(buildName(ticket.number, build.letter))
      found.set(id, entry)
    }
  return [...found].map(([id, rest]) => ({
    component: componentOf(state.station, id).name,
    ...rest,
  }))
}

/** What was made, this screen's first, since a mistake is seen where it was made. */
const lastMade = (open: readonly QueuedBuild[], here: string | null, state: RunningState) =>
  open
    .filter(({ build }) => build.state === 'made' && build.hold === null)
    .map(({ ticket, build }) => ({
      ticket: ticket.number,
      letter: build.letter,
      name: buildName(ticket.number, build.letter),
      item: itemOf(state.station, build.choice.item).name,
      since: build.since,
      elsewhere: elsewhere(build, here),
    }))
    .sort(
      (one, other) =>
        Number(one.elsewhere !== null) - Number(other.elsewhere !== null) ||
        other.since - one.since,
    )
    .slice(0, MADE_SHOWN)

/**
 * What the assembler sees: the one build to make (the one that was chosen while it is open, else
 * the oldest being made here, else the oldest that waits and isn't held), and what comes after it.
 * What another screen makes is in the queue. A stop comes first, at the screen that makes it.
 * @param here this screen's name; left away it takes every build as its own
 */
export const assemblyView = (
  state: RunningState,
  chosen: string | null,
  here: string | null = null,
): AssemblyView => {
  const short = shortBuilds(state)
  const open = openBuilds(state)
  const nameOf = ({ ticket, build }: QueuedBuild) => buildName(ticket.number, build.letter)
  const toMake = open.filter(
    ({ build }) => build.stop === null && (build.state === 'waiting' || build.state === 'making'),
  )
  const isMade = ({ build }: QueuedBuild) => build.state === 'making'
  const isOwn = ({ build }: QueuedBuild) => elsewhere(build, here) === null
  const now =
    toMake.find((one) => nameOf(one) === chosen) ??
    toMake.find((one) => isMade(one) && isOwn(one)) ??
    toMake.find((one) => !isMade(one) && one.build.hold === null) ??
    toMake.find((one) => !isMade(one)) ??
    null
  const others = toMake.filter((one) => one !== now)
  const following = others.filter(({ build }) => build.state === 'waiting' && build.hold === null)
  const queue = others.map((one) => inQueue(state, one, short, here))
  const stops = stoppedBuilds(state, here)
  const stopped =
    stops.find(({ name }) => name === chosen) ?? stops.find((one) => one.elsewhere === null) ?? null
  return {
    stopped,
    stoppedElsewhere: stops.flatMap((one) =>
      one === stopped || one.elsewhere === null ? [] : [{ name: one.name, screen: one.elsewhere }],
    ),
    takenAway: toMake.flatMap(({ ticket, build: { letter, screen, tookFrom } }) =>
      here !== null && tookFrom === here && screen !== undefined
        ? [{ name: buildName(ticket.number, letter), screen }]
        : [],
    ),
    now: now && nowBuild(state, now, short, here),
    queue,
    next: queue.find((one) => one.state === 'waiting' && !one.short && !one.held)?.name ?? null,
    soiled: soiledPans(state),
    warmNext: warmNext(state, following),
    lastMade: lastMade(open, here, state),
    made: state.made,
  }
}
