/** Cards as a table: a row for each line of a recipe or a component, with its amount as typed. */
import { type Column, writtenTable } from '#lib/carry/csv/table.ts'
import {
  type Draft,
  type Named,
  type Row,
  recordsIn,
  rowOf,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'

export const RECIPE_COLUMNS = [
  { name: 'what', most: 20 },
  { name: 'name', most: 60 },
  { name: 'made with', most: 60 },
  { name: 'amount', most: 60 },
  { name: 'yields', most: 60 },
] as const satisfies readonly Column<string>[]

export type RecipeColumn = (typeof RECIPE_COLUMNS)[number]['name']

export const RECIPES_NEED: readonly RecipeColumn[] = ['name', 'made with']

/** One line of a card; without an amount where nobody typed one. */
export interface CardLine {
  readonly of: string
  readonly typed: string | null
}

/** What a card lists: its lines, and what it is made of beside them. */
export const cardOf = (row: Row | undefined): readonly CardLine[] => {
  const lines = recordsIn(row ?? {}, 'lines').map((line) => ({
    of: textIn(line, 'of'),
    typed: textIn(line, 'typed'),
  }))
  const written = new Set(lines.map(({ of }) => of))
  const others = [...textsIn(row, 'ingredients'), ...textsIn(row, 'recipes')]
    .filter((id) => !written.has(id))
    .map((of) => ({ of, typed: null }))
  return [...lines, ...others]
}

const nameOf = (draft: Draft, id: string): string =>
  textIn(rowOf(draft, 'ingredient', id) ?? rowOf(draft, 'recipe', id), 'name')

/** Recipes that go into others stand before them, so that a table can be read from its top. */
const innerFirst = (draft: Draft): readonly Named[] => {
  const all = rowsOf(draft, 'recipe')
  const done = new Map<string, Named>()
  const add = (one: Named, above: readonly string[]): void => {
    if (done.has(one.id) || above.includes(one.id)) return
    for (const id of textsIn(one.row, 'recipes')) {
      const inner = all.find((other) => other.id === id)
      if (inner) add(inner, [...above, one.id])
    }
    done.set(one.id, one)
  }
  for (const one of all) add(one, [])
  return [...done.values()]
}

export const recipesCsv = (draft: Draft): string => {
  const rows = (what: 'recipe' | 'component', { row }: Named) => {
    const card = cardOf(row)
    const lines = card.length === 0 ? [{ of: '', typed: null }] : card
    return lines.map(({ of, typed }, index) => ({
      what,
      name: textIn(row, 'name'),
      'made with': of === '' ? '' : nameOf(draft, of),
      amount: typed ?? '',
      yields: index === 0 ? textIn(row, 'yields') : '',
    }))
  }
  return writtenTable(RECIPE_COLUMNS, [
    ...innerFirst(draft).flatMap((one) => rows('recipe', one)),
    ...rowsOf(draft, 'component').flatMap((one) => rows('component', one)),
  ])
}
