/** A table as text, RFC 4180: its columns by their names, its rows numbered as a spreadsheet does. */
import Papa from 'papaparse'
import { defused, RUNNABLE, withoutApostrophe } from '#lib/carry/csv/defused.ts'

/** Of a table that is read. */
export const MOST_TABLE_BYTES = 2 * 1_048_576
export const MOST_TABLE_ROWS = 1_000

export interface Column<Name extends string> {
  readonly name: Name
  /** Letters of a cell. */
  readonly most: number
}

export type CellProblem<Name extends string> =
  | {
      readonly code: 'too-long'
      readonly column: Name
      readonly most: number
      readonly letters: number
    }
  /** A spreadsheet could run it, or has: what was typed there may be gone. */
  | { readonly code: 'formula'; readonly column: Name }
  /** Signs that no keyboard types, such as a bell. */
  | { readonly code: 'control-sign'; readonly column: Name }
  /** Behind the last column that has a name. */
  | { readonly code: 'too-many-cells' }

export interface TableRow<Name extends string> {
  /** The header is row 1. */
  readonly row: number
  /** Trimmed, empty where it has none. */
  readonly cells: Readonly<Record<Name, string>>
  readonly problem: CellProblem<Name> | null
}

export type TableProblem =
  | { readonly why: 'no-column'; readonly column: string }
  | { readonly why: 'column-twice'; readonly column: string }
  /** A quotation mark is opened and never closed, or stands in the middle of a cell. */
  | { readonly why: 'quotes'; readonly row: number }
  | { readonly why: 'no-rows' }
  | { readonly why: 'too-many-rows'; readonly most: number }

export interface Table<Name extends string> {
  readonly rows: readonly TableRow<Name>[]
  /** Columns that nobody knows: nothing is taken from them. */
  readonly ignored: readonly string[]
  readonly delimiter: Delimiter
}

export type TableRead<Name extends string> =
  | { readonly table: Table<Name> }
  | { readonly problem: TableProblem }

const DELIMITERS = [',', ';', '\t'] as const
export type Delimiter = (typeof DELIMITERS)[number]

const parsed = (text: string, delimiter: Delimiter) =>
  Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false })

const headed = (cell: string): string =>
  cell
    .normalize('NFC')
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')

/** The one by which most columns of the first row are known; a comma where none is better. */
const delimiterOf = (text: string, names: readonly string[]): Delimiter => {
  const known = DELIMITERS.map((delimiter) => {
    const [header = []] = Papa.parse<string[]>(text, { delimiter, preview: 1 }).data
    return header.filter((cell) => names.includes(headed(cell))).length
  })
  return DELIMITERS[known.indexOf(Math.max(...known))] ?? ','
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/

const problemIn = <Name extends string>(
  { name, most }: Column<Name>,
  cell: string,
): CellProblem<Name> | null => {
  const trimmed = cell.trim()
  // What begins with a tab or a line end does so before it is trimmed only.
  if (trimmed !== '' && (RUNNABLE.test(cell) || RUNNABLE.test(trimmed)))
    return { code: 'formula', column: name }
  if (CONTROL.test(cell)) return { code: 'control-sign', column: name }
  const letters = withoutApostrophe(trimmed).length
  return letters > most ? { code: 'too-long', column: name, most, letters } : null
}

/**
 * @param columns in the order in which they are looked through for problems
 * @param needed those that have to be there
 */
export const readTable = <Name extends string>(
  text: string,
  columns: readonly Column<Name>[],
  needed: readonly Name[],
): TableRead<Name> => {
  const names: readonly string[] = columns.map(({ name }) => name)
  const delimiter = delimiterOf(text, names)
  const { data, errors } = parsed(text, delimiter)
  const [header = [], ...body] = data
  const heads = header.map(headed)
  const twice = heads.find((head, place) => names.includes(head) && heads.indexOf(head) !== place)
  if (twice !== undefined) return { problem: { why: 'column-twice', column: twice } }
  const missing = needed.find((name) => !heads.includes(name))
  if (missing !== undefined) return { problem: { why: 'no-column', column: missing } }
  const [error] = errors.filter(({ type }) => type === 'Quotes')
  if (error) return { problem: { why: 'quotes', row: (error.row ?? 0) + 1 } }
  const filled = body
    .map((cells, index) => ({ row: index + 2, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''))
  if (filled.length === 0) return { problem: { why: 'no-rows' } }
  if (filled.length > MOST_TABLE_ROWS)
    return { problem: { why: 'too-many-rows', most: MOST_TABLE_ROWS } }
  const rows = filled.map(({ row, cells }): TableRow<Name> => {
    const cellOf = (name: string): string => cells[heads.indexOf(name)] ?? ''
    const isOver = cells.slice(heads.length).some((cell) => cell.trim() !== '')
    const wrong = columns.flatMap((column) => problemIn(column, cellOf(column.name)) ?? [])[0]
    const said = columns.map(({ name }) => [name, withoutApostrophe(cellOf(name).trim())])
    return {
      row,
      cells: Object.fromEntries(said) as Record<Name, string>,
      problem: isOver ? { code: 'too-many-cells' } : (wrong ?? null),
    }
  })
  const ignored = header.filter((cell, place) => {
    const head = heads[place] ?? ''
    return head !== '' && !names.includes(head) && cell.trim() !== ''
  })
  return { table: { rows, ignored, delimiter } }
}

/** So that a spreadsheet takes it for UTF-8. */
const MARK = '\ufeff'

/** The text of a table: commas, CR LF, a byte order mark, and nothing in it that could be run. */
export const writtenTable = <Name extends string>(
  columns: readonly Column<Name>[],
  rows: readonly Readonly<Record<Name, string>>[],
): string => {
  const fields = columns.map(({ name }) => name)
  const data = rows.map((row) => fields.map((name) => defused(row[name].trim())))
  return `${MARK}${Papa.unparse({ fields, data }, { newline: '\r\n' })}\r\n`
}
