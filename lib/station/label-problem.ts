import type { Allergens } from '#lib/station/codes/askable.ts'
import { type GlutenProblem, glutenProblem } from '#lib/station/gluten.ts'
import type { Label } from '#lib/station/label.ts'
import { type SourceProblem, sourceProblem } from '#lib/station/sources.ts'

export type LabelProblem = GlutenProblem | SourceProblem

/** What a label that is read anew can't mean, so that it is asked; null where it agrees with itself. */
export const labelProblem = (
  station: Allergens,
  label: Pick<Label, 'declarations' | 'traits' | 'sources' | 'glutenStatement'>,
): LabelProblem | null => glutenProblem(label) ?? sourceProblem(station, label)
