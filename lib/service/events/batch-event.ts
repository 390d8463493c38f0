/** What happened to batches as they were made, cooled and reheated. */

import type { HeatReading } from '#lib/safety/cooking.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { ReheatingPlace, ReheatProblem } from '#lib/safety/reheating.ts'

export interface BatchStarted {
  readonly type: 'batchStarted'
  readonly batch: string
  readonly component: string
  readonly loads: number
  /** Epoch milliseconds, as told. */
  readonly startedAt: number
}
export interface BatchCooked {
  readonly type: 'batchCooked'
  readonly batch: string
  readonly reading: HeatReading
  /** Whether the limit of its food is met by it and the ones before. */
  readonly met: boolean
}
export interface BatchFinished {
  readonly type: 'batchFinished'
  readonly batch: string
  readonly finishedAt: number
  /** In the component's unit. */
  readonly amount: number
  readonly dateMark: DateStamp | null
  /** Of its loads, so many are finished; all of them where left away. */
  readonly loads?: number
  /** Somebody weighed or counted it; left away where it is thought to be as usual. */
  readonly measured?: true
}
export interface CoolingRead {
  readonly type: 'coolingRead'
  readonly batch: string
  readonly reading: Reading
  /** Until when somebody is there who can read it; told with the first reading, and anew with others. */
  readonly presentUntil?: number
}
/** A stage for which no reading was taken in time. */
export interface CoolingMissed {
  readonly type: 'coolingMissed'
  readonly batch: string
  readonly stage: 1 | 2
}
export interface BatchReheated {
  readonly type: 'batchReheated'
  readonly batch: string
  readonly place: ReheatingPlace
  readonly startedAt: number
  readonly reading: HeatReading
  readonly ok: boolean
  readonly why: ReheatProblem | null
  /** It goes back to cooling, once. */
  readonly coolAgain?: boolean
}

export type BatchEvent =
  | BatchStarted
  | BatchCooked
  | BatchFinished
  | CoolingRead
  | CoolingMissed
  | BatchReheated
