/** What is wrong with a label as it is answered, each at its field; and what it still lacks. */

import {
  answerOf,
  type LabelForm,
  MOST_LETTERS,
  writtenLabel,
} from '#lib/editor/label-form/form.ts'
import { openTiles, type Tile } from '#lib/editor/label-form/tiles.ts'
import { impliedTraits, unansweredSources } from '#lib/rooms/care/views/label-draft.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, kindsOf } from '#lib/station/codes/askable.ts'
import { ALLERGENS_OF, type Sourced, TRAITS, type Trait } from '#lib/station/codes/diets.ts'
import { isNamedByLaw } from '#lib/station/codes/named-by-law.ts'
import { type LabelProblem, labelProblem } from '#lib/station/label-problem.ts'

/** The part of the form where a problem is told. */
export type At = 'words' | 'law' | 'allergens' | 'free' | 'diets' | 'gluten'

export type FormProblem =
  | { readonly at: 'words'; readonly why: 'too-long'; readonly most: number }
  /** Something isn't listed, and there is no list. */
  | { readonly at: 'words'; readonly why: 'no-list' }
  /** Nobody said that the whole list was read. */
  | { readonly at: 'words'; readonly why: 'not-read-whole' }
  | { readonly at: 'law'; readonly why: 'no-law' }
  /** Its law needn't name it, so that a list without it says nothing. */
  | {
      readonly at: 'allergens'
      readonly why: 'beyond-law'
      readonly code: string
      readonly law: AllergenSetId
    }
  /** A group that isn't there, and a kind of it that is. */
  | {
      readonly at: 'allergens'
      readonly why: 'kind-contained'
      readonly code: string
      readonly kind: string
    }
  /** A trait that brings an allergen, which isn't there. */
  | {
      readonly at: 'diets'
      readonly why: 'trait-denied'
      readonly code: string
      readonly trait: Trait
    }
  | { readonly at: 'diets'; readonly why: 'source-unanswered'; readonly trait: Sourced }
  /** What "declared free" stands on. */
  | { readonly at: 'free'; readonly why: 'free-by'; readonly codes: readonly string[] }
  | { readonly at: 'gluten' | 'diets'; readonly why: 'label'; readonly problem: LabelProblem }

const DENIED = ['free', 'not-listed']

const codesWith = (form: LabelForm, word: string): readonly string[] =>
  Object.entries(form.draft.declarations).flatMap(([code, said]) => (said === word ? [code] : []))

const ofWords = (form: LabelForm): readonly FormProblem[] => {
  const isNotListed = codesWith(form, 'not-listed').length > 0
  const hasList = form.list.trim() !== ''
  return [
    ...(form.list.trim().length > MOST_LETTERS
      ? [{ at: 'words', why: 'too-long', most: MOST_LETTERS } as const]
      : []),
    ...(isNotListed && !form.isPlain && !hasList ? [{ at: 'words', why: 'no-list' } as const] : []),
    ...(isNotListed && !form.isPlain && hasList && !form.hasReadAll
      ? [{ at: 'words', why: 'not-read-whole' } as const]
      : []),
    ...(isNotListed && form.law === null ? [{ at: 'law', why: 'no-law' } as const] : []),
  ]
}

const ofAllergens = (
  allergens: Allergens,
  form: LabelForm,
  tiles: readonly Tile[],
): readonly FormProblem[] => {
  const { law } = form
  const beyond =
    law === null
      ? []
      : codesWith(form, 'not-listed')
          .filter((code) => !isNamedByLaw(allergens, law, code))
          .map((code) => ({ at: 'allergens', why: 'beyond-law', code, law }) as const)
  const kinds = tiles.flatMap(({ code, answer, contained }) => {
    const [kind] = contained
    return kind !== undefined && answer !== null && answer !== 'contains'
      ? [{ at: 'allergens', why: 'kind-contained', code, kind } as const]
      : []
  })
  return [...beyond, ...kinds]
}

/** Clams and crabs are one trait, so that either alone may be denied. */
const ofTraits = (allergens: Allergens, form: LabelForm): readonly FormProblem[] => {
  const has = new Set([...(form.draft.traits ?? []), ...impliedTraits(allergens, form.draft)])
  const isDenied = (code: string) =>
    DENIED.includes(answerOf(form, code) ?? '') &&
    !kindsOf(allergens, code).some((kind) => answerOf(form, kind) === 'contains')
  return TRAITS.filter((trait) => has.has(trait)).flatMap((trait) => {
    const linked = ALLERGENS_OF[trait] ?? []
    const [code] = linked
    return code !== undefined && linked.every(isDenied)
      ? [{ at: 'diets', why: 'trait-denied', code, trait } as const]
      : []
  })
}

/** Codes that are said to be free and that no printed words declare. */
const unproved = (form: LabelForm, tiles: readonly Tile[]): readonly string[] => {
  const printed = tiles.filter(({ proposes }) => proposes === 'free').map(({ code }) => code)
  return codesWith(form, 'free').filter((code) => !printed.includes(code))
}

const ofLabel = (allergens: Allergens, form: LabelForm): readonly FormProblem[] => {
  const problem = labelProblem(allergens, writtenLabel(allergens, form, ''))
  if (problem === null) return []
  const isOfSources = 'trait' in problem
  return [{ at: isOfSources ? 'diets' : 'gluten', why: 'label', problem }]
}

/** All that keeps the label from being written down, but for what isn't answered yet. */
export const formProblems = (
  allergens: Allergens,
  form: LabelForm,
  tiles: readonly Tile[],
): readonly FormProblem[] => {
  const codes = form.freeBy === null ? unproved(form, tiles) : []
  return [
    ...ofWords(form),
    ...ofAllergens(allergens, form, tiles),
    ...ofLabel(allergens, form),
    ...ofTraits(allergens, form),
    ...unansweredSources(form.draft).map(
      (trait) => ({ at: 'diets', why: 'source-unanswered', trait }) as const,
    ),
    ...(codes.length > 0 ? [{ at: 'free', why: 'free-by', codes } as const] : []),
  ]
}

/** Words that say otherwise than the answer: to be looked at again, and nothing is kept from it. */
export const againstWords = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter(
    ({ answer, proposes }) =>
      answer !== null &&
      DENIED.includes(answer) &&
      (proposes === 'contains' || proposes === 'may-contain'),
  )

/** How many tiles have no answer yet. */
export const stillOpen = (tiles: readonly Tile[]): number => openTiles(tiles).length
