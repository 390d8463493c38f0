/** What happened to stock, demand and advice. */

import type { AdviceKind } from '#lib/estimate/advice.ts'
import type { AdviceReason } from '#lib/estimate/advice-reason.ts'
import type { Measures } from '#lib/estimate/nearest-scoop.ts'
import type { ReadingKind } from '#lib/estimate/scoop-bias.ts'
import type { RestToThrowOut } from '#lib/service/events/food-event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import type { Portion } from '#lib/station/portion.ts'

export const WASTE_REASONS = [
  'spill',
  'dropped',
  'sample',
  'staff-meal',
  'spoiled',
  'other',
] as const

export type WasteReason = (typeof WASTE_REASONS)[number]

/** What is known of the day at opening. All optional: an older log knew none of it. */
export interface DayPlan {
  /** Guests expected; null where nobody said. */
  readonly guestsExpected?: number | null
  /** When it is to close, epoch milliseconds; null where nobody said. */
  readonly closesAt?: number | null
  readonly assemblers?: number
}

/** How heavy a component was scooped in earlier services: 0.08 is 8 percent heavy. */
export interface KnownBias {
  readonly bias: number
  /** Its standard deviation. */
  readonly sd: number
}

/** Beside the fields of `serviceOpened`. */
export interface OpenedStock extends DayPlan {
  /** Minute of the civil day, in the station's zone, at which it was opened. */
  readonly minuteOfDay?: number
  /** When guests come in, epoch milliseconds, where that is later: demand is counted from then. */
  readonly doorsAt?: number
  readonly knownBias?: Readonly<Record<string, KnownBias>>
}

/** The plan of the day was changed; what is left away stays. */
export interface DaySet extends DayPlan {
  readonly type: 'daySet'
}

/** Beside the fields of `countCorrected`; a count where they are left away. */
export interface CorrectedBy {
  readonly kind?: ReadingKind
  /** What the reading itself said, in the component's unit; `to` is what is believed after it. */
  readonly read?: number
  /** Counted to nothing: what of it is to be thrown out, where it may go nowhere else. */
  readonly rest?: RestToThrowOut
  /** Counted to nothing: the pan's food is over, until it is loaded or the count was a slip. */
  readonly ends?: true
  /** The count to nothing was a slip: the pan holds what it held before that. */
  readonly was?: 'slip'
}

export interface WasteRecorded {
  readonly type: 'wasteRecorded'
  readonly component: string
  readonly amount: number
  readonly reason: WasteReason
  readonly took: readonly Taking[]
  /** What was wasted beyond what the pans were counted to hold. */
  readonly uncounted: Readonly<Record<string, number>>
}

/** Portions kept for some orders: ids of items, codes of needs, or `kept-apart`. */
export interface PortionsKept {
  readonly type: 'portionsKept'
  readonly component: string
  readonly portions: number
  readonly for: readonly string[]
}

export interface KeepEnded {
  readonly type: 'keepEnded'
  readonly component: string
}

/** A guest wanted it and went without; counts as demand. */
export interface WantedGone {
  readonly type: 'wantedGone'
  readonly item: string | null
  /** Components that were wanted and gone. */
  readonly components: readonly string[]
}

/** Its scoop is missing: other level measures, and so another portion, from now on. */
export interface ScoopMissed {
  readonly type: 'scoopMissed'
  readonly component: string
  readonly measures: readonly Measures[]
  readonly portion: Portion
  /** Components whose own scoop stands in, or that it has been in; left away where there is none. */
  readonly lentBy?: readonly string[]
}

export interface ScoopFound {
  readonly type: 'scoopFound'
  readonly component: string
  readonly portion: Portion
  /** Whether the tools that stood in were washed: they carry nothing any more. */
  readonly washed: boolean
}

/** The server told the lead what to do next. */
export interface AdviceTold {
  readonly type: 'adviceTold'
  readonly key: string
  readonly kind: AdviceKind
  /** Cents that doing it is expected to save. */
  readonly saves: number
  readonly reason: AdviceReason
}

export interface AdviceAnswered {
  readonly type: 'adviceAnswered'
  readonly key: string
  readonly answer: 'done' | 'put-off' | 'declined'
}

/** What was told isn't worth doing any more. */
export interface AdviceLapsed {
  readonly type: 'adviceLapsed'
  readonly key: string
}

/** A short build waits until there is more of what it lacks, as its guest chose. */
export interface BuildWaits {
  readonly type: 'buildWaits'
  /** "21A" */
  readonly build: string
  readonly component: string
}

export type StockEvent =
  | DaySet
  | WasteRecorded
  | PortionsKept
  | KeepEnded
  | WantedGone
  | ScoopMissed
  | ScoopFound
  | AdviceTold
  | AdviceAnswered
  | AdviceLapsed
  | BuildWaits
