/** What a trait comes of, and what that is to a diet. */

import type { Allergens } from '#lib/station/codes/askable.ts'
import { kindsOf } from '#lib/station/codes/askable.ts'
import {
  ALLERGENS_OF,
  DIET_RULES,
  type Diet,
  NAMES_THE_MEAT,
  SOURCED,
  SOURCES_OF,
  type Source,
  type Sourced,
  type Trait,
} from '#lib/station/codes/diets.ts'
import type { Declaration, Ingredient } from '#lib/station/station-document.ts'

type Made = Pick<Ingredient, 'traits' | 'sources'>

export const isSourced = (trait: Trait): trait is Sourced => SOURCED.some((one) => one === trait)

/** The trait that says the same of a food as a source does of a trait; null: no animal. */
const traitOf = (source: Source): Trait | null =>
  source === 'plants' ? null : source === 'other-animal' ? 'meat' : source

/** A trait that is ticked: to a diet it is contained, unknown or free. */
export const traitWord = ({ traits, sources }: Made, trait: Trait, diet: Diet): Declaration => {
  const { out, unclear } = DIET_RULES[diet]
  const named = isSourced(trait)
    ? (sources?.[trait] ?? []).filter((one) => SOURCES_OF[trait].includes(one))
    : []
  const animals = named.flatMap((one) => traitOf(one) ?? [])
  if (named.length > 0 && animals.length === 0) return 'free'
  if (out.includes(trait) || animals.some((one) => out.includes(one))) return 'contains'
  const isNamed =
    animals.length > 0 || (trait === 'meat' && NAMES_THE_MEAT.some((one) => traits?.includes(one)))
  return unclear.includes(trait) && !isNamed ? 'unknown' : 'free'
}

export type SourceProblem =
  | { readonly why: 'source-of-nothing'; readonly trait: Sourced }
  | { readonly why: 'no-such-source'; readonly trait: Sourced; readonly source: Source }
  /** The allergen that comes with it is declared free, not listed, or only warned of. */
  | {
      readonly why: 'source-not-contained'
      readonly trait: Sourced
      readonly source: Source
      readonly code: string
    }

/** A source that the rest of its label contradicts; null where none is. */
export const sourceProblem = (
  station: Allergens,
  { traits, sources, declarations }: Made & Pick<Ingredient, 'declarations'>,
): SourceProblem | null => {
  const isDenied = (code: string): boolean =>
    ['free', 'not-listed', 'may-contain'].includes(declarations[code] ?? 'unknown') &&
    !kindsOf(station, code).some((kind) => declarations[kind] === 'contains')
  for (const trait of SOURCED) {
    const named = sources?.[trait]
    if (named === undefined) continue
    if (!traits?.includes(trait)) return { why: 'source-of-nothing', trait }
    for (const source of named) {
      if (!SOURCES_OF[trait].includes(source)) return { why: 'no-such-source', trait, source }
      const animal = traitOf(source)
      const linked = animal === null ? [] : (ALLERGENS_OF[animal] ?? [])
      const [code] = linked
      if (code !== undefined && linked.every(isDenied))
        return { why: 'source-not-contained', trait, source, code }
    }
  }
  return null
}
