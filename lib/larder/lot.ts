/** Food that is set aside between services: what is known of it, and what waits to be done with it. */
import type { Deliveries } from '#lib/larder/deliveries.ts'
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { CoolingFrom } from '#lib/safety/cooling.ts'
import type { CivilDate, DateStamp } from '#lib/safety/date-stamp.ts'
import type { LocalVariant } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { Label } from '#lib/station/label.ts'

export type LotKept = 'cold' | 'cooling' | 'frozen' | 'dry'

/** In the freezer no day passes; those that were used before stay used. */
export interface Frozen {
  readonly on: CivilDate
  /** From the day of thawing, with it; at least 1. */
  readonly daysLeft: number
  /** The maker's, which no freezing moves. */
  readonly useBy: CivilDate | null
}

/** What a lot brings along from the service that set it aside. */
export interface LotFood {
  readonly component: string
  /** As its station calls it. */
  readonly name: string
  readonly unit: 'mg' | 'piece'
  readonly from: {
    readonly service: string
    readonly station: string
    readonly what: 'pan' | 'backup' | 'batch'
    readonly id: string
  }
  readonly how: 'weighed' | 'counted' | 'eye' | 'not-checked'
  readonly kept: LotKept
  /** Whether it was hot, or made from what stood at room temperature. */
  readonly cooledFrom: CoolingFrom
  readonly cooling: readonly Reading[]
  /** It was reheated to be cooled once more. */
  readonly cooledAgain: boolean
  /** It was cooled and reheated before. */
  readonly reheated: boolean
  /** What its batches were cooked to. */
  readonly cooking: readonly HeatReading[]
  /** Of it as it is kept cold. */
  readonly readings: readonly Reading[]
  /** When the oldest of it was begun and finished, epoch milliseconds; null where nobody told. */
  readonly startedAt: number | null
  readonly finishedAt: number | null
  /** null: frozen, or dry food that nobody dated. */
  readonly dateMark: DateStamp | null
  readonly frozen: Frozen | null
  /** Components whose scoop or probe was in it. */
  readonly soiledBy: readonly string[]
  /**
   * Components that it touched where it stood, and what they are made of; null: nobody has said what
   * touches what there.
   */
  readonly touched:
    | readonly { readonly component: string; readonly madeOf: readonly string[] }[]
    | null
  /** Batches that it is of, in its service. */
  readonly batches: readonly string[]
  /** It stood open on the line: it never becomes a protected back-up. */
  readonly stoodOpen: boolean
  /** Ids of the house's ingredients that are in it, sorted; what is in `before` stands there alone. */
  readonly madeOf: readonly string[]
  /** The version of each label by which it was sold; null where no house keeps any. */
  readonly labels: Readonly<Record<string, number>> | null
  /** Labels of products of before that are still in it. */
  readonly before: readonly { readonly ingredient: string; readonly label: Label }[]
  /** Until when somebody said to be there who can read it, epoch milliseconds. */
  readonly presentUntil: number | null
  /** What binds it: local limits, time zone and thermometer of its station. */
  readonly under: {
    readonly limits: LocalVariant
    readonly timeZone: string
    readonly scale: Scale
  }
}

export const LOT_PLACES = ['walk-in', 'reach-in', 'freezer'] as const

/** Where it stands, as a label says it. */
export interface LotPlace {
  readonly where: (typeof LOT_PLACES)[number]
  /** Counted from the top, 1 to 9. */
  readonly shelf: number
}

/** Why it goes into the bin and nowhere else. */
export type LotBound = 'date' | 'cooling-missed' | 'out-of-limits'

export interface Lot extends LotFood {
  /** Whole milligrams or pieces, more than 0. */
  readonly amount: number
  readonly setAsideAt: number
  /** Since when it is kept as it is. */
  readonly since: number
  /** How often its amount changed: what its guard is at. */
  readonly version: number
  readonly place: LotPlace | null
  readonly bound: { readonly why: LotBound; readonly since: number } | null
  /** A reading is missed since then: unread it isn't taken. */
  readonly unreadSince: number | null
}

export type GoneHow = 'taken' | 'thrown-out' | 'another-class'

/** A lot that isn't there any more. */
export interface GoneLot {
  readonly component: string
  readonly at: number
  readonly how: GoneHow
  readonly version: number
  /** What another class took, in case that was a slip. */
  readonly lot: Lot | null
}

export interface LarderState {
  readonly lots: Readonly<Record<string, Lot>>
  /** The newest of those that are gone. */
  readonly gone: Readonly<Record<string, GoneLot>>
  readonly deliveries: Deliveries
  /** The wall clock ran away by so much, and nobody has said yet whether it is right now. */
  readonly clockJump: { readonly byMs: number } | null
  readonly at: number
  readonly position: number
}

export const EMPTY_LARDER: LarderState = {
  lots: {},
  gone: {},
  deliveries: {},
  clockJump: null,
  at: 0,
  position: 0,
}

export const lotIn = ({ lots }: Pick<LarderState, 'lots'>, id: string): Lot | undefined =>
  Object.hasOwn(lots, id) ? lots[id] : undefined

export const goneIn = ({ gone }: Pick<LarderState, 'gone'>, id: string): GoneLot | undefined =>
  Object.hasOwn(gone, id) ? gone[id] : undefined
