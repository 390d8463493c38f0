import type { Label } from '#lib/station/label.ts'

/** The label of an ingredient, or of one of its substitutes, as the house has it. */
export interface KeptLabel {
  readonly ingredient: string
  /** Id of the substitute; null: the product in use. */
  readonly product: string | null
  /** 0: as it came with a station; grows with each change, and is used once in the house. */
  readonly version: number
  /** null: nobody has read it. */
  readonly label: Label | null
  /** The same product as before, read again. */
  readonly same: boolean
  /** Epoch milliseconds; null: as it came. */
  readonly at: number | null
  /** Id of the adult whose passphrase proved it; null where none did. */
  readonly adult: string | null
}

/** The labels of one house: rows of each version, none ever changed. */
export interface Labels {
  /** The newest of each ingredient and substitute. */
  newest(): readonly KeptLabel[]
  /** Of the product in use, those that came after a version, in order. */
  since(ingredient: string, version: number): readonly KeptLabel[]
  /**
   * Keeps one that is ahead of all that are kept of it, durable when it returns; false where it isn't.
   * @param saw the newest version that it was decided on; false where that isn't the newest any more
   */
  put(label: KeptLabel, saw?: number): boolean
}
