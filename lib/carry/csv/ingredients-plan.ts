/** What each row of a table of ingredients will do to a draft. A label that is here stays as it is. */
import { calledSo, nameKey } from '#lib/carry/csv/by-name.ts'
import {
  INGREDIENT_COLUMNS,
  type IngredientColumn,
  spelled,
  WORD_COLUMNS,
} from '#lib/carry/csv/ingredients-table.ts'
import type { Plan, PlannedRow, RowChange, RowNote, RowRefusal } from '#lib/carry/csv/planned.ts'
import type { Table, TableRow } from '#lib/carry/csv/table.ts'
import { applyStep } from '#lib/editor/apply-step.ts'
import { type Draft, keyOf, type Row, rowOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { newId } from '#lib/editor/ids.ts'
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

const notesOf = (said: Said, here: Label | undefined): readonly RowNote[] => {
  if (here !== undefined) {
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
const foundBy = (draft: Draft, { id, name }: Cells): Found | RowRefusal => {
  if (id !== '' && rowOf(draft, 'ingredient', id) !== undefined) return { id }
  const called = calledSo(draft, ['ingredient'], name)
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

/** What comes in of a label where the house has none yet. */
const labelChanges = ({ declarations }: Label): readonly RowChange[] =>
  WORD_COLUMNS.flatMap(([field, word]) => {
    const codes = Object.entries(declarations).flatMap(([code, one]) =>
      one === word ? [spelled(code)] : [],
    )
    return codes.length === 0 ? [] : [{ field, from: '', to: codes.join('; ') }]
  })

interface SoFar extends Plan {
  readonly draft: Draft
  /** The row that said each id or name first. */
  readonly rowOf: ReadonlyMap<string, number>
}

const refused = (
  so: SoFar,
  { row, cells }: TableRow<IngredientColumn>,
  why: RowRefusal,
): SoFar => ({
  ...so,
  rows: [...so.rows, { row, name: cells.name, does: 'refused', changes: [], notes: [], why }],
})

const withRow = (
  so: SoFar,
  labels: Readonly<Record<string, Label | undefined>>,
  known: ReadonlySet<string>,
  read: TableRow<IngredientColumn>,
): SoFar => {
  const { row, cells, problem } = read
  if (problem) return refused(so, read, problem)
  if (cells.name === '') return refused(so, read, { code: 'nothing-said', column: 'name' })
  const said = saidBy(cells, known)
  if (isRefusal(said)) return refused(so, read, said)
  const found = foundBy(so.draft, cells)
  if (isRefusal(found)) return refused(so, read, found)
  const keys = [`name ${nameKey(cells.name)}`, ...(found.id === null ? [] : [`id ${found.id}`])]
  const before = keys.map((key) => so.rowOf.get(key)).find((one) => one !== undefined)
  if (before !== undefined)
    return refused(so, read, { code: 'said-before', column: 'name', row: before })
  const isTaken = calledSo(so.draft, ['ingredient'], cells.name).some(({ id }) => id !== found.id)
  if (isTaken) return refused(so, read, { code: 'name-taken', column: 'name', value: cells.name })
  const id = found.id ?? newId(so.draft, 'ingredient', cells.name)
  const here = found.id === null ? undefined : labels[id]
  const label = here === undefined && said.size > 0 ? unreadLabel(said) : null
  const fields = changesIn(so.draft.rows[keyOf('ingredient', id)], cells)
  const put: readonly Step[] =
    fields.length === 0
      ? []
      : [
          {
            do: 'put',
            entity: 'ingredient',
            id,
            fields: Object.fromEntries(fields.map(({ field, to }) => [field, to])),
          },
        ]
  const draft = put.reduce<Draft | null>((sofar, step) => {
    const stepped = sofar && applyStep(sofar, step)
    return stepped?.ok ? stepped.draft : null
  }, so.draft)
  if (draft === null) return refused(so, read, { code: 'too-large' })
  const changes = [...fields, ...(label === null ? [] : labelChanges(label))]
  const planned: PlannedRow = {
    row,
    name: cells.name,
    does: found.id === null ? 'new' : changes.length > 0 ? 'changes' : 'same',
    changes,
    notes: notesOf(said, here),
    why: null,
  }
  return {
    draft,
    rowOf: new Map([...so.rowOf, ...keys.map((key) => [key, row] as const)]),
    rows: [...so.rows, planned],
    steps: [...so.steps, ...put],
    labels: label === null ? so.labels : { ...so.labels, [id]: label },
  }
}

/** @param labels the house's, by ingredient */
export const ingredientsPlan = (
  draft: Draft,
  labels: Readonly<Record<string, Label | undefined>>,
  table: Table<IngredientColumn>,
): Plan => {
  const known = codesOf(draft)
  const start: SoFar = { draft, rowOf: new Map(), rows: [], steps: [], labels: {} }
  const {
    rows,
    steps,
    labels: own,
  } = table.rows.reduce((so, row) => withRow(so, labels, known, row), start)
  return { rows, steps, labels: own }
}

export const INGREDIENTS_NEED: readonly IngredientColumn[] = [INGREDIENT_COLUMNS[0].name]
