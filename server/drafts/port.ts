import type { EntityKey, Row } from '#lib/editor/draft.ts'

/** Ingredients are the house's: their rows are kept under this in place of a station. */
export const OF_THE_HOUSE = ''

/** One row of a draft as it was saved last. */
export interface KeptRow {
  readonly entity: EntityKey
  /** null: it was removed, which is kept so that whoever saw it is told. */
  readonly row: Row | null
  /** Of the save, counted through all drafts of the house. */
  readonly revision: number
}

export interface RowChange {
  readonly station: string
  readonly entity: EntityKey
  readonly row: Row | null
}

/** The rows of the drafts of one house. All is asked at once: one server owns the file. */
export interface DraftRows {
  /** Stations that have a draft, in the order of their first save. */
  stations(): readonly string[]
  /** Of one station, or of the house. */
  of(station: string): readonly KeptRow[]
  /** The newest save of any draft; 0 where there is none. */
  newest(): number
  /** Keeps all of them as one save, durable when it returns its revision. */
  save(changes: readonly RowChange[]): number
}
