import type { WellPlan } from '#components/menu/line/stops.ts'
import { type Draft, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { PAN_SIZES, type PanSize } from '#lib/measure/pans.ts'

/** A pan as it is drawn from above. */
export interface DrawnPan {
  readonly pan: string
  readonly size: PanSize
  /** Empty where its component has none yet. */
  readonly name: string
  /** The name as it breaks on the pan. */
  readonly lines: readonly string[]
  readonly component: string
  /** Nothing of it is wrong or missing for a first order. */
  readonly isSet: boolean
}

export type Held = 'hot' | 'cold' | 'dry' | 'time'

export const HELD: readonly Held[] = ['hot', 'cold', 'dry', 'time']

export interface DrawnWell extends WellPlan<DrawnPan> {
  readonly held: Held | null
}

const sizeOf = (said: string): PanSize => PAN_SIZES.find((one) => one === said) ?? 'third'

export const heldOf = (said: string): Held | null => HELD.find((one) => one === said) ?? null

/**
 * The wells of a draft with their pans, as they are drawn.
 *
 * @param unset ids of components and pans of which something is wrong or missing
 */
export const wellsOf = (draft: Draft, unset: ReadonlySet<string>): readonly DrawnWell[] => {
  const components = new Map(rowsOf(draft, 'component').map(({ id, row }) => [id, row]))
  const pans = rowsOf(draft, 'pan')
  return rowsOf(draft, 'well').map((well) => ({
    well: well.id,
    held: heldOf(textIn(well.row, 'held')),
    pans: pans.flatMap(({ id, row }) => {
      if (textIn(row, 'well') !== well.id) return []
      const component = textIn(row, 'component')
      const own = components.get(component)
      const short = textsIn(own, 'short')
      const name = textIn(own, 'name')
      return [
        {
          pan: id,
          size: sizeOf(textIn(row, 'size')),
          name,
          lines: short.length > 0 ? short : name === '' ? [] : [name],
          component,
          isSet: !unset.has(id) && !unset.has(component),
        },
      ]
    }),
  }))
}
