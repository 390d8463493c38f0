/** The ingredients of a draft with what the house knows of their labels. */
import { type Draft, type Named, recordsIn, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import type { HouseLabel, LabelledIngredient, LabelRefusal } from '#lib/editor/label-http.ts'
import { usersOf } from '#lib/editor/uses.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, declarable } from '#lib/station/codes/askable.ts'
import type { Label } from '#lib/station/label.ts'
import { labelProblem } from '#lib/station/label-problem.ts'
import { wrongLabels } from '#lib/station/wrong-labels.ts'

/** What decides which allergens are asked; of a draft that doesn't say, the US nine. */
export const allergensIn = ({ rows: { house } }: Draft): Allergens => {
  const said = textIn(house, 'allergenSet')
  const allergenSet = ALLERGEN_SET_IDS.find((one) => one === said) ?? 'us-9'
  return { allergenSet, ownAllergens: textsIn(house, 'ownAllergens') }
}

/** Components that an ingredient or a recipe goes into, also through recipes of recipes. */
const componentsOf = (
  draft: Draft,
  kind: 'ingredient' | 'recipe',
  id: string,
  seen: ReadonlySet<string> = new Set(),
): readonly string[] =>
  usersOf(draft, kind, id).flatMap((user) => {
    if (user.entity === 'component') return [user.id]
    return seen.has(user.id)
      ? []
      : componentsOf(draft, 'recipe', user.id, new Set([...seen, user.id]))
  })

const textOrNull = (row: Named['row'], field: string): string | null => textIn(row, field) || null

/** @param alsoAt names of other stations that have an ingredient */
export const labelledIngredients = (
  draft: Draft,
  labelOf: (ingredient: string, product: string | null) => HouseLabel,
  alsoAt: (ingredient: string) => readonly string[],
): readonly LabelledIngredient[] => {
  const names = new Map(rowsOf(draft, 'component').map(({ id, row }) => [id, textIn(row, 'name')]))
  return rowsOf(draft, 'ingredient').map(({ id, row }) => ({
    ingredient: id,
    name: textIn(row, 'name'),
    maker: textOrNull(row, 'maker'),
    pack: textOrNull(row, 'pack'),
    label: labelOf(id, null),
    products: recordsIn(row, 'products').map((one) => {
      const product = textIn(one, 'id')
      return {
        product,
        maker: textOrNull(one, 'maker'),
        pack: textOrNull(one, 'pack'),
        label: labelOf(id, product),
      }
    }),
    goesInto: [...new Set(componentsOf(draft, 'ingredient', id))].map(
      (one) => names.get(one) || one,
    ),
    alsoAt: alsoAt(id),
  }))
}

/** Of what a document's check says against a label, how it is told at the label itself. */
const toldAs = (code: string, [need = '', other = '']: readonly string[]): LabelRefusal | null => {
  switch (code) {
    case 'kind-of-a-free-group':
    case 'kind-of-a-group-not-listed':
      return { code: 'free-and-contains', need, kind: other }
    case 'trait-missing':
    case 'trait-denied':
      return { code: 'traits-contradict', need, trait: other }
    default:
      return null
  }
}

/** Why a label that was read isn't taken; null where nothing speaks against it. */
export const labelRefused = (allergens: Allergens, label: Label): LabelRefusal | null => {
  const known = declarable(allergens)
  const declared = Object.entries(label.declarations)
  const unknown = declared.find(([code]) => !known.has(code))
  if (unknown) return { code: 'unknown-need', need: unknown[0] }
  const notListed = declared.find(([, said]) => said === 'not-listed')
  if (notListed && label.list === undefined && label.plain !== true)
    return { code: 'not-listed-unread', need: notListed[0] }
  const problem = labelProblem(allergens, label)
  if (problem) return { code: 'label-problem', problem }
  const wrong = wrongLabels({ ...allergens, ingredients: [{ id: 'one', name: 'one', ...label }] })
  return wrong.flatMap(({ code, named = [] }) => toldAs(code, named) ?? [])[0] ?? null
}
