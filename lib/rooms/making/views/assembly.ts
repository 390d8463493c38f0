import { needsOf, type WhyHeld, whyHeld } from '#lib/rooms/care/facts/held.ts'
import { leftOutThough } from '#lib/rooms/care/facts/left-out-though.ts'
import { acceptedUnder } from '#lib/rooms/care/facts/standing.ts'
import {
  heldBackFrom,
  type WhyLacking,
  whyLacking,
} from '#lib/rooms/making/views/assembly-lacks.ts'
import {
  backupsTaken,
  type PanForBuild,
  panForBuild,
  soiledPans,
} from '#lib/rooms/making/views/assembly-pan.ts'
import { type Stopped, stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import { type Mark, markOf } from '#lib/service/mark.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf, pansOf } from '#lib/station/find.ts'

/** One thing to put on the heat for builds that come soon. */
export interface WarmNext {
  readonly component: string
  readonly seconds: number
  readonly on: string
  readonly builds: readonly string[]
}

export interface InQueue {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly state: 'waiting' | 'making'
  readonly item: string
  readonly keptApart: boolean
  readonly short: boolean
  /** It waits for a change that fits its guest, and can't be started until then. */
  readonly held: boolean
}

export interface NowBuild extends InQueue {
  /** Name of the base; null where the item has none. */
  readonly base: string | null
  /** Which of its ticket's builds it is, 1 and up, cancelled ones not counted. */
  readonly index: number
  readonly of: number
  readonly sentAt: number
  readonly remakes: number
  /** Of its choice; what is started is this one or nothing. */
  readonly version: number
  readonly keepFrom: readonly NeedCode[]
  readonly leaveOut: readonly NeedCode[]
  /** Of those: celiac disease, which the guest wants left out only. */
  readonly leaveOutSaid: readonly NeedCode[]
  /** Names of what is taken from its protected back-up pan, in the order of the line. */
  readonly backups: readonly string[]
  /** Why the person in charge accepted its cautions with the guest; null where it has none. */
  readonly accepted: CautionReason | null
  readonly whyHeld: WhyHeld | null
  /** Needs and pans could be compared; where not, it isn't made. */
  readonly checked: boolean
  /** Tells a choice from a changed one: what was read aloud holds for this one only. */
  readonly reads: string
  readonly pans: Readonly<Record<string, PanForBuild>>
  readonly mark: Mark
  /** Name of the component that the pans lack for it. */
  readonly lacks: string | null
  /** Why: there is too little, or what there is may not be taken. */
  readonly lacksWhy: WhyLacking | null
}

export interface MadeBuild {
  readonly ticket: number
  readonly letter: string
  readonly name: string
  readonly item: string
  readonly since: number
}

export interface AssemblyView {
  readonly stopped: Stopped | null
  readonly now: NowBuild | null
  /** The other builds that wait or are being made, in order. */
  readonly queue: readonly InQueue[]
  /** The first of the queue that can be started. */
  readonly next: string | null
  readonly warmNext: readonly WarmNext[]
  /** What went into a pan by a wrong scoop, by pan. */
  readonly soiled: Readonly<Record<string, readonly string[]>>
  /** Made, not handed over; the newest first. */
  readonly lastMade: readonly MadeBuild[]
  readonly made: number
}

const WARM_AHEAD = 3
const MADE_SHOWN = 6

const inQueue = (
  state: RunningState,
  { ticket, build }: QueuedBuild,
  short: ReadonlyMap<string, string>,
): InQueue => {
  const name = buildName(ticket.number, build.letter)
  return {
    ticket: ticket.number,
    letter: build.letter,
    name,
    state: build.state === 'making' ? 'making' : 'waiting',
    item: itemOf(state.station, build.choice.item).name,
    keptApart: needsOf(build).some((need) => need.handling === 'keep-apart'),
    short: build.state === 'waiting' && short.has(name),
    held: build.hold !== null,
  }
}

interface OnTheLine {
  readonly pans: Readonly<Record<string, PanForBuild>>
  readonly backups: readonly string[]
  readonly checked: boolean
}

/** Where the check of needs fails nothing is known, so every pan stays shut. */
const onTheLine = (state: RunningState, build: Build, lacks: string | null): OnTheLine => {
  const choice = { ...build.choice, needs: needsOf(build) }
  const pans = pansOf(state.station)
  try {
    return {
      pans: Object.fromEntries(
        pans.map((pan) => [pan.id, panForBuild(state, pan, choice, lacks, build.behind)]),
      ),
      backups: backupsTaken(state, choice, build.behind),
      checked: true,
    }
  } catch {
    const shut: PanForBuild = { kind: 'away', hazards: [], leftOut: false }
    return {
      pans: Object.fromEntries(pans.map((pan) => [pan.id, shut])),
      backups: [],
      checked: false,
    }
  }
}

const nowBuild = (
  state: RunningState,
  queued: QueuedBuild,
  short: ReadonlyMap<string, string>,
): NowBuild => {
  const { ticket, build } = queued
  const entry = inQueue(state, queued, short)
  const lacks = entry.short
    ? (short.get(entry.name) ?? null)
    : build.state === 'making'
      ? heldBackFrom(state, build)
      : null
  const builds = ticket.builds.filter((one) => one.state !== 'cancelled')
  const choice = { ...build.choice, needs: needsOf(build) }
  const mark = markOf(state, ticket.number, build.letter, choice)
  const line = onTheLine(state, build, lacks)
  return {
    ...entry,
    base: choice.base === null ? null : componentOf(state.station, choice.base).name,
    index: builds.indexOf(build) + 1,
    of: builds.length,
    sentAt: ticket.sentAt,
    remakes: build.remakes,
    version: build.version,
    keepFrom: mark.keepFrom,
    leaveOut: mark.leaveOut,
    leaveOutSaid: leftOutThough(choice.needs),
    backups: line.backups.map((id) => componentOf(state.station, id).name),
    accepted: acceptedUnder(state, choice)?.reason ?? null,
    whyHeld: build.hold && whyHeld(state, build, build.hold),
    checked: line.checked,
    reads: JSON.stringify([entry.name, build.remakes, build.version, line.backups]),
    pans: line.pans,
    mark,
    lacks: lacks === null ? null : componentOf(state.station, lacks).name,
    lacksWhy: lacks === null ? null : whyLacking(state, lacks),
  }
}

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

/**
 * What the assembler sees: the one build to make (the one that was chosen while it is open, else
 * the oldest being made, else the oldest that waits and isn't held), and what comes after it. A
 * stop comes first.
 */
export const assemblyView = (state: RunningState, chosen: string | null): AssemblyView => {
  const short = shortBuilds(state)
  const open = openBuilds(state)
  const nameOf = ({ ticket, build }: QueuedBuild) => buildName(ticket.number, build.letter)
  const toMake = open.filter(
    ({ build }) => build.stop === null && (build.state === 'waiting' || build.state === 'making'),
  )
  const now =
    toMake.find((one) => nameOf(one) === chosen) ??
    toMake.find(({ build }) => build.state === 'making') ??
    toMake.find(({ build }) => build.hold === null) ??
    toMake[0] ??
    null
  const others = toMake.filter((one) => one !== now)
  const following = others.filter(({ build }) => build.state === 'waiting' && build.hold === null)
  const queue = others.map((one) => inQueue(state, one, short))
  return {
    stopped: stoppedBuilds(state)[0] ?? null,
    now: now && nowBuild(state, now, short),
    queue,
    next: queue.find((one) => one.state === 'waiting' && !one.short && !one.held)?.name ?? null,
    soiled: soiledPans(state),
    warmNext: warmNext(state, following),
    lastMade: open
      .filter(({ build }) => build.state === 'made' && build.hold === null)
      .sort((one, other) => other.build.since - one.build.since)
      .slice(0, MADE_SHOWN)
      .map(({ ticket, build }) => ({
        ticket: ticket.number,
        letter: build.letter,
        name: buildName(ticket.number, build.letter),
        item: itemOf(state.station, build.choice.item).name,
        since: build.since,
      })),
    made: state.made,
  }
}

/** How many pans stand wide: what a screen has to find room for. */
export const widePans = (now: NowBuild): number =>
  Object.values(now.pans).filter((pan) => pan.kind !== 'idle').length
