/** Ingredients as a table: what they are called, and what their labels say. */
import { type Column, writtenTable } from '#lib/carry/csv/table.ts'
import { type Draft, textIn } from '#lib/editor/draft.ts'
import { ingredientsOf } from '#lib/editor/raw-document.ts'
import type { Label } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'

export const INGREDIENT_COLUMNS = [
  { name: 'name', most: 60 },
  { name: 'maker', most: 60 },
  { name: 'pack', most: 60 },
  { name: 'contains', most: 1_000 },
  { name: 'may contain', most: 1_000 },
  { name: 'declared free', most: 1_000 },
  { name: 'not listed', most: 1_000 },
  { name: 'label read', most: 40 },
  { name: 'id', most: 40 },
] as const satisfies readonly Column<string>[]

export type IngredientColumn = (typeof INGREDIENT_COLUMNS)[number]['name']

/** Which answer stands in which column; *not said* stands in none. */
export const WORD_COLUMNS = [
  ['contains', 'contains'],
  ['may contain', 'may-contain'],
  ['declared free', 'free'],
  ['not listed', 'not-listed'],
] as const satisfies readonly (readonly [IngredientColumn, Declaration])[]

/** "tree-nuts" as a table has it. */
export const spelled = (code: string): string => code.replaceAll('-', ' ')

const codesSaid = (label: Label | null, word: Declaration): string =>
  Object.entries(label?.declarations ?? {})
    .filter(([, said]) => said === word)
    .map(([code]) => spelled(code))
    .join('; ')

/** @param labelOf the house's newest of an ingredient; null where it has none */
export const ingredientsCsv = (
  draft: Draft,
  labelOf: (ingredient: string) => Label | null,
): string =>
  writtenTable(
    INGREDIENT_COLUMNS,
    ingredientsOf(draft).map(({ id, row }) => {
      const label = labelOf(id)
      return {
        name: textIn(row, 'name'),
        maker: textIn(row, 'maker'),
        pack: textIn(row, 'pack'),
        contains: codesSaid(label, 'contains'),
        'may contain': codesSaid(label, 'may-contain'),
        'declared free': codesSaid(label, 'free'),
        'not listed': codesSaid(label, 'not-listed'),
        'label read': label?.readOn ?? '',
        id,
      }
    }),
  )
