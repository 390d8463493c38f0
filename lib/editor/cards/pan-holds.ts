/** How many portions a pan holds while both are set up, and what follows where a portion changes. */
import { type Draft, isRecord, type Json, type Row, rowsOf, textIn } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { type PanDepthIn, type PanSize, panUsableMl } from '#lib/measure/pans.ts'
import { wholePortions } from '#lib/measure/portion.ts'
import { toolVolumeMl, type VolumeTool } from '#lib/measure/portion-tools.ts'

const OF_VOLUME = ['scoop', 'ladle', 'spoodle', 'measure']

/** Millilitres of one portion; null where it isn't taken by volume or isn't said yet. */
export const portionMl = (portion: Json | undefined): number | null => {
  if (!isRecord(portion)) return null
  const { tool, level, flOz } = portion
  if (tool === 'cup') return typeof flOz === 'number' ? mlFrom(flOz, 'flOz') : null
  const isOfVolume = OF_VOLUME.some((one) => one === tool)
  if (!isOfVolume || typeof level !== 'number' || level < 1) return null
  try {
    return toolVolumeMl(portion as unknown as VolumeTool) * level
  } catch {
    return null
  }
}

/** Whole portions in a pan by its usable capacity; null where one of them isn't known. */
export const holds = (
  size: PanSize,
  depthIn: PanDepthIn,
  portion: Json | undefined,
  statedFlOz: number | null = null,
): number | null => {
  const ml = statedFlOz === null ? panUsableMl(size, depthIn) : mlFrom(statedFlOz, 'flOz')
  const each = portionMl(portion)
  return ml === null || each === null ? null : wholePortions(ml, each)
}

const LEFT_FREE = 0.8

/** What it is usually loaded with, proposed from what it holds: a fifth is left to stir in. */
export const usualOf = (held: number | null): number | null =>
  held === null ? null : Math.max(1, Math.min(500, Math.floor(held * LEFT_FREE)))

/** Another portion of a component. A pan whose usual load is the proposed one follows what it holds. */
export const portionSteps = (
  draft: Draft,
  component: string,
  next: Row,
  density?: Json,
): readonly Step[] => {
  const portion = draft.rows[`component:${component}`]?.portion
  const pans = rowsOf(draft, 'pan').filter(({ row }) => textIn(row, 'component') === component)
  const fields = { portion: next, ...(density === undefined ? {} : { density }) }
  return [
    { do: 'put', entity: 'component', id: component, fields },
    ...pans.flatMap(({ id, row }): readonly Step[] => {
      const [size, depth] = [textIn(row, 'size') as PanSize, row.depthIn as PanDepthIn]
      const before = usualOf(holds(size, depth, portion))
      const after = usualOf(holds(size, depth, next))
      const isProposed = before === null ? portion === undefined : row.usualPortions === before
      return isProposed && after !== null && after !== row.usualPortions
        ? [{ do: 'put', entity: 'pan', id, fields: { usualPortions: after } }]
        : []
    }),
  ]
}
