/** Why a suggestion is made, in numbers: what its sentence needs. Words are in lib/words. */
import type { ReadHere } from '#lib/station/read-here.ts'

/** Instants in epoch milliseconds; null: not before close. */
export interface ByWhen {
  readonly early: number | null
  readonly likely: number | null
  readonly late: number | null
}

/** What has to be done about food, by the rules of safety. */
export type SafetyReason = {
  readonly why: 'safety'
  readonly what:
    | 'reading-due'
    | 'reading-missed'
    | 'out-of-limits'
    | 'throw-out'
    | 'throw-out-soon'
    | 'cooling-due'
    | 'collect'
  /** `rest`: what was taken out of a pan and is to be thrown out. */
  readonly of: 'pan' | 'batch' | 'backup' | 'build' | 'rest' | ReadHere
  /** Of the pan, batch, back-up pan, rest, "21A", or what is read beside food. */
  readonly id: string
  readonly component: string | null
  /** By when, epoch milliseconds; null: now. */
  readonly dueAt: number | null
  /** Of what cools: after this moment nobody said to be there, and its stage goes on for longer. */
  readonly awayFrom?: number
  /** Why this food is thrown out, or may not be used, where that isn't its reading; older logs don't say. */
  readonly because?:
    | 'time'
    | 'date'
    | 'too-warm'
    | 'out-of-limits'
    | 'taken-away'
    | 'counted-empty'
    | 'not-cooled'
}

export type AdviceReason =
  | SafetyReason
  /** None left to sell of a component. */
  | {
      readonly why: 'sold-out'
      readonly component: string
      /** Items that can't be sold any more without it. */
      readonly items: readonly string[]
      /** Portions that stand ready behind the line: change the pan. */
      readonly behind: number
      /** When the next batch that is under way is expected, epoch milliseconds; null: none is. */
      readonly nextAt: number | null
    }
  | {
      readonly why: 'start-batch'
      readonly component: string
      readonly loads: number
      readonly portions: number
      /** Chance of running out before close if none is started, 0 to 1, and by when. */
      readonly chance: number
      readonly by: ByWhen
      readonly readyAt: number
      readonly latestStart: number | null
      /** Chance of a gap before it is ready, started now or in five minutes. */
      readonly gapIfNow: number
      readonly gapIfLater: number
      /** Portions expected to be left at close, with it and without. */
      readonly leftWith: number
      readonly leftWithout: number
    }
  | {
      readonly why: 'keep'
      readonly component: string
      readonly chance: number
      readonly by: ByWhen
      /** Items that can't be sold without it, those that can, and portions to keep for the former. */
      readonly forItems: readonly string[]
      readonly withoutIt: readonly string[]
      readonly keep: number
      /** Portions free for all others. */
      readonly free: number
    }
  | {
      readonly why: 'measure'
      readonly component: string
      readonly chance: number
      /** Portions believed to be left, and their standard deviation. */
      readonly left: number
      readonly sd: number
      /** When it was last weighed, counted or looked at, epoch milliseconds. */
      readonly lookedAt: number
    }
