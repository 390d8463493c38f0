/** What labels declare about a need, from the ingredient up to the component. */

import { allergenWord, byWorst, isInIt } from '#lib/needs/allergen-word.ts'
import { type Allergens, isGroup, kindsOf } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import {
  ALLERGENS_OF,
  CLAIMS,
  type Claim,
  DIET_RULES,
  DIETS,
  type Diet,
} from '#lib/station/codes/diets.ts'
import { traitWord } from '#lib/station/sources.ts'
import type { Declaration, Ingredient, StationDocument } from '#lib/station/station-document.ts'

export interface Declared {
  readonly state: Declaration
  /** Recipes, outermost first, then the ingredient that decides it; empty where none has it in it. */
  readonly through: readonly string[]
}

const isDietRule = (code: NeedCode): code is Diet => DIETS.some((one) => one === code)
const isClaim = (code: NeedCode): code is Claim => CLAIMS.some((one) => one === code)

const dietWord = (station: Allergens, ingredient: Ingredient, diet: Diet): Declaration => {
  const linked = DIET_RULES[diet].out.flatMap((trait) => ALLERGENS_OF[trait] ?? [])
  const said = linked.flatMap((code) =>
    [code, ...kindsOf(station, code)].map((one) => ingredient.declarations[one]),
  )
  if (said.includes('contains')) return 'contains'
  if (ingredient.traits === null) return 'unknown'
  const made = ingredient.traits.map((trait) => traitWord(ingredient, trait, diet))
  if (made.includes('contains')) return 'contains'
  if (made.includes('unknown')) return 'unknown'
  // Molluscs are asked for beside the US nine, so that most labels say nothing of them.
  const ofTheSet = linked.filter((code) => isGroup(station, code))
  if (ofTheSet.some((code) => allergenWord(station, ingredient, code) === 'unknown'))
    return 'unknown'
  // What isn't listed takes nothing out of a diet: that is over what food comes from, and was read.
  return said.includes('may-contain') ? 'may-contain' : 'free'
}

const claimWord = (ingredient: Ingredient, claim: Claim): Declaration => {
  const said = ingredient.claims[claim]
  if (said === undefined) return 'unknown'
  return said === 'declared' ? 'free' : 'contains'
}

/**
 * What one ingredient declares about a need. What isn't declared is unknown, never free; and where
 * nobody has read the label, only what it is said to contain counts. A declaration of gluten is
 * that of 21 CFR 101.91, and stands beside one of wheat with the statement of 101.91(b)(3) alone.
 */
export const declaredIn = (
  station: Allergens,
  ingredient: Ingredient,
  code: NeedCode,
): Declaration => {
  const word = isDietRule(code)
    ? dietWord(station, ingredient, code)
    : isClaim(code)
      ? claimWord(ingredient, code)
      : allergenWord(station, ingredient, code)
  return ingredient.readOn === null && word !== 'contains' ? 'unknown' : word
}

interface Made {
  readonly ingredients: readonly string[]
  readonly recipes: readonly string[]
}

/** Ingredients of what is made, each with the way to it, through recipes and sub-recipes. */
export function* waysTo(
  station: Pick<StationDocument, 'recipes'>,
  made: Made,
  before: readonly string[] = [],
): Generator<readonly string[]> {
  for (const ingredient of made.ingredients) yield [...before, ingredient]
  for (const id of made.recipes) {
    if (before.includes(id)) throw new Error(`recipe ${id} contains itself`)
    const recipe = station.recipes.find((one) => one.id === id)
    if (!recipe) throw new Error(`the station has no recipe ${id}`)
    yield* waysTo(station, recipe, [...before, id])
  }
}

/**
 * What a component declares about a need: the worst of its ingredients, and the way to that one.
 * @throws where the document is damaged: a recipe or component that isn't there.
 */
export const declaredBy = (
  station: StationDocument,
  component: string,
  code: NeedCode,
): Declared => {
  const made = station.components.find((one) => one.id === component)
  if (!made) throw new Error(`the station has no component ${component}`)
  const ingredients = new Map(station.ingredients.map((one) => [one.id, one]))
  let worst: Declared | null = null
  for (const through of waysTo(station, made)) {
    const ingredient = ingredients.get(through.at(-1) ?? '')
    const state = ingredient ? declaredIn(station, ingredient, code) : 'unknown'
    if (worst === null || byWorst(state, worst.state) < 0) worst = { state, through }
  }
  if (worst === null) return { state: 'unknown', through: [] }
  return isInIt(worst.state) ? worst : { state: worst.state, through: [] }
}
