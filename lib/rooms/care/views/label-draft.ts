/** A label as it is read into the form, and what of it the service is told. */

import { ALLERGEN_SETS, GLUTEN_GRAINS } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, askableAllergens, kindsOf } from '#lib/station/codes/askable.ts'
import {
  ALLERGENS_OF,
  type Claim,
  SOURCED,
  type Source,
  type Sourced,
  TRAITS,
  type Trait,
} from '#lib/station/codes/diets.ts'
import { canBeStated } from '#lib/station/gluten.ts'
import type { Label } from '#lib/station/label.ts'
import { type LabelProblem, labelProblem } from '#lib/station/label-problem.ts'
import type { Declaration, Ingredient, StationDocument } from '#lib/station/station-document.ts'

export interface LabelDraft {
  /** Nothing is said of what isn't named here: it is unknown. */
  readonly declarations: Readonly<Record<string, Declaration>>
  /** null: not answered, so unknown; none: it was said that it is none of these. */
  readonly traits: readonly Trait[] | null
  /** What ticked traits come from: none where that was said not to be on the label. */
  readonly sources: Readonly<Partial<Record<Sourced, readonly Source[]>>>
  /** It says beside "wheat" that the wheat was processed: 21 CFR 101.91(b)(3). */
  readonly glutenStatement: boolean
  readonly claims: Readonly<Partial<Record<Claim, 'declared' | 'not'>>>
  /** Initials of who read it, which are told beside the label. */
  readonly readBy: string
}

export interface LabelLine {
  readonly code: string
  readonly kinds: readonly string[]
}

/** What the form asks about, in the order of the station's set. */
export const labelLines = (station: Allergens): readonly LabelLine[] =>
  askableAllergens(station).map((code) => ({ code, kinds: kindsOf(station, code) }))

export const EMPTY_LABEL: LabelDraft = {
  declarations: {},
  traits: null,
  sources: {},
  glutenStatement: false,
  claims: {},
  readBy: '',
}

/**
 * The label as it was last read, to be gone through again; empty where nobody has read it. What was
 * said to be unknown is left unsaid, except of a kind, which would else be as its group. The statement
 * beside wheat is of the label that is read: it is never carried over.
 */
export const draftOf = (
  station: Allergens,
  { declarations, traits, sources = {}, claims, readOn }: Ingredient,
): LabelDraft => {
  if (readOn === null) return EMPTY_LABEL
  const lines = new Set(askableAllergens(station))
  const said = Object.entries(declarations).filter(
    ([code, word]) => word !== 'unknown' || !lines.has(code),
  )
  return { ...EMPTY_LABEL, declarations: Object.fromEntries(said), traits, sources, claims }
}

/** With what a label says of one allergen; null: nothing. */
export const withWord = (draft: LabelDraft, code: string, word: Declaration | null): LabelDraft => {
  const { [code]: _, ...others } = draft.declarations
  return { ...draft, declarations: word === null ? others : { ...others, [code]: word } }
}

/**
 * Groups of the station's set of which nothing is said, nor of a kind of them. Its law has a label
 * name these; of gluten and the rest a label needn't speak.
 */
export const restOfSet = (station: Allergens, draft: LabelDraft): readonly string[] =>
  ALLERGEN_SETS[station.allergenSet].groups
    .filter(({ code, kinds }) =>
      [code, ...kinds].every((one) => draft.declarations[one] === undefined),
    )
    .map(({ code }) => code)

/** What is no longer ticked comes from nothing. */
const sourcesOf = ({ sources }: LabelDraft, traits: readonly Trait[]): LabelDraft['sources'] =>
  Object.fromEntries(
    SOURCED.flatMap((trait) => {
      const named = traits.includes(trait) ? sources[trait] : undefined
      return named === undefined ? [] : [[trait, named] as const]
    }),
  )

/** The last tick that is taken away leaves no answer: it doesn't say "none of these". */
export const withTrait = (draft: LabelDraft, trait: Trait, has: boolean): LabelDraft => {
  const traits = TRAITS.filter((one) =>
    one === trait ? has : (draft.traits?.includes(one) ?? false),
  )
  return {
    ...draft,
    traits: traits.length === 0 ? null : traits,
    sources: sourcesOf(draft, traits),
  }
}

/** What a trait comes from: the sources that its label names; none: not said; null: not answered. */
export const withSources = (
  draft: LabelDraft,
  trait: Sourced,
  sources: readonly Source[] | null,
): LabelDraft => {
  const { [trait]: _, ...others } = draft.sources
  return { ...draft, sources: sources === null ? others : { ...others, [trait]: sources } }
}

/** One source more or less. The last that is taken away leaves no answer. */
export const withSource = (
  draft: LabelDraft,
  trait: Sourced,
  source: Source,
  has: boolean,
): LabelDraft => {
  const others = (draft.sources[trait] ?? []).filter((one) => one !== source)
  const sources = has ? [...others, source] : others
  return withSources(draft, trait, sources.length === 0 ? null : sources)
}

/** Ticked traits that each come from something of their own. */
export const sourcedTraits = ({ traits }: LabelDraft): readonly Sourced[] =>
  SOURCED.filter((trait) => traits?.includes(trait))

/** Of these what nobody answered: "not said" is an answer, and no answer a form half filled. */
export const unansweredSources = (draft: LabelDraft): readonly Sourced[] =>
  sourcedTraits(draft).filter((trait) => draft.sources[trait] === undefined)

/** With the answer that it is none of these, beside what follows from its allergens; or without. */
export const withNoTraits = (draft: LabelDraft, isNone: boolean): LabelDraft => ({
  ...draft,
  traits: isNone ? [] : null,
  sources: {},
})

export const withClaim = (
  draft: LabelDraft,
  claim: Claim,
  said: 'declared' | 'not' | null,
): LabelDraft => {
  const { [claim]: _, ...others } = draft.claims
  return { ...draft, claims: said === null ? others : { ...others, [claim]: said } }
}

/** Traits that follow from what is contained: nobody has to tick them. They answer nothing else. */
export const impliedTraits = (station: Allergens, draft: LabelDraft): readonly Trait[] => {
  const contains = (code: string) =>
    [code, ...kindsOf(station, code)].some((one) => draft.declarations[one] === 'contains')
  return TRAITS.filter((trait) =>
    trait === 'gluten-grain'
      ? GLUTEN_GRAINS.some(contains)
      : (ALLERGENS_OF[trait] ?? []).some(contains),
  )
}

export interface Contradiction {
  readonly trait: Trait
  readonly code: string
}

/** Traits that are ticked while the allergen that they bring is answered as not in it: one is wrong. */
export const contradictions = (station: Allergens, draft: LabelDraft): readonly Contradiction[] => {
  const traits = new Set([...(draft.traits ?? []), ...impliedTraits(station, draft)])
  const isDenied = (code: string) => ['free', 'not-listed'].includes(draft.declarations[code] ?? '')
  return TRAITS.filter((trait) => traits.has(trait)).flatMap((trait): Contradiction[] => {
    const linked = trait === 'gluten-grain' ? [] : (ALLERGENS_OF[trait] ?? [])
    // Clams and crabs are one trait, so either alone may be.
    if (linked.length === 0 || !linked.every(isDenied)) return []
    return linked.slice(0, 1).map((code) => ({ trait, code }))
  })
}

/** Lines that nothing is said of: they count as unknown. */
export const unsaid = (station: StationDocument, draft: LabelDraft): readonly string[] =>
  labelLines(station)
    .filter(({ code }) => draft.declarations[code] === undefined)
    .map(({ code }) => code)

/** Whether the form asks for the statement beside the grain: wheat is in it, and no other. */
export const asksStatement = ({ declarations }: LabelDraft): boolean =>
  canBeStated({ declarations, traits: null })

/** Fish and shellfish that a stock or a gelatin comes from are in the food. */
export const traitsBySources = ({ sources }: LabelDraft): readonly Trait[] =>
  (['fish', 'shellfish'] as const).filter((animal) =>
    Object.values(sources).some((named) => named.includes(animal)),
  )

/** Traits as they are told; null while nobody has answered, whatever follows from allergens. */
const traitsFrom = (station: Allergens, draft: LabelDraft): Label['traits'] => {
  if (draft.traits === null) return null
  const has = new Set([
    ...draft.traits,
    ...impliedTraits(station, draft),
    ...traitsBySources(draft),
  ])
  return TRAITS.filter((trait) => has.has(trait))
}

/** The label as the service is told it. @param readOn civil date, as 2026-11-25 */
export const labelFrom = (station: Allergens, draft: LabelDraft, readOn: string): Label => ({
  declarations: { ...draft.declarations },
  traits: traitsFrom(station, draft),
  ...(sourcedTraits(draft).length === 0
    ? {}
    : {
        sources: Object.fromEntries(
          Object.entries(draft.sources).map(([trait, named]) => [trait, [...named]]),
        ),
      }),
  ...(draft.glutenStatement && asksStatement(draft) ? { glutenStatement: true as const } : {}),
  claims: { ...draft.claims },
  readOn,
  readBy: null,
})

/** What the label would say and can't mean, beside contradictions; null where nothing. */
export const problemOf = (station: Allergens, draft: LabelDraft): LabelProblem | null =>
  labelProblem(station, labelFrom(station, draft, ''))
