import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, askableAllergens } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'

export interface AskTiles {
  /** In sight at once, allergens first. */
  readonly tiles: readonly NeedCode[]
  /** Behind "more". */
  readonly more: readonly NeedCode[]
}

/** So many stand on a 10-inch tablet without scrolling; one place more is "more". */
export const MOST_TILES = 17

/** What guests tell most, first: common practice, no source. */
const DIETS_FIRST: readonly NeedCode[] = [
  'vegetarian',
  'vegan',
  'no-pork',
  'halal',
  'kosher',
  'pescatarian',
  'no-beef',
]

/** The two that always stand in sight, whatever the set. */
const ALWAYS = DIETS_FIRST.slice(0, 2)

/**
 * What is asked about, in the order of the station's set with gluten beside it, then diets. What
 * has no place in sight stands behind "more", and nothing that can be asked is missing.
 */
export const askTiles = (station: Allergens): AskTiles => {
  const groups = ALLERGEN_SETS[station.allergenSet].groups.map((one) => one.code)
  const allergens = [...groups, 'gluten'].slice(0, MOST_TILES - ALWAYS.length)
  const diets = DIETS_FIRST.slice(0, MOST_TILES - allergens.length)
  const tiles = [...allergens, ...diets]
  const all = [...askableAllergens(station), ...DIETS_FIRST, ...DIETS, ...CLAIMS]
  return { tiles, more: [...new Set(all)].filter((code) => !tiles.includes(code)) }
}
