/** By which kinds labels say a group, and whether the kinds are all that they say of it. */
import { declaredIn } from '#lib/needs/declared.ts'
import { type Allergens, kindsOf } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import type { Ingredient } from '#lib/station/station-document.ts'

type Named = 'contains' | 'may-contain'

/** What a label says by a kind's own name: "may contain nuts" names none of them. */
const says = ({ declarations, readOn }: Ingredient, kind: NeedCode, word: Named): boolean =>
  declarations[kind] === word && (word === 'contains' || readOn !== null)

/** Kinds of a group of which at least one of the labels says so. */
const kindsSaid = (
  station: Allergens,
  ingredients: readonly Ingredient[],
  code: NeedCode,
  word: Named,
): readonly NeedCode[] =>
  kindsOf(station, code).filter((kind) => ingredients.some((one) => says(one, kind, word)))

/** Whether a label says it of the group alone, so that it may be any kind. */
const isOfAnyKind = (
  station: Allergens,
  ingredients: readonly Ingredient[],
  code: NeedCode,
  word: Named,
): boolean =>
  ingredients.some(
    (one) =>
      declaredIn(station, one, code) === word && kindsSaid(station, [one], code, word).length === 0,
  )

const isOpen = (station: Allergens, ingredients: readonly Ingredient[], code: NeedCode): boolean =>
  ingredients.some((one) => declaredIn(station, one, code) === 'unknown')

/**
 * Kinds that are named behind a group. None where a label says the group alone or nobody knows of one:
 * "tree nuts (almonds)" would be read as almonds and no other nut.
 */
export const kindsNamed = (
  station: Allergens,
  ingredients: readonly Ingredient[],
  code: NeedCode,
  word: Named,
): readonly NeedCode[] =>
  isOfAnyKind(station, ingredients, code, word) || isOpen(station, ingredients, code)
    ? []
    : kindsSaid(station, ingredients, code, word)

/** Kinds that are warned of beside those that are contained; null: of the group alone, it may be any. */
export const warnedBeside = (
  station: Allergens,
  ingredients: readonly Ingredient[],
  code: NeedCode,
): readonly NeedCode[] | null => {
  if (isOfAnyKind(station, ingredients, code, 'may-contain')) return null
  const contained = kindsSaid(station, ingredients, code, 'contains')
  return kindsSaid(station, ingredients, code, 'may-contain').filter(
    (kind) => !contained.includes(kind),
  )
}
