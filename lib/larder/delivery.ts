/** Food as it is delivered: what is said of it, and what is remembered by ingredient. */
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { Arrival, ArrivalLack, ReceivingLimits, TurnedAway } from '#lib/safety/receiving.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'

/** Whether it is the product of last time. Nobody knowing counts as another one. */
export const SAME_PRODUCT = ['same', 'other', 'not-sure'] as const
export type SameProduct = (typeof SAME_PRODUCT)[number]

/** Why it went back with the driver. */
export const SENT_BACK = [
  'too-warm',
  'not-hot',
  'thawed',
  'past-date',
  'damaged',
  'signs-of-warmth',
  'wrong-food',
  'other',
] as const
export type SentBack = (typeof SENT_BACK)[number]

export const MOST_LOT = 40
export const MOST_PACKS = 1_000
/** Of what is packed today nothing has a later date: common practice, no source. */
export const MOST_DAYS_AHEAD = 3_653

export interface DeliveryRead {
  readonly temperature: Temperature
  /** What the probe is called. */
  readonly probe: string
}

/** One food of a delivery, as it lies in the log: nobody's name and no initials. */
export interface DeliveredFood {
  readonly ingredient: string
  readonly name: string
  /** null: it went back before anybody compared it. */
  readonly same: SameProduct | null
  readonly comes: Arrival
  readonly read: DeliveryRead | null
  /** Of what comes frozen: hard, with no sign of thawing. */
  readonly solid: boolean | null
  /** The date on the pack; null: it has none. */
  readonly useBy: CivilDate | null
  /** The lot as it is printed; null: it has none. */
  readonly lot: string | null
  readonly packs: number | null
  /** Its label was looked at, and asks for no cold; left away where that wasn't asked. */
  readonly needsNoCold?: true
}

/** As it is remembered. */
export interface Delivery extends DeliveredFood {
  /** Epoch milliseconds. */
  readonly at: number
  /** null: it was received. */
  readonly sentBack: SentBack | null
}

/** One food of a delivery, as somebody says it. */
export interface SaidDelivery {
  readonly ingredient: string
  readonly same?: SameProduct | undefined
  readonly comes: Arrival
  readonly reading?:
    | {
        readonly tenths: number
        readonly scale: Scale
        readonly probe: string | null
        readonly scaleConfirmed?: boolean | undefined
      }
    | undefined
  readonly solid?: boolean | undefined
  readonly useBy: CivilDate | null
  readonly lot: string | null
  readonly packs?: number | undefined
  readonly needsNoCold?: true | undefined
}

/** What an ingredient is called, and what it is held against, at the station that lists it. */
export interface ReceivingFood {
  readonly name: string
  readonly limits: ReceivingLimits
  readonly timeZone: string
  readonly scale: Scale
  readonly cold: ColdNeed | null
}

/**
 * Food that is held hot or cold on a line: `itself`, as it comes out of its pack; `in-it`: it goes into
 * such food, and may or may not need it. By no label: labels are read for allergens.
 */
export type ColdNeed = 'itself' | 'in-it'

/** What a delivery is decided by beside the larder's own state. */
export interface ReceivingKnown {
  /** null: no station of the house lists it. */
  readonly food: ReceivingFood | null
  /** The version that the house's label gets where another product comes. */
  readonly labelVersion: number
}

export type DeliveryRefusal =
  | { readonly code: 'delivery-no-such-food' }
  | { readonly code: 'delivery-turned-away'; readonly because: TurnedAway }
  | { readonly code: 'delivery-not-read'; readonly lack: ArrivalLack }
  | { readonly code: 'delivery-not-compared' }
  /** It is said to come dry and goes into what is held hot or cold: its label is asked first. */
  | { readonly code: 'delivery-dry-unasked' }
  | { readonly code: 'delivery-lot-too-long'; readonly most: number }
  /** Clams, oysters and mussels come with a tag. */
  | { readonly code: 'delivery-no-lot' }
  | { readonly code: 'delivery-date-far'; readonly useBy: CivilDate }
