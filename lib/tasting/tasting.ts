/**
 * A tasting: a small batch that is made to be tried, beside every service. It names components, a
 * time and numbers of tasters, and no pan, batch or lot: nothing of a stock can be said with it.
 */
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { Handling, NeedCode } from '#lib/station/codes/codes.ts'

/** What a taster answered; `not-sure` counts as unknown. Of people: it lies in the second file alone. */
export interface TasterTold {
  readonly asked: 'none' | 'needs' | 'not-sure'
  readonly needs: readonly { readonly code: NeedCode; readonly handling: Handling }[]
}

export interface Taster {
  /** 1, 2, 3 …: nobody is named. */
  readonly number: number
  /** Id of the command that told it last; null: not asked yet. */
  readonly told: string | null
}

/** What came of one component. */
export interface Tasted {
  readonly component: string
  /** As typed at the scale or counted. */
  readonly typed: string
  /** Measured over stated. */
  readonly ratio: number
  /** Saved with the card, so that plans are corrected by it. */
  readonly saved: boolean
}

/** What was read of a food as it was cooked; whose initials it carries lies in the second file. */
export interface TastingReading extends HeatReading {
  readonly component: string
}

export interface Tasting {
  readonly id: string
  readonly station: string
  /** Civil date in the station's time zone. */
  readonly on: string
  /** "HH:MM" of that date. */
  readonly from: string
  readonly to: string
  /** The same as instants, epoch milliseconds. */
  readonly startsAt: number
  readonly endsAt: number
  /** The class period's name; null where it is in none. */
  readonly period: string | null
  readonly portions: number
  readonly components: readonly string[]
  readonly tasters: readonly Taster[]
  readonly stage: 'planned' | 'making' | 'ready' | 'over' | 'dropped'
  /** The oldest first, those that were too low too. */
  readonly readings: readonly TastingReading[]
  readonly tasted: readonly Tasted[]
}

/** By the number of the taster; those who weren't asked aren't in it. */
export type ToldByTaster = Readonly<Record<number, TasterTold>>

export const MOST_TASTERS = 20
export const MOST_PORTIONS = 20

/** Whether anything is still to be done for it. */
export const isToCome = ({ stage }: Tasting): boolean => stage !== 'over' && stage !== 'dropped'
