/** What each row of a table of ingredients will do to a draft. A label that is here stays as it is. */

import {
  INGREDIENT_COLUMNS,
  type IngredientColumn,
  spelled,
  WORD_COLUMNS,
} from '#lib/carry/csv/ingredients-table.ts'
import type { Plan, PlannedRow, RowChange, RowNote, RowRefusal } from '#lib/carry/csv/planned.ts'
import type { Table, TableRow } from '#lib/carry/csv/table.ts'
import { type Names, nameKey, namesIn } from '#lib/carry/names/by-name.ts'
import { freeId } from '#lib/carry/names/free-id.ts'
import { MOST_ROWS } from '#lib/editor/apply-step.ts'
import { type Draft, type Row, rowOf, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'

type Cells = TableRow<IngredientColumn>['cells']

const CALLED = ['name', 'maker', 'pack'] as const

/** Codes that a station of this draft can declare. */
const codesOf = (draft: Draft): ReadonlySet<string> => {
  const house = draft.rows.house
  const set = ALLERGEN_SET_IDS.find((one) => one === textIn(house, 'allergenSet'))
  return declarable({
    allergenSet: set ?? 'us-9',
    ownAllergens: textsIn(house, 'ownAllergens'),
  })
}

const listed = (cell: string): readonly string[] =>
  cell
    .split(/[;,]/)
    .map((one) => nameKey(one).replace(/[\s_]+/g, '-'))
    .filter((one) => one !== '')

type Said = ReadonlyMap<string, Declaration>

/** What the columns say of each allergen, or why they can't be taken. */
const saidBy = (cells: Cells, known: ReadonlySet<string>): Said | RowRefusal => {
  const said = new Map<string, Declaration>()
  for (const [column, word] of WORD_COLUMNS)
    for (const code of listed(cells[column])) {
      if (!known.has(code)) return { code: 'unknown-allergen', column, value: spelled(code) }
      const before = said.get(code)
      if (before !== undefined && before !== word)
        return { code: 'contradicts', column, value: spelled(code) }
      said.set(code, word)
    }
  return said
}

const isRefusal = (one: Said | Found | RowRefusal): one is RowRefusal => 'code' in one

/** Nobody here has read it: what it contains counts, the rest isn't known. */
const unreadLabel = (said: Said): Label => ({
  ...UNREAD_LABEL,
  declarations: Object.fromEntries(
    [...said].map(([code, word]) => [
      code,
      word === 'contains' || word === 'may-contain' ? word : 'unknown',
    ]),
  ),
})

const isFreeing = (word: Declaration): boolean => word === 'free' || word === 'not-listed'

const notesOf = (said: Said, here: Label | null): readonly RowNote[] => {
  if (here !== null) {
    const others = [...said].filter(
      ([code, word]) => !isFreeing(word) && here.declarations[code] !== word,
    )
    return others.length === 0
      ? []
      : [{ code: 'label-stays', allergens: others.map(([code]) => spelled(code)) }]
  }
  const answers = [...said.values()].filter(isFreeing).length
  return answers === 0 ? [] : [{ code: 'arrives-unread', answers }]
}

interface Found {
  /** null: there is none yet. */
  readonly id: string | null
}

/** By its id where the table has one that is here, or by its name. */
const foundBy = (draft: Draft, names: Names, { id, name }: Cells): Found | RowRefusal => {
  if (id !== '' && rowOf(draft, 'ingredient', id) !== undefined) return { id }
  const called = names.find(name, ['ingredient'])
  if (called.length > 1) return { code: 'several-here', column: 'name', value: name }
  return { id: called[0]?.id ?? null }
}

const changesIn = (row: Row | undefined, cells: Cells): readonly RowChange[] =>
  CALLED.flatMap((field) => {
    const from = textIn(row, field)
    const to = cells[field]
    // An empty cell says nothing, and takes nothing away.
    return to === '' || to === from ? [] : [{ field, from, to }]
  })

/** Another maker or pack, which a label that was read would count for. */
const otherPack = (here: Label | null, changes: readonly RowChange[]): RowChange | null =>
  here === null || here.readOn === null
    ? null
    : (changes.find(
        ({ field, from, to }) => field !== 'name' && from !== '' && nameKey(from) !== nameKey(to),
      ) ?? null)

/** What comes in of a label where the house has none yet. */
const labelChanges = ({ declarations }: Label): readonly RowChange[] =>
  WORD_COLUMNS.flatMap(([field, word]) => {
    const codes = Object.entries(declarations).flatMap(([code, one]) =>
      one === word ? [spelled(code)] : [],
    )
    return codes.length === 0 ? [] : [{ field, from: '', to: codes.join('; ') }]
  })

const putStep = (id: string, changes: readonly RowChange[]): readonly Step[] =>
  changes.length === 0
    ? []
    : [
        {
          do: 'put',
          entity: 'ingredient',
          id,
          fields: Object.fromEntries(changes.map(({ field, to }) => [field, to])),
        },
      ]

/** @param label the house's newest of an ingredient, listed or not; null where it has none */
export const ingredientsPlan = (
  draft: Draft,
  label: (ingredient: string) => Label | null,
  table: Table<IngredientColumn>,
): Plan => {
  const known = codesOf(draft)
  const names = namesIn(draft, ['ingredient'])
  const taken = new Set(
    (['ingredient', 'recipe'] as const).flatMap((kind) => rowsOf(draft, kind).map(({ id }) => id)),
  )
  // Of an ingredient that was taken out the house still has the label: that of no new one.
  const isTaken = (id: string): boolean => taken.has(id) || label(id) !== null
  let room = MOST_ROWS - Object.keys(draft.rows).length
  /** The row that said each id or name first. */
  const saidIn = new Map<string, number>()
  const steps: Step[] = []
  const own: Record<string, Label> = {}

  const whyNot = (cells: Cells, found: Found, keys: readonly string[]): RowRefusal | null => {
    const before = keys.map((key) => saidIn.get(key)).find((one) => one !== undefined)
    if (before !== undefined) return { code: 'said-before', column: 'name', row: before }
    const others = names.find(cells.name, ['ingredient']).filter(({ id }) => id !== found.id)
    if (others.length > 0) return { code: 'name-taken', column: 'name', value: cells.name }
    return found.id === null && room < 1 ? { code: 'too-large' } : null
  }

  const plan = ({ row, cells, problem }: TableRow<IngredientColumn>): PlannedRow => {
    const { name } = cells
    const refused = (why: RowRefusal): PlannedRow => ({
      ...{ row, name, does: 'refused', changes: [], notes: [] },
      why,
    })
    if (problem) return refused(problem)
    if (name === '') return refused({ code: 'nothing-said', column: 'name' })
    const said = saidBy(cells, known)
    if (isRefusal(said)) return refused(said)
    const found = foundBy(draft, names, cells)
    if (isRefusal(found)) return refused(found)
    const keys = [`name ${nameKey(name)}`, ...(found.id === null ? [] : [`id ${found.id}`])]
    const not = whyNot(cells, found, keys)
    if (not) return refused(not)

    const isNew = found.id === null
    const id = found.id ?? freeId('ingredient', name, isTaken)
    const here = isNew ? null : label(id)
    const brought = here === null && said.size > 0 ? unreadLabel(said) : null
    const fields = changesIn(rowOf(draft, 'ingredient', id), cells)
    const other = otherPack(here, fields)
    if (other) return refused({ code: 'read-of-another', column: other.field, value: other.to })
    for (const key of keys) saidIn.set(key, row)
    names.call({ kind: 'ingredient', id }, name)
    taken.add(id)
    if (isNew) room -= 1
    if (brought !== null) own[id] = brought
    steps.push(...putStep(id, fields))
    const changes = [...fields, ...(brought === null ? [] : labelChanges(brought))]
    const does = isNew ? 'new' : changes.length > 0 ? 'changes' : 'same'
    return { row, name, does, changes, notes: notesOf(said, here), why: null }
  }

  return { rows: table.rows.map(plan), steps, labels: own }
}

export const INGREDIENTS_NEED: readonly IngredientColumn[] = [INGREDIENT_COLUMNS[0].name]
