import { type Draft, isRecord, rowOf, textIn, textsIn } from '#lib/editor/draft.ts'
import type { Labels } from '#lib/editor/http.ts'

type Label = Labels[string] | undefined

/** What a label names as contained and as warned of, by code. */
export interface Named {
  readonly contains: readonly string[]
  readonly mayContain: readonly string[]
}

const namedAs = (label: Label, said: string): readonly string[] =>
  isRecord(label?.declarations)
    ? Object.entries(label.declarations).flatMap(([code, one]) => (one === said ? [code] : []))
    : []

export const namedOn = (label: Label): Named => ({
  contains: namedAs(label, 'contains'),
  mayContain: namedAs(label, 'may-contain'),
})

/** Civil date on which a label was read; null: nobody has. */
export const readOn = (label: Label): string | null =>
  typeof label?.readOn === 'string' ? label.readOn : null

/** Every ingredient of what is made, through its recipes, each once. */
export const ingredientsOf = (
  draft: Draft,
  entity: 'component' | 'recipe',
  id: string,
  seen: readonly string[] = [],
): readonly string[] => {
  const row = rowOf(draft, entity, id)
  const inner = textsIn(row, 'recipes')
    .filter((recipe) => !seen.includes(recipe))
    .flatMap((recipe) => ingredientsOf(draft, 'recipe', recipe, [...seen, recipe]))
  return [...new Set([...textsIn(row, 'ingredients'), ...inner])]
}

export interface AsItStands extends Named {
  /** Names of ingredients whose labels nobody has read. */
  readonly unread: readonly string[]
}

/** What is declared of all that goes into something, and what nobody has read. */
export const asItStands = (
  draft: Draft,
  labels: Labels,
  entity: 'component' | 'recipe',
  id: string,
): AsItStands => {
  const all = ingredientsOf(draft, entity, id)
  const named = all.map((one) => namedOn(labels[one]))
  const contains = [...new Set(named.flatMap((one) => one.contains))]
  return {
    contains,
    mayContain: [...new Set(named.flatMap((one) => one.mayContain))].filter(
      (code) => !contains.includes(code),
    ),
    unread: all
      .filter((one) => readOn(labels[one]) === null)
      .map((one) => textIn(rowOf(draft, 'ingredient', one), 'name') || one),
  }
}
