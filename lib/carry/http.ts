/**
 * What the screen of carrying and the server say to each other under /menu, to a device of the lead or
 * of the person in charge. Looking changes nothing.
 */

import type { CsvProblem, PlannedRow, ReadAs } from '#lib/carry/csv/planned.ts'
import type { MetIngredient } from '#lib/carry/met.ts'
import type { CarriedProblem } from '#lib/carry/read-carried.ts'
import type { Change } from '#lib/editor/change.ts'
import type { MenuRefusal } from '#lib/editor/http.ts'
import type { Problem } from '#lib/editor/problem.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'

/** A file is from a kitchen that names other allergens than this house. */
export interface OtherSet {
  readonly why: 'other-allergen-set'
  readonly there: AllergenSetId
  readonly here: AllergenSetId
}

export type ImportProblem = CarriedProblem | OtherSet | { readonly why: 'no-such-station' }

/** POST /menu/import/look?into= , the file as its body: `new`, or the id of a station. */
export interface ImportLook {
  /** As the file calls it. */
  readonly there: { readonly station: string; readonly name: string }
  /** What it becomes here, and said with the import. */
  readonly station: string
  readonly name: string
  readonly saw: number
  /** The house has a station of the file's id, into which it may be brought. */
  readonly same: { readonly station: string; readonly name: string } | null
  /** From the draft that is there to what the file makes of it; of a new one all is added. */
  readonly changes: readonly Change[]
  readonly ingredients: readonly MetIngredient[]
  /** Answers of its labels that arrive unread. */
  readonly unread: number
  readonly pictures: number
  /** A service is open on that station: nothing of it changes. */
  readonly open: boolean
}

/** POST /menu/import?into=&saw= , the file once more: it becomes a draft, and nothing is published. */
export interface Imported {
  readonly station: string
  readonly saw: number
  readonly problems: readonly Problem[]
}

/** POST /menu/csv/look?station=&what=&encoding= , the table as its body. */
export interface CsvLook {
  readonly saw: number
  readonly readAs: ReadAs
  readonly rows: readonly PlannedRow[]
}

/** POST /menu/csv?station=&what=&encoding=&saw= , the table once more: rows that aren't refused are taken. */
export interface CsvTaken {
  readonly saw: number
  readonly taken: number
  readonly refused: number
}

export type CarryAnswer<Done> =
  | ({ readonly code: 'done' } & Done)
  /** The file can't be taken at all. */
  | { readonly code: 'wrong-file'; readonly problem: ImportProblem | CsvProblem }
  /** The draft changed since it was looked at: look once more. */
  | { readonly code: 'stale' }
  | { readonly code: Exclude<MenuRefusal, 'stale' | 'step-refused' | 'has-problems'> }
  /** It isn't carried before it says what a service needs. */
  | { readonly code: 'has-problems'; readonly problems: readonly Problem[] }
