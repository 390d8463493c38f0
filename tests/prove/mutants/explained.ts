/** Mutants that no test can notice, since nothing that is seen changes. */
export interface Explained {
  readonly file: string
  readonly before: string
  readonly after: string
  readonly why: string
}

export const EXPLAINED: readonly Explained[] = []
