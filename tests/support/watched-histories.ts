/** Lives many histories under the eyes of the oracle, and counts what was in them. */
import fc from 'fast-check'
import type { Consequence } from '#lib/service/consequence.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { HandedOverOf } from '#lib/service/events/handed-over-event.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { COMMAND_TYPES, type CommandType } from '#lib/spine/registry.ts'
import { type Broken, createWitness } from '#tests/lib/spine/oracle/witness.ts'
import type { Act } from '#tests/support/acts.ts'
import type { Stepped, Taken } from '#tests/support/drive-history.ts'
import { living } from '#tests/support/live-history.ts'
import { type Move, wholeService } from '#tests/support/moves.ts'
import { shrunk } from '#tests/support/shrunk.ts'

export interface OfCommand {
  accepted: number
  refused: number
  /** Refused before the service opened, and after it closed. */
  early: number
  late: number
}

export interface Counts {
  histories: number
  commands: number
  restarts: number
  jumps: number
  passed: number
  lifted: number
  found: number
  listed: number
  /** Lists of what was handed over, by what was found bad. */
  readonly lists: Record<HandedOverOf, number>
  readonly holds: Record<string, number>
  readonly due: Record<string, number>
  readonly of: Readonly<Record<CommandType, OfCommand>>
}

export interface BrokenHistory extends Broken {
  readonly seed: number
  /** The fewest acts that break it. */
  readonly acts: readonly Act[]
}

export interface Watched {
  readonly counts: Counts
  readonly broken: readonly BrokenHistory[]
}

/** Everything that falls due, as it is counted. */
export const DUES = [
  ...['pan', 'backup', 'batch', 'build'].map((what) => `throwOutPassed ${what}`),
  ...['pan', 'backup', 'batch'].map((what) => `readingMissed ${what}`),
  ...['coolingMissed', 'shelfReadingMissed', 'serviceClosed'],
]

/** A batch has a list of its own only of what came from loads that are gone: few histories lead there. */
const PLACES = ['pan', 'backup', 'shelf'] as const satisfies readonly HandedOverOf[]

const createCounts = (): Counts => ({
  histories: 0,
  commands: 0,
  restarts: 0,
  jumps: 0,
  passed: 0,
  lifted: 0,
  found: 0,
  listed: 0,
  lists: { pan: 0, backup: 0, batch: 0, shelf: 0, build: 0 },
  holds: {},
  due: Object.fromEntries(DUES.map((one) => [one, 0])),
  of: Object.fromEntries(
    COMMAND_TYPES.map((type) => [type, { accepted: 0, refused: 0, early: 0, late: 0 }]),
  ) as Record<CommandType, OfCommand>,
})

const more = (counts: Record<string, number>, name: string): void => {
  counts[name] = (counts[name] ?? 0) + 1
}

const countEvent = (counts: Counts, event: Recorded, { before }: Stepped): void => {
  if (event.due !== undefined) {
    const name = 'what' in event ? `${event.type} ${event.what}` : event.type
    if (name in counts.due) more(counts.due, name)
  }
  if (event.type === 'buildHeld' || event.type === 'needTold') {
    more(counts.holds, event.type === 'needTold' ? 'need' : event.reason)
    const build = findBuild(before, event.ticket, event.letter)
    if (build?.state === 'handed-over') counts.found += 1
  }
  if (event.type === 'holdLifted') counts.lifted += 1
  if (event.type === 'handedOverFound') {
    counts.listed += 1
    counts.lists[event.what] += 1
  }
}

const countStep = (counts: Counts, act: Act, step: Stepped | Taken): void => {
  for (const event of step.recorded) countEvent(counts, event, step)
  if (act.do !== 'command' || !('refusal' in step)) return
  counts.commands += 1
  const of = counts.of[act.command.type]
  const { stage } = step.before
  if (step.refusal === null) of.accepted += 1
  else if (stage === 'open') of.refused += 1
  else if (stage === 'none' || stage === 'planned') of.early += 1
  else of.late += 1
}

const countAct = (counts: Counts, act: Act): void => {
  if (act.do === 'restart') counts.restarts += 1
  if (act.do === 'jump') counts.jumps += 1
  if (act.do === 'pass') counts.passed += 1
}

/** What breaks first in a history; null where nothing does. `told` hears of every act that was lived. */
const firstBroken = (
  history: readonly (Move | Act)[],
  follows: readonly Consequence[] | undefined,
  told: (act: Act, steps: readonly (Stepped | Taken)[]) => void,
): Broken | null => {
  const witness = createWitness()
  let folds = (): boolean => true
  try {
    for (const { act, steps, drive } of living(history, follows)) {
      told(act, steps)
      folds = () => stateHash(drive.folded()) === stateHash(drive.state())
      for (const step of steps) {
        const broken = witness.watch(step)
        if (broken) return broken
      }
    }
  } catch (problem) {
    return { law: 'failed', problem: String(problem) }
  }
  return folds() ? null : { law: 'folded', problem: 'the log folds to another state' }
}

const without = (
  acts: readonly Act[],
  broken: Broken,
  follows: readonly Consequence[] | undefined,
): readonly Act[] =>
  shrunk(acts, (some) => firstBroken(some, follows, () => undefined)?.law === broken.law)

/**
 * Histories of these seeds: one after the other, each from a seed of its own, so that each can be lived
 * again alone. `follows`: the rules' own consequences where left away.
 */
export const watchHistories = ({
  seed,
  histories,
  follows,
  most = Number.POSITIVE_INFINITY,
  shrinks = true,
}: {
  readonly seed: number
  readonly histories: number
  readonly follows?: readonly Consequence[]
  /** Stops once so many are broken. */
  readonly most?: number
  readonly shrinks?: boolean
}): Watched => {
  const counts = createCounts()
  const broken: BrokenHistory[] = []
  for (let one = seed; one < seed + histories && broken.length < most; one += 1) {
    // Unbiased: small values are no likelier than others.
    const sampling = { seed: one, numRuns: 1, unbiased: true }
    const [moves = []] = fc.sample(wholeService, sampling)
    const acts: Act[] = []
    const found = firstBroken(moves, follows, (act, steps) => {
      acts.push(act)
      countAct(counts, act)
      for (const step of steps) countStep(counts, act, step)
    })
    counts.histories += 1
    if (found)
      broken.push({ ...found, seed: one, acts: shrinks ? without(acts, found, follows) : acts })
  }
  return { counts, broken }
}

/** Commands, dues and lists that the histories don't reach; early and late refusals count as refused. */
export const unreached = ({ of, due, lists }: Counts): readonly string[] => [
  ...COMMAND_TYPES.flatMap((type) => {
    const { accepted, refused, early, late } = of[type]
    // A history has no larder: what is taken out of one is lived in tests/server/larder.
    const isHere = type !== 'takeFromLarder'
    return [
      ...(accepted === 0 && isHere ? [`${type} is never accepted`] : []),
      ...(refused === 0 ? [`${type} is never refused while the service is open`] : []),
      ...(early === 0 && type !== 'open' && type !== 'plan'
        ? [`${type} is never tried before the opening`]
        : []),
      ...(late === 0 ? [`${type} is never tried after the close`] : []),
    ]
  }),
  ...DUES.filter((one) => due[one] === 0).map((one) => `${one} never falls due`),
  ...PLACES.filter((one) => lists[one] === 0).map((one) => `no list is of a ${one}`),
]
