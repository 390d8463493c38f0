/**
 * Whether what is taken fits a guest, as one gate that everything passes: where the answer is
 * missing, old, or makes no sense, nothing fits.
 */
import type { Need } from '#lib/needs/codes.ts'
import {
  type Checker,
  type Finding,
  isCovered,
  type JudgedTaken,
  judgeTaken,
  RANK,
  strictest,
} from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/needs/kitchen.ts'
import { type BuildChoice, isKeptApart, takenComponents } from '#lib/service/build-choice.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { AcceptedFinding } from '#lib/service/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Acceptance, RunningState } from '#lib/service/state.ts'

const WHYS: readonly Finding['why'][] = [
  'contains',
  'unknown',
  'may-contain',
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

/** What stands in a choice's way; null where that couldn't be found out. */
export const findingsOf = (
  state: RunningState,
  choice: BuildChoice,
  checker: Checker = judgeTaken,
): readonly Finding[] | null => {
  const taken = takenComponents(choice)
  const needs = strictest(choice.needs)
  try {
    const answer = checker(kitchenOf(state), taken, needs)
    return isAnswer(answer, taken, needs) ? answer.findings : null
  } catch {
    return null
  }
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
const notAccepted = (
  state: RunningState,
  choice: BuildChoice,
  findings: readonly Finding[],
  build: string | null,
): readonly AcceptedFinding[] => {
  const accepted = acceptanceOf(state, choice, build)?.findings ?? []
  return cautionsIn(findings).filter((one) => !accepted.some((other) => isCovered(one, other)))
}

/** What rules a choice out whoever accepts it; null where nothing does. */
export const ruledOut = (findings: readonly Finding[]): Refusal | null => {
  const worst = findings.find((one) => one.level === 'no')
  if (!worst) return null
  const { component, need } = worst
  switch (worst.why) {
    case 'contains':
      return { code: 'contains', component, need }
    case 'unknown':
      return { code: 'unknown-declaration', component, need }
    case 'may-contain':
      return { code: 'may-contain', component, need }
    case 'soiled':
    case 'contact':
      return { code: 'shared-contact', component, need, touches: worst.touches ?? component }
    case 'contact-unknown':
      return { code: 'contact-not-known', component, need }
  }
}

type Known = Pick<Circumstances, 'newestRevision' | 'checker'>

/** Whether the service works with the newest document: with an older one no need is checked. */
export const isStale = (state: RunningState, { newestRevision }: Known): boolean =>
  newestRevision === null || !(newestRevision <= state.revision)

/** What stands in the way of a choice with needs, or why that can't be said. */
export const checked = (
  state: RunningState,
  choice: BuildChoice,
  known: Known,
): { readonly findings: readonly Finding[] } | { readonly refusal: Refusal } => {
  if (isStale(state, known)) return { refusal: { code: 'needs-not-checked', why: 'stale' } }
  const findings = findingsOf(state, choice, known.checker)
  return findings ? { findings } : { refusal: { code: 'needs-not-checked', why: 'failed' } }
}

/**
 * Refuses a choice that doesn't fit its guest as it is, or that isn't fully agreed; else gives the
 * acceptance that it needs, so that one that it doesn't need isn't used up.
 */
export const fitting = (
  state: RunningState,
  letter: string,
  choice: BuildChoice,
  known: Known,
  build: string | null,
): { readonly caution: number | null } | { readonly refusal: Refusal } => {
  if (choice.needs.length === 0) return { caution: null }
  const check = checked(state, choice, known)
  if ('refusal' in check) return check
  const refusal = ruledOut(check.findings)
  if (refusal) return { refusal }
  const { caution } = choice
  if (caution !== null && state.cautions[`c${caution}`] === undefined)
    return { refusal: { code: 'no-such-caution', caution } }
  const [missing] = notAccepted(state, choice, check.findings, build)
  if (missing) return { refusal: { code: 'caution', ...missing } }
  if (isKeptApart(choice) && state.inCharge === null)
    return { refusal: { code: 'no-one-in-charge' } }
  if (isKeptApart(choice) && !choice.agreed) return { refusal: { code: 'not-agreed', letter } }
  return { caution: cautionsIn(check.findings).length > 0 ? caution : null }
}

/** What stands in an accepted build's way, as keys to compare; null where that can't be said. */
export const standsInTheWay = (
  state: RunningState,
  choice: BuildChoice,
  checker: Checker | undefined,
  build: string,
): ReadonlySet<string> | null => {
  const findings = findingsOf(state, choice, checker)
  if (!findings) return null
  const ruling = findings.filter((one) => one.level === 'no')
  return new Set([
    ...ruling.map((one) =>
      JSON.stringify([one.component, one.need, one.why, one.touches, one.reached, 'no']),
    ),
    ...notAccepted(state, choice, findings, build).map((one) =>
      JSON.stringify([one.component, one.need, one.why, one.touches, one.reached]),
    ),
  ])
}
