/** What a bench measured, and whether it stays within its bound. */
export interface Verdict {
  readonly title: string
  readonly figures: readonly string[]
  readonly isWithin: boolean
}
