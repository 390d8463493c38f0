/** What a food says of every need that the station knows. */

import { byWorst } from '#lib/needs/allergen-word.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import { type Allergens, declarable } from '#lib/station/codes/askable.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { CLAIMS, DIETS } from '#lib/station/codes/diets.ts'
import type { Declaration, StationDocument } from '#lib/station/station-document.ts'

/** For a diet or a claim `contains` is what it leaves out. What isn't named is unknown. */
export type Says = Readonly<Partial<Record<NeedCode, Declaration>>>

/** Everything a guest can ask for: the station's allergens and their kinds, diets and claims. */
export const everyNeed = (station: Allergens): readonly NeedCode[] => [
  ...declarable(station),
  ...DIETS,
  ...CLAIMS,
]

/**
 * What a component declares of every need.
 * @throws where the document is damaged: a recipe or component that isn't there.
 */
export const saysOf = (station: StationDocument, component: string): Says =>
  Object.fromEntries(
    everyNeed(station).map((code) => [code, declaredBy(station, component, code).state]),
  )

/**
 * The union of allergens, and of what diets leave out: of each need the worse of the two, and
 * unknown where either doesn't say.
 */
export const unionOf = (one: Says, other: Says): Says =>
  Object.fromEntries(
    [...new Set([...Object.keys(one), ...Object.keys(other)])].map((code) => {
      const said = [one[code] ?? 'unknown', other[code] ?? 'unknown'] as const
      return [code, byWorst(...said) <= 0 ? said[0] : said[1]]
    }),
  )
