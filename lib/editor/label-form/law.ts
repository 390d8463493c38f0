/** What the law of a pack makes its label name. */
import { ALLERGEN_SETS, type AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, kindsOf } from '#lib/station/codes/askable.ts'

/**
 * Whether what isn't listed may be answered as such: the law names it, with all its kinds that the
 * station tells apart. The European Union names no pine nut, so that a list without nuts says
 * nothing of all American tree nuts.
 */
export const isNamedBy = (law: AllergenSetId, allergens: Allergens, code: string): boolean =>
  ALLERGEN_SETS[law].groups.some(
    (group) =>
      group.kinds.includes(code) ||
      (group.code === code && kindsOf(allergens, code).every((kind) => isKindNamed(law, kind))),
  )

const isKindNamed = (law: AllergenSetId, kind: string): boolean =>
  ALLERGEN_SETS[law].groups.some(({ code, kinds }) => code === kind || kinds.includes(kind))
