import { componentOf } from '#lib/menu/find.ts'
import type { Declaration, Ingredient, StationDocument } from '#lib/menu/station-document.ts'
import { isDiet, LEFT_OUT_BY, type NeedCode } from '#lib/needs/codes.ts'

export interface Declared {
  readonly state: Declaration
  /** The ingredient that decides it; null where every one is declared free. */
  readonly ingredient: string | null
}

const WORST_FIRST: readonly Declaration[] = ['contains', 'unknown', 'may-contain', 'free']

/**
 * What one ingredient declares about a need. What isn't declared is unknown, never free; and where
 * nobody has read the label, only what it is said to contain counts.
 */
export const declaredIn = (ingredient: Ingredient, code: NeedCode): Declaration => {
  const said = saidOf(ingredient, code)
  return ingredient.readOn === null && said !== 'contains' ? 'unknown' : said
}

const saidOf = (ingredient: Ingredient, code: NeedCode): Declaration => {
  if (!isDiet(code)) return ingredient.declarations[code] ?? 'unknown'
  if (ingredient.traits === null) return 'unknown'
  const traits = ingredient.traits
  return LEFT_OUT_BY[code].some((trait) => traits.includes(trait)) ? 'contains' : 'free'
}

/** What a component declares about a need: the worst of its ingredients, and which one that is. */
export const declaredBy = (
  station: StationDocument,
  component: string,
  code: NeedCode,
): Declared => {
  let worst: Declared = { state: 'free', ingredient: null }
  for (const id of componentOf(station, component).ingredients) {
    const ingredient = station.ingredients.find((one) => one.id === id)
    const state = ingredient ? declaredIn(ingredient, code) : 'unknown'
    if (WORST_FIRST.indexOf(state) < WORST_FIRST.indexOf(worst.state))
      worst = { state, ingredient: id }
  }
  return worst
}
