/** What is forecast for a whole station at a moment: the newest one wins, it is never stored. */
import type { AdviceKind } from '#lib/estimate/advice.ts'
import type { AdviceReason, ByWhen } from '#lib/estimate/advice-reason.ts'
import type { BatchVerdict } from '#lib/estimate/batch-timing.ts'
import type { KeepPlan } from '#lib/estimate/keep.ts'
import type { Lasting } from '#lib/estimate/run-out.ts'
import type { Wait } from '#lib/estimate/wait.ts'
import type { RushWindow } from '#lib/safety/holding.ts'

/** A batch of a component, as if started now. Instants in epoch milliseconds. */
export interface BatchForecast {
  readonly verdict: BatchVerdict
  /** Loads to start now, and their portions; 0 unless the verdict is to start. */
  readonly loads: number
  readonly portions: number
  readonly readyAt: number
  readonly latestStart: number | null
  /** Chance of a gap before it is ready, 0 to 1, started now or in five minutes. */
  readonly gapIfNow: number
  readonly gapIfLater: number
  /** Portions expected to be left at close, with it and without. */
  readonly leftWith: number
  readonly leftWithout: number
  readonly saves: number
  /** Where it is made and by whom, as the station says it. */
  readonly where: string
  readonly who: string
  readonly minutes: number
}

export interface Underway {
  readonly at: number
  readonly portions: number
}

export interface ComponentForecast {
  readonly lasting: Lasting
  /** Chance of running out before close, 0 to 1. */
  readonly chance: number
  /** Chance before a batch started now could be ready; null where none can be made. */
  readonly beforeNextBatch: number | null
  /** By when it has run out with a chance of 10, 50 and 90 percent. */
  readonly by: ByWhen
  /** Portions that can still be served, back-up included, tickets apart, as it is really scooped. */
  readonly left: { readonly mean: number; readonly sd: number }
  /** Portions that guests are still expected to want until close: mean and standard deviation. */
  readonly wanted: { readonly mean: number; readonly sd: number }
  /** Loads under way, soonest first. */
  readonly underway: readonly Underway[]
  /** null: it can't be made again today. */
  readonly batch: BatchForecast | null
  /** For what can't be made again and won't last; null otherwise. */
  readonly keep: KeepPlan | null
  /** Whole percent heavy (below zero: light) and portions fewer; null while that can't be told. */
  readonly bias: { readonly percent: number; readonly fewer: number } | null
}

/** What the lead could do, as the figures of this moment have it. */
export interface Suggestion {
  readonly key: string
  readonly kind: AdviceKind
  /** Cents that doing it now is expected to save; 0 where it is a duty. */
  readonly saves: number
  readonly reason: AdviceReason
}

export interface StationForecast {
  readonly service: string
  /** Position of the log and the moment that it was made from. */
  readonly position: number
  readonly at: number
  /** When the service is taken to close, and whether somebody said so. */
  readonly closesAt: number
  readonly closesSaid: boolean
  /** In a rush the lead is told only what is urgent; null where it isn't one, else until when. */
  readonly rushUntil: number | null
  /** The next rush before close, before which readings are taken; null or left away where none is known. */
  readonly rushAhead?: RushWindow | null
  readonly components: Readonly<Record<string, ComponentForecast>>
  /** Of an order of one build sent now; null while there is no assembler. */
  readonly wait: Wait | null
  /** All that could be suggested, told or not: the server tells the best of them. */
  readonly candidates: readonly Suggestion[]
  /** What was told and is open, the one to do next first. */
  readonly doNext: readonly Suggestion[]
}
