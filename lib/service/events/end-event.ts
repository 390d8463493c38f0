/** That food came to an end of its service and was set aside, or the crew ate it. */

import type { HeatReading } from '#lib/safety/cooking.ts'
import type { CivilDate, DateStamp } from '#lib/safety/date-stamp.ts'
import type { End, HowMuch } from '#lib/safety/ends.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Label } from '#lib/station/label.ts'
import type { Portion } from '#lib/station/portion.ts'

/** All that is known of food, as it goes along where that is set aside. Moments are epoch ms. */
export interface GoesAlong {
  readonly unit: Portion['unit']
  /** How it was kept here; `cooling`: on its way down. */
  readonly heldBy: HeldBy | 'cooling'
  /** null: dry food that nobody dated; all else has one. */
  readonly dateMark: DateStamp | null
  /**
   * It goes into the freezer on that day, and has so many days left from the day of thawing, with it;
   * null: dry food that nobody dated. The maker's use-by that was told of it isn't moved by that; left
   * away where none was.
   */
  readonly frozen?: {
    readonly on: CivilDate
    readonly daysLeft: number | null
    readonly useBy?: CivilDate
  }
  /** When the oldest of it was finished; null where nobody told. */
  readonly finishedAt: number | null
  readonly batches: readonly {
    readonly batch: string
    readonly startedAt: number
    readonly finishedAt: number | null
  }[]
  /** What its batches were cooked to. */
  readonly cooking: readonly HeatReading[]
  /** All that was read of its cooling so far; of hot food that cools from now on the reading of its start. */
  readonly cooling: readonly Reading[]
  readonly coolingFrom: 'cooked' | 'room'
  /** Until when somebody is there who can read it; left away where it doesn't cool. */
  readonly presentUntil?: number
  /** It missed a first stage and was reheated to be cooled once more. */
  readonly cooledAgain: boolean
  /** It was cooled and reheated before: it isn't cooled again. */
  readonly reheated: boolean
  /** Components whose scoop or probe was in it. */
  readonly soiledBy: readonly string[]
  /**
   * Components that it touched where it stood, also over others and by its scoops, and what they are
   * made of; null: nobody has said what touches what there.
   */
  readonly touched:
    | readonly { readonly component: string; readonly madeOf: readonly string[] }[]
    | null
  /** It stood on the line, or in a back-up pan without protection: it is never a protected back-up. */
  readonly stoodOpen: boolean
  /** Ids of the house's ingredients that are in it. */
  readonly madeOf: readonly string[]
  /** Of those, the version of each label by which it was sold; left away where no house keeps any. */
  readonly labels?: Readonly<Record<string, number>>
  /** Labels of products that were changed since and are still in it: they count beside the ones of today. */
  readonly before: readonly { readonly ingredient: string; readonly label: Label }[]
  /** The newest; null where it isn't read. */
  readonly reading: Reading | null
}

/** Food that was there in the service isn't any more. What was thrown out is `discardSignedOff`. */
export interface FoodEnded {
  readonly type: 'foodEnded'
  readonly what: 'pan' | 'backup' | 'batch'
  readonly id: string
  readonly end: Exclude<End, 'throw-out'>
  readonly component: string
  /** In the component's unit: as it was found now, which may be other than what was believed. */
  readonly amount: number
  readonly how: HowMuch
  /** Id of what is set aside, and what goes along; both left away where the crew ate it. */
  readonly lot?: string
  readonly along?: GoesAlong
}

/** What a place came to, until something is put there anew. */
export interface EndedFood {
  readonly what: 'pan' | 'backup' | 'batch'
  readonly id: string
  readonly end: End
  readonly component: string
  readonly amount: number
  readonly how: HowMuch
  readonly at: number
}
