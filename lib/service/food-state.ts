/** The part of a service's state that is about batches, what stands where, and what isn't sold. */
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import type { End } from '#lib/safety/ends.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { ReheatingPlace, ReheatProblem } from '#lib/safety/reheating.ts'
import type { TimeClock } from '#lib/safety/time-control.ts'
import type { EndedFood } from '#lib/service/events/end-event.ts'
import type {
  Container,
  DiscardSignedOff,
  HeldFood,
  OffSaleWhy,
  RestToThrowOut,
  SanitizerRead,
  ThrowOutPassed,
} from '#lib/service/events/food-event.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'

/** Why something isn't sold until it is resolved. */
export interface OffSale {
  readonly why: OffSaleWhy
  readonly since: number
  readonly lastGoodAt: number | null
}

/** What stands on the line or behind it. */
export interface HeldStock {
  /** What it holds, in its component's unit. */
  readonly amount: number
  /** What it held when it was loaded or last counted: what "full" is drawn against. */
  readonly full: number
  /** Counts loads, so that food of an earlier load is never put back into a later one. */
  readonly load: number
  /** Counts corrections, so that a take-back never adds to what was counted since. */
  readonly counted: number
  readonly loadedAt: number
  /** Where in the log; left away where it wasn't loaded since it was emptied. */
  readonly loadedIn?: number
  /** Components whose scoop went into it since it was last washed or changed. */
  readonly soiledBy: readonly string[]
  /** Of those, the ones that a probe brought: where in the log, since food of before is clean of them. */
  readonly probedIn?: Readonly<Record<string, number>>
  /** Batches in it, oldest first. */
  readonly batches: readonly string[]
  /** What governs its food; null: nothing is known, so it isn't sold where it has to be. */
  readonly food: HeldFood | null
  /** Readings count from here on. */
  readonly since: number
  readonly readings: readonly Reading[]
  readonly offSale: OffSale | null
  /**
   * It was counted to nothing: all else is what it held before, set aside in case that was a slip. It
   * was none where the rest was thrown out since, and initialled.
   */
  readonly ended?: true | 'thrown-out'
}

export interface BackupPan extends HeldStock {
  readonly component: string
  /** Lidded, with its own scoop, not reached over; a foreign scoop ends it. */
  readonly guarded: boolean
  readonly kept: 'hot' | 'cold' | 'boxed'
}

export interface BatchReheat {
  readonly place: ReheatingPlace
  readonly startedAt: number
  readonly readings: readonly HeatReading[]
  readonly ok: boolean
  readonly why: ReheatProblem | null
}

export interface BatchState {
  readonly component: string
  readonly loads: number
  readonly startedAt: number
  readonly finishedAt: number | null
  /**
   * Of what isn't cooked: when the first of its loads was finished, the earliest that was told, epoch
   * milliseconds; left away where that is `finishedAt`.
   */
  readonly firstDone?: number
  /** What it gave, in the component's unit; 0 until a load is finished. */
  readonly amount: number
  /** Of its loads, so many are finished. */
  readonly loadsDone: number
  /** The amount was weighed or counted; left away where it is thought to be as usual. */
  readonly measured?: true
  /** What of it was loaded. */
  readonly loaded: number
  readonly cooking: readonly HeatReading[]
  readonly cooked: boolean
  /** So many of `cooking` are of loads that are finished. */
  readonly cookedFor?: number
  readonly cooling: readonly Reading[]
  /**
   * Until when somebody said to be there who can read it, epoch milliseconds; left away where nobody
   * did, and once its cooling is over.
   */
  readonly presentUntil?: number
  /** It was reheated to be cooled once more. */
  readonly cooledAgain: boolean
  readonly reheat: BatchReheat | null
  readonly clock: TimeClock | null
  readonly dateMark: DateStamp | null
  /** Taken while it waits to be loaded, or on a clock. */
  readonly readings: readonly Reading[]
  /** What a probe brought into it that was read so; left away where none that wasn’t clean went in. */
  readonly probedWith?: readonly string[]
  /** Id of the lot of the larder that it came from; left away where it was made here. */
  readonly lot?: string
  /** It stood open on a line: it never goes into a protected back-up. */
  readonly stoodOpen?: true
  /** Of a lot: components whose scoop was in it, which go along into a pan. */
  readonly soiledBy?: readonly string[]
  /** When the newest word of how it was made and kept was recorded, epoch milliseconds. */
  readonly toldAt: number
  readonly offSale: OffSale | null
  readonly thrownOutAt: number | null
  /** `thrownOutAt` is when it was set aside, or eaten by the crew; left away where it was thrown out. */
  readonly ended?: Exclude<End, 'throw-out'>
  /** Time of the newest event of it, epoch milliseconds, as told. */
  readonly newestAt: number
}

/** Something that stays here until it is initialled. */
export interface ToThrowOut {
  readonly what: DiscardSignedOff['what']
  readonly id: string
  readonly because: ThrowOutPassed['because'] | RestToThrowOut['because']
  readonly since: number
  /** Of a rest that was taken out of its pan: what it is, and how much, in its component's unit. */
  readonly rest?: { readonly component: string; readonly amount: number }
}

/** Handed-over builds that the person in charge hasn't answered for. */
export type ToTell = Omit<HandedOverFound, 'type'>

/** What is known of the hot or cold shelf of made food. */
export interface Shelf {
  readonly newest: Reading
  /** Of the reading in limits since which it is known to be held, epoch milliseconds; null: it isn't. */
  readonly goodAt: number | null
  /** Read out of limits, until the person in charge decides on what stands there. */
  readonly offSale: Pick<OffSale, 'since' | 'lastGoodAt'> | null
  /** Since when a reading of it is missed; left away where none is, and once it is read or decided on. */
  readonly missed?: { readonly since: number; readonly lastGoodAt: number }
}

/** What a probe was in: food of a component, `behind` where that was kept apart from the line. */
export interface ProbedFood {
  readonly component: string
  readonly behind: boolean
}

export interface ClockJump {
  readonly byMs: number
  readonly at: number
  /** What was read since, by `pan/pan-rice`, `backup/...`, `batch/b2`: when, epoch milliseconds. */
  readonly read: Readonly<Record<string, number>>
}

export interface FoodState {
  /**
   * By the name on a probe, all that it was in since it was said to be cleaned; left away in a service
   * whose log doesn't follow that.
   */
  readonly probes?: Readonly<Record<string, readonly ProbedFood[]>>
  /** Left away until somebody reads it. */
  readonly shelf?: Shelf
  /** Its newest reading, with when that was told; left away until somebody reads it. */
  readonly sanitizer?: Omit<SanitizerRead, 'type'> & { readonly at: number }
  readonly batches: Readonly<Record<string, BatchState>>
  readonly nextBatch: number
  /** The back-up pans of the station by their id; an empty one holds 0. */
  readonly backupPans: Readonly<Record<string, BackupPan>>
  /** By `pan/pan-rice`, `batch/b2`, `build/21A`, `rest/pan-rice.3`. */
  readonly toThrowOut: Readonly<Record<string, ToThrowOut>>
  /**
   * By the same names: at most one entry a place, of the builds of this service that were handed over.
   */
  readonly toTell: Readonly<Record<string, ToTell>>
  /** Rush windows of the day, epoch milliseconds. */
  readonly rushes: readonly RushWindow[]
  /** Pans that another container stands in for. */
  readonly containers: Readonly<Record<string, Container>>
  /** What places came to, oldest first; left away until one does. */
  readonly ends?: readonly EndedFood[]
}

export const NO_FOOD: FoodState = {
  batches: {},
  nextBatch: 1,
  backupPans: {},
  toThrowOut: {},
  toTell: {},
  rushes: [],
  containers: {},
}

export const EMPTY_STOCK: HeldStock = {
  amount: 0,
  full: 0,
  load: 0,
  counted: 0,
  loadedAt: 0,
  soiledBy: [],
  batches: [],
  food: null,
  since: 0,
  readings: [],
  offSale: null,
}
