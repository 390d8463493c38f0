/**
 * What stands in the way of a choice, as one gate that everything passes: where the answer is missing
 * or makes no sense, nothing fits.
 */

import { isCovered } from '#lib/needs/covered.ts'
import {
  type Checker,
  type Finding,
  type JudgedTaken,
  judgeTaken,
  RANK,
  strictest,
  type TakenFrom,
} from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { type BuildChoice, takenComponents } from '#lib/service/events/build-choice.ts'
import type { AcceptedFinding } from '#lib/service/events/event.ts'
import type { Acceptance, RunningState } from '#lib/service/state.ts'
import type { Need } from '#lib/station/codes/codes.ts'

const WHYS: readonly Finding['why'][] = [
  'contains',
  'unknown',
  'may-contain',
  'not-listed',
  'soiled',
  'contact',
  'contact-unknown',
]

const isSound = (finding: Finding, taken: readonly string[], needs: readonly Need[]): boolean =>
  taken.includes(finding.component) &&
  needs.some(({ code, handling }) => code === finding.need && handling === finding.handling) &&
  WHYS.includes(finding.why) &&
  Object.hasOwn(RANK, finding.level) &&
  (finding.touches === null ? [] : [finding.touches]).every((one) =>
    finding.reached.includes(one),
  ) &&
  [finding.component, ...finding.reached].every((one) => Object.hasOwn(finding.states, one)) &&
  (!(finding.why === 'contact' || finding.why === 'soiled') || finding.touches !== null)

/** An answer whose parts are all there and agree with each other; no answer counts otherwise. */
const isAnswer = (
  answer: JudgedTaken,
  taken: readonly string[],
  needs: readonly Need[],
): boolean => {
  const { level, findings, fromBackup } = answer
  if (!Array.isArray(findings) || !Array.isArray(fromBackup)) return false
  if (!answer.findings.every((one) => isSound(one, taken, needs))) return false
  const ranks = answer.findings.map((one) => RANK[one.level])
  return Object.hasOwn(RANK, level) && Math.min(RANK.ok, ...ranks) === RANK[level]
}

/** Out of which kitchen a build is or was taken, and out of which pans. */
export interface Taken {
  readonly kitchen: Kitchen
  /** Left away: as it would be taken now. */
  readonly from?: TakenFrom
}

const asked = (
  choice: BuildChoice,
  checker: Checker,
  { kitchen, from }: Taken,
): readonly Finding[] | null => {
  const taken = takenComponents(choice)
  const needs = strictest(choice.needs)
  try {
    const answer = checker(kitchen, taken, needs, from)
    return isAnswer(answer, taken, needs) ? answer.findings : null
  } catch {
    return null
  }
}

type Known = Map<string, readonly Finding[] | null>

/** Of a kitchen and a choice, which never change: worked out once for each way it may be taken. */
const findings = new WeakMap<Kitchen, WeakMap<BuildChoice, Known>>()

const keyOf = (from: TakenFrom | undefined): string =>
  from === undefined
    ? ''
    : Object.keys(from)
        .filter((component) => from[component] === 'backup')
        .join(' ')
        .padStart(1, '-')

/** What stands in a choice's way; null where that couldn't be found out. */
export const findingsOf = (
  state: RunningState,
  choice: BuildChoice,
  checker: Checker = judgeTaken,
  out: Taken = { kitchen: kitchenOf(state) },
): readonly Finding[] | null => {
  if (checker !== judgeTaken) return asked(choice, checker, out)
  const ofKitchen = findings.get(out.kitchen) ?? new WeakMap<BuildChoice, Known>()
  findings.set(out.kitchen, ofKitchen)
  const known: Known = ofKitchen.get(choice) ?? new Map()
  ofKitchen.set(choice, known)
  const key = keyOf(out.from)
  const found = known.get(key)
  if (found !== undefined) return found
  const answer = asked(choice, checker, out)
  known.set(key, answer)
  return answer
}

const isAcceptable = ({ level }: Finding): boolean => level === 'caution' || level === 'ask'

/** Findings that the person in charge may accept with the guest. */
export const cautionsIn = (findings: readonly Finding[]): readonly AcceptedFinding[] =>
  findings.flatMap((one): AcceptedFinding[] =>
    isAcceptable(one) && one.why !== 'contains' && one.why !== 'contact-unknown'
      ? [
          {
            component: one.component,
            need: one.need,
            why: one.why,
            touches: one.touches,
            reached: one.reached,
            states: one.states,
          },
        ]
      : [],
  )

const isFor = (acceptance: Acceptance, choice: BuildChoice): boolean => {
  const needs = strictest(choice.needs)
  return (
    acceptance.item === choice.item &&
    acceptance.needs.length === needs.length &&
    needs.every((need) =>
      acceptance.needs.some((one) => one.code === need.code && one.handling === need.handling),
    )
  )
}

/** The acceptance that a choice names, where it is of this order and counted for no other build. */
const acceptanceOf = (
  state: RunningState,
  choice: BuildChoice,
  build: string | null,
): Acceptance | null => {
  const found = choice.caution === null ? undefined : state.cautions[`c${choice.caution}`]
  if (!found || !isFor(found, choice)) return null
  return found.build === null || found.build === build ? found : null
}

/** Cautions of a choice that nobody accepted for it. */
export const notAccepted = (
  state: RunningState,
  choice: BuildChoice,
  findings: readonly Finding[],
  build: string | null,
): readonly AcceptedFinding[] => {
  const accepted = acceptanceOf(state, choice, build)?.findings ?? []
  return cautionsIn(findings).filter((one) => !accepted.some((other) => isCovered(one, other)))
}

/** One thing in the way: what nobody may accept, or what nobody has accepted. */
export type InTheWay = Finding | AcceptedFinding

/** What of findings stands in a build's way whatever was accepted for it. */
export const inTheWay = (
  state: RunningState,
  choice: BuildChoice,
  findings: readonly Finding[],
  build: string,
): readonly InTheWay[] => [
  ...findings.filter((one) => one.level === 'no'),
  ...notAccepted(state, choice, findings, build),
]

/** The acceptance under which a build's cautions stand; null where it has none. */
export const acceptedUnder = (state: RunningState, { caution }: BuildChoice): Acceptance | null =>
  caution === null ? null : (state.cautions[`c${caution}`] ?? null)
