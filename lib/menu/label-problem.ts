import type { Label } from '#lib/menu/label.ts'
import type { Allergens } from '#lib/needs/askable.ts'
import { type GlutenProblem, glutenProblem } from '#lib/needs/gluten.ts'
import { type SourceProblem, sourceProblem } from '#lib/needs/sources.ts'

export type LabelProblem = GlutenProblem | SourceProblem

/** What a label that is read anew can't mean, so that it is asked; null where it agrees with itself. */
export const labelProblem = (
  station: Allergens,
  label: Pick<Label, 'declarations' | 'traits' | 'sources' | 'glutenStatement'>,
): LabelProblem | null => glutenProblem(label) ?? sourceProblem(station, label)
