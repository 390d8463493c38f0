import type { Held } from '#components/menu/line/drawn.ts'
import type { Draft } from '#lib/editor/draft.ts'
import { rowOf, textIn } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'

/**
 * How a component is held whose pan stands in a well: as the well holds. In a well by time alone it
 * stays hot or cold, and is cold where nobody has said: so it is read as it is loaded, and its clock runs
 * from that. Dry, nobody would ask at all.
 */
export const heldIn = (well: Held | null, before: string): 'hot' | 'cold' | 'dry' => {
  if (well === 'time') return before === 'hot' ? 'hot' : 'cold'
  return well === 'hot' || well === 'cold' ? well : 'dry'
}

/** What a component becomes in a well of another kind; none where that changes nothing of it. */
export const followSteps = (
  draft: Draft,
  component: string,
  into: Held | null,
): readonly Step[] => {
  const row = rowOf(draft, 'component', component)
  const before = row === undefined ? '' : textIn(row, 'held')
  const held = heldIn(into, before)
  return into === null || row === undefined || held === before
    ? []
    : [{ do: 'put', entity: 'component', id: component, fields: { held } }]
}
