import type { Entity, Kind, Row } from '#lib/editor/draft.ts'

/** One change to a draft, as a screen sends it. The id of a single is its own name. */
export type Step =
  /**
   * Fields as they are from now on, the others stay; where there is no such row, it is made, at the
   * end of its kind. A new id comes from `newId`.
   */
  | {
      readonly do: 'put'
      readonly entity: Entity
      readonly id: string
      readonly fields: Row
      /** Fields that have no answer any more. */
      readonly clear?: readonly string[] | undefined
    }
  /** Refused where something else uses it; an ingredient stays the house's where others list it. */
  | { readonly do: 'remove'; readonly entity: Kind; readonly id: string }
  /** In front of another of its kind, or at the end; a pan also into another well. */
  | {
      readonly do: 'move'
      readonly entity: Kind
      readonly id: string
      readonly before: string | null
      readonly well?: string | undefined
    }
  /** Its name, and its short name where that was the one proposed from the name. The id stays. */
  | { readonly do: 'rename'; readonly entity: Entity; readonly id: string; readonly name: string }
