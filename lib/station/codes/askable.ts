import {
  ALLERGEN_SETS,
  ALWAYS_ASKABLE,
  type AllergenSetId,
} from '#lib/station/codes/allergen-sets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'

/** What decides which allergens a station knows. */
export interface Allergens {
  readonly allergenSet: AllergenSetId
  readonly ownAllergens: readonly string[]
}

/** Kinds of a group of the station's set that a guest can keep away from alone. */
export const kindsOf = ({ allergenSet }: Allergens, group: string): readonly string[] =>
  ALLERGEN_SETS[allergenSet].groups.find((one) => one.code === group)?.kinds ?? []

/** Whether the station's set names an allergen itself, not as a kind. */
export const isGroup = ({ allergenSet }: Allergens, code: string): boolean =>
  ALLERGEN_SETS[allergenSet].groups.some((one) => one.code === code)

/** The group of the station's set that a kind is of; null where it is of none. */
export const groupOf = ({ allergenSet }: Allergens, kind: string): string | null =>
  ALLERGEN_SETS[allergenSet].groups.find((one) => one.kinds.includes(kind))?.code ?? null

/** Whether a guest who told this can be asked for one kind of it only. */
export const hasKinds = (station: Allergens, code: string): boolean =>
  kindsOf(station, groupOf(station, code) ?? code).length > 0

/** Groups of the set in its order, then what is askable beside them, then the station's own. */
export const askableAllergens = (station: Allergens): readonly string[] => {
  const groups = ALLERGEN_SETS[station.allergenSet].groups.map((one) => one.code)
  const beside = ALWAYS_ASKABLE.filter(
    (code) => !groups.includes(code) && groupOf(station, code) === null,
  )
  return [...groups, ...beside, ...station.ownAllergens]
}

/** Everything that a label can declare. */
export const declarable = (station: Allergens): ReadonlySet<string> =>
  new Set(askableAllergens(station).flatMap((code) => [code, ...kindsOf(station, code)]))

export const isKnownNeed = (station: Allergens, code: NeedCode): boolean =>
  DIETS.some((one) => one === code) ||
  CLAIMS.some((one) => one === code) ||
  declarable(station).has(code)
