/** What a new row begins with beside what is said of it: never what a label says, nor a price. */
import type { Entity, Row } from '#lib/editor/draft.ts'
import { textIn } from '#lib/editor/draft.ts'
import { proposedShort } from '#lib/editor/ids.ts'
import type { PanSize } from '#lib/measure/pans.ts'
import { UNSAID_FOOD } from '#lib/station/shapes/older-documents.ts'

/** What a pan is usually loaded with until somebody says: common practice, no source. */
const USUAL_PORTIONS: Readonly<Record<PanSize, number>> = {
  full: 60,
  half: 30,
  third: 24,
  quarter: 16,
  sixth: 12,
  ninth: 6,
}

const usualPortions = (fields: Row): number =>
  USUAL_PORTIONS[(textIn(fields, 'size') || 'third') as PanSize] ?? USUAL_PORTIONS.third

/** As strict as can be where nobody has said: no cups, nothing to make again, unprotected. */
export const firstFields = (entity: Entity, fields: Row): Row => {
  switch (entity) {
    case 'pan':
      return {
        size: 'third',
        depthIn: 4,
        tareMg: null,
        capacityFlOz: null,
        usualPortions: usualPortions(fields),
      }
    case 'backup':
      return { protected: false, size: 'third', depthIn: 4, tareMg: null }
    case 'tool':
      return { usualFor: null }
    case 'recipe':
      return { ingredients: [], recipes: [] }
    case 'component':
      return {
        ingredients: [],
        recipes: [],
        side: false,
        extraCents: 0,
        warm: null,
        food: { ...UNSAID_FOOD },
        remake: null,
        costCents: null,
        ...('name' in fields ? { short: proposedShort(textIn(fields, 'name')) } : {}),
      }
    case 'item':
      return { base: null, parts: [] }
    default:
      return {}
  }
}
