/** What a label says of gluten beside the grains that it contains: 21 CFR 101.91. */

import { GLUTEN_GRAINS } from '#lib/station/codes/allergen-sets.ts'
import type { Ingredient } from '#lib/station/station-document.ts'

type Said = Pick<Ingredient, 'declarations' | 'traits' | 'glutenStatement'>

export type GlutenGrain = (typeof GLUTEN_GRAINS)[number] | 'gluten-grain'

/** Gluten grains that a label names as contained; one that it ticks only, by the trait's name. */
export const grainsIn = ({ declarations, traits }: Said): readonly GlutenGrain[] => {
  const named = GLUTEN_GRAINS.filter((grain) => declarations[grain] === 'contains')
  return named.length === 0 && traits?.includes('gluten-grain') ? ['gluten-grain'] : named
}

/** Whether its only grain is wheat, of which the statement speaks; it speaks of no other. */
export const canBeStated = (said: Said): boolean =>
  grainsIn(said).length > 0 && grainsIn(said).every((grain) => grain === 'wheat')

/** Whether it is declared free of gluten with the statement beside its wheat. */
export const isStated = (said: Said): boolean =>
  said.glutenStatement === true && said.declarations.gluten === 'free' && canBeStated(said)

export type GlutenProblem =
  | { readonly why: 'always-gluten'; readonly grain: Exclude<GlutenGrain, 'wheat'> }
  /** Free of it only with the statement, contained otherwise: said it has to be. */
  | { readonly why: 'wheat-is-gluten' }
  /** The statement without what it explains: wheat, and a declaration that it is free of gluten. */
  | { readonly why: 'statement-alone' }

/** What a label that is read says of gluten and can't mean; null where it says it clearly. */
export const glutenProblem = (said: Said): GlutenProblem | null => {
  const other = grainsIn(said).find((grain) => grain !== 'wheat')
  const isContained = said.declarations.gluten === 'contains'
  if (other !== undefined && !isContained) return { why: 'always-gluten', grain: other }
  if (said.glutenStatement === true) return isStated(said) ? null : { why: 'statement-alone' }
  return canBeStated(said) && !isContained ? { why: 'wheat-is-gluten' } : null
}
