/** What is known beside a service's state when something is judged in it. */
import type { Checker } from '#lib/needs/judge.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Known {
  /** The newest revision of this service's station; null where that isn't known. */
  readonly newestRevision: number | null
  /** Judges what is taken; the rules' own where left away. */
  readonly checker?: Checker
}

/** Whether the service works with an older document than the newest: then no need is checked. */
export const isStale = (state: RunningState, { newestRevision }: Known): boolean =>
  newestRevision === null || !(newestRevision <= state.revision)
