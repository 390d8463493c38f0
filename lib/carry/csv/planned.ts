/** What each row of a table will do, before anything is done. */

import type { BytesProblem, Encoding } from '#lib/carry/csv/bytes-to-text.ts'
import type { CellProblem, Delimiter, TableProblem } from '#lib/carry/csv/table.ts'
import type { Step } from '#lib/editor/step.ts'
import type { Label } from '#lib/station/label.ts'

export type RowRefusal =
  | CellProblem<string>
  | { readonly code: 'nothing-said'; readonly column: string }
  /** An earlier row is called the same. */
  | { readonly code: 'said-before'; readonly column: string; readonly row: number }
  /** Several here are called so: nobody knows which is meant. */
  | { readonly code: 'several-here'; readonly column: string; readonly value: string }
  | { readonly code: 'name-taken'; readonly column: string; readonly value: string }
  | { readonly code: 'unknown-allergen'; readonly column: string; readonly value: string }
  /** In two columns that can't both be true. */
  | { readonly code: 'contradicts'; readonly column: string; readonly value: string }
  | { readonly code: 'unknown-word'; readonly column: string; readonly value: string }
  | { readonly code: 'no-such-component'; readonly column: string; readonly value: string }
  /** Neither an ingredient nor a recipe here: bring in the ingredients first. */
  | { readonly code: 'no-such-food'; readonly column: string; readonly value: string }
  | { readonly code: 'contains-itself'; readonly column: string; readonly value: string }
  /** How much one gives is said of recipes; of a component its pans say it. */
  | { readonly code: 'yields-of-component'; readonly column: string }
  /** Its label was read of another maker's or another pack, and would count for this. */
  | { readonly code: 'read-of-another'; readonly column: string; readonly value: string }
  | { readonly code: 'too-large' }

export interface RowChange {
  /** A column of the table. */
  readonly field: string
  /** Empty where it wasn't said. */
  readonly from: string
  readonly to: string
}

export type RowNote =
  /** So many answers that let a guest have something: they arrive unread. */
  | { readonly code: 'arrives-unread'; readonly answers: number }
  /** The house has its label; of these the table says otherwise. */
  | { readonly code: 'label-stays'; readonly allergens: readonly string[] }

export interface PlannedRow {
  /** As the spreadsheet numbers it. */
  readonly row: number
  readonly name: string
  /** Of a line on a card: what is made with. */
  readonly with?: string
  readonly does: 'new' | 'changes' | 'same' | 'refused'
  readonly changes: readonly RowChange[]
  readonly notes: readonly RowNote[]
  /** Of a refused one only. */
  readonly why: RowRefusal | null
}

export interface Plan {
  readonly rows: readonly PlannedRow[]
  readonly steps: readonly Step[]
  /** Of new ingredients, unread. */
  readonly labels: Readonly<Record<string, Label>>
}

export const TABLES = ['ingredients', 'recipes'] as const
export type TableOf = (typeof TABLES)[number]

export type CsvProblem =
  | { readonly why: BytesProblem }
  | { readonly why: 'too-large'; readonly mostBytes: number }
  | TableProblem

/** How a table was read. */
export interface ReadAs {
  readonly encoding: Encoding
  readonly delimiter: Delimiter
  readonly ignored: readonly string[]
}
