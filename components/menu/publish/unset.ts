import { type Draft, type Entity, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'
import type { MissingFor, Problem } from '#lib/editor/problem.ts'

/** Ids of pans and components of which something is wrong, or missing for a first order. */
export const unsetIn = (problems: readonly Problem[], missing: MissingFor): ReadonlySet<string> =>
  new Set(
    [...problems, ...missing.firstOrder].flatMap(({ entity, id }) =>
      entity === 'pan' || entity === 'component' ? [id] : [],
    ),
  )

/** The pan on whose panel something of a row is said: the first of its component's; null where none is. */
export const panOf = (draft: Draft, entity: Entity, id: string): string | null => {
  const pans = rowsOf(draft, 'pan')
  const ofComponent = (component: string) =>
    pans.find(({ row }) => textIn(row, 'component') === component)?.id ?? null
  const using = (field: 'ingredients' | 'recipes') =>
    rowsOf(draft, 'component').find(({ row }) => {
      const list = row[field]
      return Array.isArray(list) && list.includes(id)
    })?.id
  switch (entity) {
    case 'pan':
      return rowOf(draft, 'pan', id) ? id : null
    case 'component':
      return ofComponent(id)
    case 'backup':
      return ofComponent(textIn(rowOf(draft, 'backup', id), 'component'))
    case 'ingredient':
      return ofComponent(using('ingredients') ?? '')
    case 'recipe':
      return ofComponent(using('recipes') ?? '')
    default:
      return null
  }
}
