import { needsOf, type WhyHeld, whyHeld } from '#lib/rooms/care/facts/held.ts'
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
} from '#lib/rooms/making/views/assembly-pan.ts'
import { elsewhere } from '#lib/rooms/making/views/at-screen.ts'
import { type StopPan, stopLine } from '#lib/rooms/making/views/stop-line.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import { type Mark, markOf } from '#lib/service/mark.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, type QueuedBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf, pansOf } from '#lib/station/find.ts'

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
  /** Name of the other screen that makes it; null where it is this one's, or nobody's yet. */
  readonly elsewhere: string | null
}

export interface NowBuild extends InQueue {
  /** Name of the screen that made it until this one took it over. */
  readonly tookFrom: string | null
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
  /** Names of what is taken from its protected back-up pan, in the order of the line. */
  readonly backups: readonly string[]
  /** Why the person in charge accepted its cautions with the guest; null where it has none. */
  readonly accepted: CautionReason | null
  readonly whyHeld: WhyHeld | null
  /** While it is held: every pan of the line, those that are why marked; null where it isn't. */
  readonly heldLine: Readonly<Record<string, StopPan>> | null
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

export const inQueue = (
  state: RunningState,
  { ticket, build }: QueuedBuild,
  short: ReadonlyMap<string, string>,
  here: string | null,
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
    elsewhere: build.state === 'making' ? elsewhere(build, here) : null,
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

export const nowBuild = (
  state: RunningState,
  queued: QueuedBuild,
  short: ReadonlyMap<string, string>,
  here: string | null,
): NowBuild => {
  const { ticket, build } = queued
  const entry = inQueue(state, queued, short, here)
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
    tookFrom: entry.elsewhere === null ? (build.tookFrom ?? null) : null,
    version: build.version,
    keepFrom: mark.keepFrom,
    leaveOut: mark.leaveOut,
    backups: line.backups.map((id) => componentOf(state.station, id).name),
    accepted: acceptedUnder(state, choice)?.reason ?? null,
    heldLine: build.hold && stopLine(state, build, null),
    whyHeld: build.hold && whyHeld(state, build, build.hold),
    checked: line.checked,
    reads: JSON.stringify([entry.name, build.remakes, build.version, line.backups]),
    pans: line.pans,
    mark,
    lacks: lacks === null ? null : componentOf(state.station, lacks).name,
    lacksWhy: lacks === null ? null : whyLacking(state, lacks),
  }
}
