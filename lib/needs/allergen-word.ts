/** What one label says of one allergen, by the law of its pack where it doesn't list it. */

import { GLUTEN_GRAINS } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, groupOf, kindsOf } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { isNamedByLaw, isNamedWithGroup } from '#lib/station/codes/named-by-law.ts'
import { grainsIn, isStated } from '#lib/station/gluten.ts'
import type { Declaration, Ingredient } from '#lib/station/station-document.ts'

const WORST_FIRST: readonly Declaration[] = [
  'contains',
  'unknown',
  'may-contain',
  'not-listed',
  'free',
]

/** Below zero where `one` is worse for the guest than `other`. */
export const byWorst = (one: Declaration, other: Declaration): number =>
  WORST_FIRST.indexOf(one) - WORST_FIRST.indexOf(other)

const worstOf = (words: readonly Declaration[]): Declaration =>
  WORST_FIRST.find((word) => words.includes(word)) ?? 'unknown'

/** Whether something may be in it, or get from it into something else. */
export const isInIt = (word: Declaration): boolean => word !== 'free' && word !== 'not-listed'

/** The worst of an allergen's own word and those of its kinds; undefined where it has none itself. */
const ownWord = (
  station: Allergens,
  { declarations, law }: Ingredient,
  code: string,
): Declaration | undefined => {
  const own = declarations[code]
  if (own === undefined) return undefined
  const kinds = kindsOf(station, code).flatMap((kind) =>
    declarations[kind] === 'not-listed' && !isNamedWithGroup(station, law, kind)
      ? 'unknown'
      : (declarations[kind] ?? []),
  )
  return worstOf([own, ...kinds])
}

/** A kind that isn't named stays open: a label that names almonds says nothing of walnuts. */
const kindByGroup = (
  station: Allergens,
  ingredient: Ingredient,
  kind: string,
  group: string,
): Declaration => {
  const { declarations, law } = ingredient
  if (declarations[group] === 'not-listed' && !isNamedWithGroup(station, law, kind))
    return 'unknown'
  const word = ownWord(station, ingredient, group) ?? 'unknown'
  return word === 'contains' ? 'unknown' : word
}

/** What a label says of a group without saying of which of its kinds: it may be any of them. */
const saidOfAnyKind = (
  station: Allergens,
  { declarations }: Ingredient,
  group: string,
): 'unknown' | 'may-contain' | null => {
  const said = declarations[group]
  if (said !== 'contains' && said !== 'may-contain') return null
  if (kindsOf(station, group).some((kind) => declarations[kind] === said)) return null
  return said === 'contains' ? 'unknown' : said
}

/** Cereals that are contained while none is named: one of them may be a gluten grain. */
const isCerealUnnamed = (station: Allergens, ingredient: Ingredient): boolean =>
  GLUTEN_GRAINS.some((grain) => {
    const group = groupOf(station, grain)
    return (
      group !== null &&
      ['unknown', 'not-listed'].includes(ingredient.declarations[grain] ?? 'unknown') &&
      ownWord(station, ingredient, group) === 'contains' &&
      !kindsOf(station, group).some((kind) => ingredient.declarations[kind] === 'contains')
    )
  })

/** The cereals of Annex II, entry 1, to Regulation (EU) 1169/2011: oats count there. */
const CEREALS = [...GLUTEN_GRAINS, 'oats']

/**
 * A grain that is contained is gluten whatever is declared, but for wheat under the statement. No law
 * makes a label name gluten (21 CFR 101.91 is voluntary), but one does each cereal that has it.
 */
const glutenWord = (station: Allergens, ingredient: Ingredient): Declaration => {
  if (grainsIn(ingredient).length > 0) return isStated(ingredient) ? 'free' : 'contains'
  const said = worstOf([ingredient.declarations.gluten ?? 'unknown'])
  if (said === 'unknown' || said === 'not-listed')
    return ingredient.law === 'eu-14' &&
      CEREALS.every((grain) => !isInIt(allergenWord(station, ingredient, grain)))
      ? 'not-listed'
      : 'unknown'
  return said !== 'contains' && isCerealUnnamed(station, ingredient) ? 'unknown' : said
}

/** What a label says of an allergen, a kind, gluten or a grain, whoever read it and when. */
export const allergenWord = (
  station: Allergens,
  ingredient: Ingredient,
  code: NeedCode,
): Declaration => {
  if (code === 'gluten') return glutenWord(station, ingredient)
  const { declarations, law } = ingredient
  const group = groupOf(station, code)
  const says =
    declarations[code] === 'not-listed' && !isNamedByLaw(station, law, code)
      ? undefined
      : ownWord(station, ingredient, code)
  // A kind that isn't listed may be what its group says of none by name.
  if (says === 'not-listed' && group !== null)
    return saidOfAnyKind(station, ingredient, group) ?? says
  if (says !== undefined) return says
  if (group !== null) return kindByGroup(station, ingredient, code, group)
  const isKind = kindsOf(station, code).some((kind) => declarations[kind] === 'contains')
  return isKind ? 'contains' : 'unknown'
}
