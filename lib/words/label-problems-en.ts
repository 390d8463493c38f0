/** What a label can't mean, and what to do, in English. */

import type { Source, Trait } from '#lib/station/codes/diets.ts'
import type { LabelProblem } from '#lib/station/label-problem.ts'
import { startingWith } from '#lib/words/findings-en.ts'
import { needName } from '#lib/words/service-en.ts'

export const traitName = (trait: Trait): string => trait.replaceAll('-', ' ')

export const sourceName = (source: Source): string =>
  source === 'other-animal' ? 'another animal' : source

/** 21 CFR 101.91(b)(3), in short. */
export const GLUTEN_STATEMENT =
  'The label declares it free of gluten, and says beside “wheat” that the wheat was processed so that the food meets the FDA’s rule for that'

export const sayLabelProblem = (problem: LabelProblem): string => {
  switch (problem.why) {
    case 'always-gluten':
      return `${problem.grain === 'gluten-grain' ? 'A gluten grain' : startingWith(needName(problem.grain))} is in it, which is always gluten: say “contains” of gluten.`
    case 'wheat-is-gluten':
      return 'Wheat is in it, so gluten is too: say “contains” of gluten. Only where the label says beside “wheat” that the wheat was processed to meet the FDA’s rule, say “declared free” of gluten and tick that statement.'
    case 'statement-alone':
      return 'The statement beside “wheat” goes with wheat that is in it and with gluten that is declared free: say both, or take the statement away.'
    case 'source-of-nothing':
      return `It is said what ${traitName(problem.trait)} comes from, but ${traitName(problem.trait)} isn’t ticked: tick it, or take that away.`
    case 'no-such-source':
      return `${startingWith(traitName(problem.trait))} doesn’t come from ${sourceName(problem.source)}: read the label again.`
    case 'source-not-contained':
      return `${startingWith(traitName(problem.trait))} from ${sourceName(problem.source)} is in it, so ${needName(problem.code)} is too: say “contains” of ${needName(problem.code)}, or correct what it comes from.`
  }
}
