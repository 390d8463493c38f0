/** Which allergens a law makes a label name, so that what it doesn't list isn't in it. */
import { ALLERGEN_SETS, type AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, groupOf, kindsOf } from '#lib/station/codes/askable.ts'

/**
 * Groups of which a law has the kind itself be named. US: tree nuts, fish and crustacean shellfish,
 * 21 USC 343(w)(2) with 321(qq)(1). EU: cereals containing gluten and nuts, "namely" in entries 1
 * and 8 of Annex II to Regulation (EU) 1169/2011; of fish and crustaceans the entry is enough.
 */
const NAMES_KINDS: Readonly<Record<AllergenSetId, readonly string[]>> = {
  'us-9': ['tree-nuts', 'fish', 'shellfish'],
  'eu-14': ['gluten-cereals', 'tree-nuts'],
}

const groupIn = (law: AllergenSetId, code: string) =>
  ALLERGEN_SETS[law].groups.find((one) => one.code === code)

/** Where kinds are examples, as of fish, a law names all of them by the group. */
const AS_ONE = ['fish', 'shellfish']

/** Whether a law makes labels name an allergen of a station's set, all that the set counts as it. */
const namesGroup = (station: Allergens, law: AllergenSetId, code: string): boolean => {
  const group = groupIn(law, code)
  return (
    group !== undefined &&
    (AS_ONE.includes(code) || kindsOf(station, code).every((kind) => group.kinds.includes(kind)))
  )
}

/** Whether a law makes labels name a kind, by its own name. */
const namesKind = (law: AllergenSetId, code: string): boolean =>
  ALLERGEN_SETS[law].groups.some(
    (group) => group.kinds.includes(code) && NAMES_KINDS[law].includes(group.code),
  )

/**
 * Whether what a label doesn't list isn't in it by the law of its pack: an allergen of that law's
 * set, or a kind that it makes labels name. Nothing else: molluscs, barley, rye and oats under the
 * US nine aren't, nor what a station adds. Highly refined oils and the like are exempt from naming
 * (21 USC 321(qq)(2); the right column of Annex II), as they are where a label declares nothing.
 */
export const isNamedByLaw = (
  station: Allergens,
  law: AllergenSetId | undefined,
  code: string,
): boolean => law !== undefined && (namesGroup(station, law, code) || namesKind(law, code))

/** Whether a kind isn't in what doesn't list its group: of that law's set, or of one that is one. */
export const isNamedWithGroup = (
  station: Allergens,
  law: AllergenSetId | undefined,
  kind: string,
): boolean => {
  const group = groupOf(station, kind)
  if (law === undefined || group === null) return false
  const named = groupIn(law, group)
  return (
    isNamedByLaw(station, law, kind) ||
    (named !== undefined && (AS_ONE.includes(group) || named.kinds.includes(kind)))
  )
}
