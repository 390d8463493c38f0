import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Known } from '#lib/service/known.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

/** When it happens: epoch milliseconds; `due` is the moment at which it fell due, where it did. */
export interface Moment {
  readonly now: number
  readonly due?: number
}

/** What happened since a moment, and what is so now. */
export interface Happened {
  readonly before: RunningState
  readonly after: RunningState
  /** All that led from the one to the other, consequences too. */
  readonly events: readonly ServiceEvent[]
  readonly known: Known & Moment
}

/**
 * One rule of what follows from a fact, whatever caused it. It is asked when a slice that it reads
 * isn't the same object any more, until it has nothing to add.
 */
export interface Consequence {
  readonly name: string
  readonly reads: readonly (keyof ServiceState)[]
  readonly follow: (happened: Happened) => readonly ServiceEvent[]
}

/** What is known besides when things happen; `follows` are the rules' own where left away. */
export interface HappensWith extends Known, Moment {
  readonly follows?: readonly Consequence[]
}
