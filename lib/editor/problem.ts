import type { Entity } from '#lib/editor/draft.ts'

/** What is wrong, told at the field that it is about. Words are in words/problems-en.ts. */
export interface Problem {
  /** The code of the station document's own check, or one of the editor's. */
  readonly code: string
  readonly entity: Entity
  /** Of the row; of a single its own name. */
  readonly id: string
  /** As in the row, with dots to what is inside: `portion.gPerCup`, `parts.2.component`; null: the whole row. */
  readonly field: string | null
  /** The limit that is passed. */
  readonly most?: number
  readonly least?: number
  /** Ids, allergens, traits or times that it is about beside that, as the document's check names them. */
  readonly named?: readonly string[]
}

/** A row that stands in the way. */
export interface Other {
  readonly entity: Entity
  readonly id: string
}

/** Why a step can't be taken at all; nothing of the draft has changed. */
export type StepRefusal =
  | 'no-such-row'
  | 'no-such-field'
  | 'no-id'
  /** Named by what is in `other`. */
  | 'in-use'
  /** The house has a label by this id, of what was called so before. */
  | 'id-of-before'
  /** Its label was read of another maker's, or of another pack. */
  | 'other-pack'
  /** More rows or longer ones than a draft takes. */
  | 'too-large'

/** What isn't there yet, and what it costs: told beside the problems, and nothing is refused for it. */
export interface Missing {
  readonly code: string
  readonly entity: Entity
  readonly id: string
  readonly field: string | null
  /** What comes of it, as a code: `not-opened`, `by-weight`, `no-keep-apart` … */
  readonly costs: string
}

export interface MissingFor {
  /** Until then nothing can be sold. */
  readonly firstOrder: readonly Missing[]
  /** Until then an order that keeps something apart is refused, or asked about. */
  readonly keepApart: readonly Missing[]
  readonly printing: readonly Missing[]
}
