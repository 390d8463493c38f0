/** What a draft is told beside what the document's schema refuses: it would stop somebody later. */
import { type Draft, type Row, rowsOf, textIn } from '#lib/editor/draft.ts'
import type { Problem } from '#lib/editor/problem.ts'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { mostMg } from '#lib/measure/pan-rules.ts'
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import { densityGPerMl, wholePortions } from '#lib/measure/portion.ts'
import { toolAmount } from '#lib/measure/portion-tools.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'

const portionSchema = stationShape.shape.components.element.shape.portion

/** What a pan holds of a component in whole portions; null where its capacity or density isn't known. */
const portionsHeld = (pan: Row, component: Row | undefined): number | null => {
  const parsed = portionSchema.safeParse(component?.portion)
  if (!parsed.success || !('gPerCup' in parsed.data)) return null
  const own = typeof pan.capacityFlOz === 'number' ? mlFrom(pan.capacityFlOz, 'flOz') : null
  const most = mostMg(
    pan.size as PanSize,
    pan.depthIn as PanDepthIn,
    densityGPerMl(parsed.data.gPerCup, 1, 'cup'),
    own,
  )
  return most === null ? null : wholePortions(most, toolAmount(parsed.data).amount)
}

const wrongPans = (draft: Draft): readonly Problem[] => {
  const wells = new Set(rowsOf(draft, 'well').map(({ id }) => id))
  return rowsOf(draft, 'pan').flatMap(({ id, row }): readonly Problem[] => {
    if (!wells.has(textIn(row, 'well')))
      return [{ code: 'no-well', entity: 'pan', id, field: 'well' }]
    const most = portionsHeld(row, draft.rows[`component:${textIn(row, 'component')}`])
    const { usualPortions } = row
    // Loading it so would be refused.
    return most !== null && typeof usualPortions === 'number' && usualPortions > most
      ? [{ code: 'usual-overfull', entity: 'pan', id, field: 'usualPortions', most }]
      : []
  })
}

/** Only a yield of nothing: other words than a card's are kept as they were typed. */
const wrongYields = (draft: Draft): readonly Problem[] =>
  rowsOf(draft, 'recipe').flatMap(({ id, row }): readonly Problem[] => {
    const read = typedYield(textIn(row, 'yields'))
    return !read.ok && read.code === 'zero'
      ? [{ code: 'yield-zero', entity: 'recipe', id, field: 'yields' }]
      : []
  })

export const ownProblems = (draft: Draft): readonly Problem[] => [
  ...wrongPans(draft),
  ...wrongYields(draft),
]
