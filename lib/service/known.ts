/** What is known beside a service's state when something is judged in it. */
import type { Checker } from '#lib/needs/judge.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Known {
  /** The newest of the house's labels; null where that isn't known. */
  readonly newestLabels: LabelVersions | null
  /** Judges what is taken; the rules' own where left away. */
  readonly checker?: Checker
}

/** Ingredients of which the house has a newer label than the service. */
export const behindIn = (
  { station, labelVersions = {} }: RunningState,
  newest: LabelVersions,
): readonly string[] =>
  Object.keys(newest).filter(
    (id) =>
      !((newest[id] ?? 0) <= (labelVersions[id] ?? 0)) &&
      station.ingredients.some((one) => one.id === id),
  )

/** Whether the service works with an older label than the newest: then no need is checked. */
export const isStale = (state: RunningState, { newestLabels }: Known): boolean =>
  newestLabels === null || behindIn(state, newestLabels).length > 0
