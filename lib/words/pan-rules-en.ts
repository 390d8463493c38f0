/** What screens say about filling, weighing and placing a pan, and about a missing scoop. */

import type { Nearest, NotLent, ScoopChoice } from '#lib/estimate/nearest-scoop.ts'
import type { AmountProblem, PlaceProblem } from '#lib/measure/pan-rules.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { foodOf, needName } from '#lib/words/service-en.ts'

/** How a weight and an id are said; each screen knows its units and names. */
export interface SaidPan {
  readonly weight: (mg: number) => string
  readonly name: (id: string) => string
}

const sayAmountProblem = (problem: AmountProblem, unit: 'mg' | 'piece', said: SaidPan): string => {
  switch (problem.code) {
    case 'no-amount':
      return 'Say how much goes in.'
    case 'overfull':
      return `That is more than the pan holds: ${unit === 'mg' ? said.weight(problem.most) : problem.most} at most.`
    case 'below-tare':
      return `That is less than the empty pan weighs (${said.weight(problem.tareMg)}). Check the pan and the scale.`
  }
}

const sayPlace = (problem: PlaceProblem, said: SaidPan): string => {
  switch (problem.code) {
    case 'no-such-well':
      return 'The line has no such well.'
    case 'on-two-wells':
      return `${said.name(problem.pan)} is in ${said.name(problem.well)} already.`
    case 'does-not-fit':
      return `It doesn’t fit into ${said.name(problem.well)} beside what is there.`
  }
}

const sayNotLent = (one: NotLent, said: SaidPan): string =>
  one.why === 'allergen-only'
    ? `${said.name(one.id)} is for allergen orders only.`
    : `${said.name(one.id)} stays where it is: it may carry ${carried(one.code)} from ${said.name(one.from)} into ${said.name(one.into)}.`

const carried = (code: NeedCode): string => foodOf(code) ?? `what may not be ${needName(code)}`

const percent = (error: number): string => {
  const whole = Math.round(Math.abs(error) * 100)
  return whole === 0 ? 'the same by weight' : `${whole} % ${error > 0 ? 'heavy' : 'light'}`
}

const sayNearest = ({ best }: Nearest, said: SaidPan): string =>
  best === null
    ? 'No tool at hand may be used for it. Wash one first.'
    : `${best.measures.map(({ id, count }) => `${count} level ${said.name(id)}`).join(' + ')}: ${percent(best.error)}, ${best.portionsLeft} portions instead of ${best.portionsBefore}.`

/** A choice among tools: what is taken, and how far off that is. */
const sayChoice = (
  choice: ScoopChoice,
  said: SaidPan,
): { readonly label: string; readonly more: string } => ({
  label: choice.measures.map(({ id, count }) => `${count} level ${said.name(id)}`).join(' + '),
  more: `${choice.isSpare ? 'An identical spare: ' : ''}${percent(choice.error)}, ${said.weight(choice.portionMg)}, ${choice.portionsLeft} portions instead of ${choice.portionsBefore}`,
})

export const panRuleWords = {
  amount: sayAmountProblem,
  place: sayPlace,
  nearest: sayNearest,
  choice: sayChoice,
  notLent: sayNotLent,
} as const
