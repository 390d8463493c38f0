/** What happened to food: batches, readings, clocks, and what isn't sold or is thrown out. */
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import type { PanFood } from '#lib/needs/top-up.ts'
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { HowMuch } from '#lib/safety/ends.ts'
import type { RushWindow, WayOut } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { SanitizerProblem, SanitizerReading } from '#lib/safety/sanitizer.ts'
import type { MadeUntil, TimeClock } from '#lib/safety/time-control.ts'
import type { BatchEvent } from '#lib/service/events/batch-event.ts'
import type { FoodEnded } from '#lib/service/events/end-event.ts'
import type { HandedOverEvent } from '#lib/service/events/handed-over-event.ts'
import type { Probed } from '#lib/service/events/probed.ts'
import type { ShelfEvent } from '#lib/service/events/shelf-event.ts'
import type { FoodTaken } from '#lib/service/events/taken-event.ts'

/** What governs the food in a pan; what it declares is the station's to say, with its label changes. */
export interface HeldFood extends Omit<PanFood, 'says'> {
  /**
   * Of cold food that nobody dated: the midnight that ends the day on which it was loaded, epoch
   * milliseconds. It isn't kept to the next, since nobody could say when its 24 hours are over.
   */
  readonly dayEndsAt?: number
}

/** A pan of the line, a back-up pan, and a batch. */
export const PLACE_KINDS = ['pan', 'backup', 'batch'] as const
export type PlaceKind = (typeof PLACE_KINDS)[number]

/** What a reading, an absence or a time is about. A batch may be called as a pan is. */
export interface Place {
  readonly what: PlaceKind
  readonly id: string
}

export type OffSaleWhy = 'out-of-limits' | 'reading-missed' | 'monitoring-missed' | 'cooling-missed'

/** A pan's own measures, where it isn't the one of the document. */
export interface Container {
  readonly size: PanSize
  readonly depthIn: PanDepthIn
  readonly tareMg: number | null
}

/** A pan, on the line or behind it, and a component of which a scoop brought something into it. */
export interface Mark {
  readonly pan: string
  readonly by: string
}

/** Beside those of `panLoaded`, `panChanged` and `backupSet`: an older log knew none of it. */
export interface LoadedFood {
  readonly batch?: string | null
  /** Of no batch: somebody said that it is straight from the pack. */
  readonly bought?: boolean
  /** null: nothing is known of it. */
  readonly food?: HeldFood | null
  readonly reading?: Reading | null
  /** On time alone: the reading was taken as it was put in, and its clock runs from it. */
  readonly startsClock?: boolean
  /** Id of the back-up pan that it came out of. */
  readonly from?: string | null
  /** Gross minus tare, where it was weighed. */
  readonly weighed?: boolean
  /** Of what went away with the pan before, where that is to be thrown out. */
  readonly rest?: RestToThrowOut
  /** What the pan before had of others and its scoop carried on; left away where there is nothing. */
  readonly leaves?: readonly Mark[]
}

/** Beside the fields of `serviceOpened`. */
export interface OpenedFood {
  /** What each probe was in is followed from here on; an older log doesn't know. */
  readonly followsProbes?: true
  /** Rush windows of the day, epoch milliseconds. */
  readonly rushes?: readonly RushWindow[]
}

/** Beside the fields of `buildFinished`. */
export interface FinishedFood {
  readonly until?: MadeUntil
}

export interface TimeClockStarted extends Probed {
  readonly type: 'timeClockStarted'
  readonly what: PlaceKind
  readonly id: string
  readonly from: 'hot' | 'cold' | 'room'
  readonly clock: TimeClock
  readonly reading: Reading
}
export interface PanToppedUp extends Pick<LoadedFood, 'bought' | 'startsClock'> {
  readonly type: 'panToppedUp'
  readonly pan: string
  readonly amount: number
  readonly batch: string | null
  readonly from: string | null
  /** What governs both. */
  readonly food: HeldFood
  readonly reading: Reading | null
}
export interface TemperatureRead extends Probed {
  readonly type: 'temperatureRead'
  readonly what: PlaceKind
  readonly id: string
  readonly reading: Reading
  readonly inLimits: boolean
  /** It was off sale for want of a reading, and isn't any more. */
  readonly lifts?: boolean
}
export interface ReadingMissed {
  readonly type: 'readingMissed'
  readonly what: PlaceKind
  readonly id: string
}
export interface TakenOffSale {
  readonly type: 'takenOffSale'
  readonly what: PlaceKind
  readonly id: string
  readonly why: OffSaleWhy
  /** Of the last reading in limits; null where there is none. */
  readonly lastGoodAt: number | null
}
export interface OffSaleResolved extends Probed {
  readonly type: 'offSaleResolved'
  readonly what: PlaceKind
  readonly id: string
  readonly way: WayOut['way']
  /** After reheating. */
  readonly reading: HeatReading | null
  /** Of time alone, running since it was last known to be in limits. */
  readonly clock: TimeClock | null
  /** Until when builds that were held for it and are made may be handed over, epoch milliseconds. */
  readonly madeUntil?: number
  /** Of a batch that is cooled again: until when somebody is there who can read it. */
  readonly presentUntil?: number
}
/** What was read of the sanitizing solution. */
export interface SanitizerRead extends SanitizerReading {
  readonly type: 'sanitizerRead'
  /** By its limit, or by its label; null where it kept that. */
  readonly problem: SanitizerProblem | null
}
/** Its time or date is over, or what it took was thrown out: to be thrown out, and never sold. */
export interface ThrowOutPassed {
  readonly type: 'throwOutPassed'
  readonly what: PlaceKind | 'build'
  readonly id: string
  readonly because: 'time' | 'date' | 'too-warm' | 'out-of-limits'
  /** Of a build that is stopped to become something else: it still is. Older logs lost that. */
  readonly keepsChange?: true
}

/**
 * What was taken off the line, or from behind it, and goes nowhere but into the bin: it stays to be
 * thrown out, apart from its pan, until somebody initials it.
 */
export interface RestToThrowOut {
  readonly id: string
  /** `taken-away`: a clock ran on it, which wasn't over; `counted-empty`: and it was said to be gone. */
  readonly because: 'time' | 'date' | 'taken-away' | 'counted-empty'
}
/** Somebody initialled that it was thrown out. */
export interface DiscardSignedOff {
  readonly type: 'discardSignedOff'
  /** `rest`: what was taken out of a pan and is to be thrown out. */
  readonly what: PlaceKind | 'build' | 'rest'
  readonly id: string
  readonly amount: number
  readonly reason: DiscardReason
  /** Thrown out at the end of the service, with how its amount was learnt; left away before that. */
  readonly how?: HowMuch
}

export const DISCARD_REASONS = [
  'past-time',
  'past-date',
  'out-of-limits',
  'not-cooled',
  'not-cooked',
  'quality',
  'left-over',
  'other',
] as const

export type DiscardReason = (typeof DISCARD_REASONS)[number]

export type FoodEvent =
  | BatchEvent
  | TimeClockStarted
  | PanToppedUp
  | TemperatureRead
  | ReadingMissed
  | TakenOffSale
  | OffSaleResolved
  | ShelfEvent
  | SanitizerRead
  | ThrowOutPassed
  | DiscardSignedOff
  | FoodEnded
  | HandedOverEvent
  | FoodTaken
