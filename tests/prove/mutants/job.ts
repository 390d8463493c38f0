/** What a thread is told, and what it tells. */

export interface WorkerSetting {
  readonly root: string
  /** Code that Node runs, by path from the root; of data its text. */
  readonly modules: Readonly<Record<string, string>>
  /** Those whose functions tell when they are called. */
  readonly probed: Readonly<Record<string, string>>
  /** What each of them loads, of the others. */
  readonly loads: Readonly<Record<string, readonly string[]>>
  /** Packages that they import. */
  readonly packages: readonly string[]
}

export interface Job {
  /** The test file, from the root. */
  readonly test: string
  readonly mutated: { readonly path: string; readonly code: string } | null
  readonly isProbed: boolean
}

export interface Ran {
  /** What the first failing test says; null where all pass. */
  readonly failed: string | null
  /** Tests that ran to their end. */
  readonly tests: number
  readonly ms: number
  /** Functions that were called, by file. */
  readonly hits: readonly (readonly [string, readonly number[]])[]
}
