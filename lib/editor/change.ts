import type { Entity, Json } from '#lib/editor/draft.ts'

/** One thing that differs between two documents of a station; words/changes-en.ts says it. */
export type Change =
  | {
      readonly what: 'added' | 'removed'
      readonly entity: Entity
      readonly id: string
      readonly name: string
    }
  | {
      readonly what: 'changed'
      readonly entity: Entity
      readonly id: string
      /** As it is called now. */
      readonly name: string
      readonly field: string
      /** null where it wasn't said. */
      readonly from: Json
      readonly to: Json
    }
  /** It stands elsewhere in its list, or a pan in another well. */
  | { readonly what: 'moved'; readonly entity: Entity; readonly id: string; readonly name: string }
