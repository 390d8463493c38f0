/** Tables of a station's food: out of its draft, looked at, and into it row by row. */
import { type ChosenEncoding, textOf } from '#lib/carry/csv/bytes-to-text.ts'
import { INGREDIENTS_NEED, ingredientsPlan } from '#lib/carry/csv/ingredients-plan.ts'
import { INGREDIENT_COLUMNS, ingredientsCsv } from '#lib/carry/csv/ingredients-table.ts'
import type { CsvProblem, Plan, ReadAs, TableOf } from '#lib/carry/csv/planned.ts'
import { recipesPlan } from '#lib/carry/csv/recipes-plan.ts'
import { RECIPE_COLUMNS, RECIPES_NEED, recipesCsv } from '#lib/carry/csv/recipes-table.ts'
import { readTable, type Table, type TableRead } from '#lib/carry/csv/table.ts'
import type { CarryAnswer, CsvLook, CsvTaken } from '#lib/carry/http.ts'
import type { Draft } from '#lib/editor/draft.ts'
import type { Label } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { draftIn } from '#server/carry/house-draft.ts'
import type { CarryPorts } from '#server/carry/ports.ts'

export interface TableFile {
  readonly station: string
  readonly what: TableOf
  readonly bytes: Uint8Array
  /** What somebody says the bytes are; null: what they say themselves. */
  readonly encoding: ChosenEncoding | null
}

export interface Tables {
  file(station: string, what: TableOf): CarryAnswer<{ readonly text: string }>
  look(file: TableFile): CarryAnswer<CsvLook>
  take(file: TableFile, saw: number): CarryAnswer<CsvTaken>
}

interface Planned {
  readonly plan: Plan
  readonly readAs: ReadAs
}

const planOf = (draft: Draft, label: CarryPorts['label'], { what, bytes, encoding }: TableFile) => {
  const text = textOf(bytes, encoding)
  if ('why' in text) return { why: text.why }
  const planned = <Name extends string>(
    read: TableRead<Name>,
    plan: (table: Table<Name>) => Plan,
  ): Planned | CsvProblem => {
    if ('problem' in read) return read.problem
    const { delimiter, ignored } = read.table
    return { plan: plan(read.table), readAs: { encoding: text.encoding, delimiter, ignored } }
  }
  return what === 'ingredients'
    ? planned(readTable(text.text, INGREDIENT_COLUMNS, INGREDIENTS_NEED), (table) =>
        ingredientsPlan(draft, label, table),
      )
    : planned(readTable(text.text, RECIPE_COLUMNS, RECIPES_NEED), (table) =>
        recipesPlan(draft, table),
      )
}

/** Labels of ingredients as a document brings them. */
const brought = (labels: Plan['labels']): Pick<StationDocument, 'ingredients'> => ({
  ingredients: Object.entries(labels).map(([id, label]: [string, Label]) => ({
    id,
    name: id,
    ...label,
  })),
})

export const createTables = (ports: CarryPorts): Tables => ({
  file: (station, what) => {
    const seen = draftIn(ports, station)
    if (seen === null) return { code: 'no-such-station' }
    const text =
      what === 'ingredients' ? ingredientsCsv(seen.draft, ports.label) : recipesCsv(seen.draft)
    return { code: 'done', text }
  },
  look: (file) => {
    const seen = draftIn(ports, file.station)
    if (seen === null) return { code: 'no-such-station' }
    const planned = planOf(seen.draft, ports.label, file)
    if ('why' in planned) return { code: 'wrong-file', problem: planned }
    const { plan, readAs } = planned
    return { code: 'done', saw: seen.saw, readAs, rows: plan.rows }
  },
  take: (file, saw) => {
    const seen = draftIn(ports, file.station)
    if (seen === null) return { code: 'no-such-station' }
    // What was looked at is what is taken: on another draft the rows may do something else.
    if (seen.saw !== saw) return { code: 'stale' }
    const planned = planOf(seen.draft, ports.label, file)
    if ('why' in planned) return { code: 'wrong-file', problem: planned }
    const { rows, steps, labels } = planned.plan
    const answer = ports.menu.save({ station: file.station, saw, steps })
    if (answer.code === 'stale') return { code: 'stale' }
    if (answer.code !== 'done') return { code: 'failed' }
    ports.keepLabels(brought(labels))
    const refused = rows.filter(({ does }) => does === 'refused').length
    const same = rows.filter(({ does }) => does === 'same').length
    return { code: 'done', saw: answer.saw, taken: rows.length - refused - same, refused }
  },
})
