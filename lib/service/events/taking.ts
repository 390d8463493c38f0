/** What a build, or waste, took out of one pan. */
export interface Taking {
  readonly pan: string
  /** Which load of the pan it came from. */
  readonly load: number
  /** How often the pan had been counted by then. */
  readonly counted: number
  readonly amount: number
  /** Batches that were in it; an older log knew none of them. */
  readonly batches?: readonly string[]
}
