/** Whether a guest's choice can be accepted for its needs. */
import type { Finding } from '#lib/needs/judge.ts'
import { cautionsIn, findingsOf, notAccepted } from '#lib/rooms/care/facts/standing.ts'
import { type BuildChoice, isKeptApart } from '#lib/service/events/build-choice.ts'
import { isStale, type Known } from '#lib/service/known.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

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
    case 'not-listed':
      return { code: 'not-listed', component, need }
    case 'soiled':
    case 'contact':
      return { code: 'shared-contact', component, need, touches: worst.touches ?? component }
    case 'contact-unknown':
      return { code: 'contact-not-known', component, need }
  }
}

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
    return { refusal: { code: 'unknown', what: 'caution', id: String(caution) } }
  const [missing] = notAccepted(state, choice, check.findings, build)
  if (missing) {
    const { states: _, ...caution } = missing
    return { refusal: { code: 'caution', ...caution } }
  }
  if (isKeptApart(choice) && state.inCharge === null)
    return { refusal: { code: 'no-one-in-charge' } }
  if (isKeptApart(choice) && !choice.agreed) return { refusal: { code: 'not-agreed', letter } }
  return { caution: cautionsIn(check.findings).length > 0 ? caution : null }
}
