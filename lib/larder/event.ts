/** What happens in the larder, past tense, as it lies in its stream. */
import type { DeliveredFood, SentBack } from '#lib/larder/delivery.ts'
import type { Frozen, LotFood, LotPlace } from '#lib/larder/lot.ts'
import type { Pack } from '#lib/larder/relabelled.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Label } from '#lib/station/label.ts'

export interface LotSetAside {
  readonly type: 'lotSetAside'
  readonly lot: string
  readonly amount: number
  readonly food: LotFood
}

export interface LotRead {
  readonly type: 'lotRead'
  readonly lot: string
  readonly reading: Reading
  /** `cooled`: its cooling is over, in time; `out`: it is thrown out. */
  readonly result: 'good' | 'cooled' | 'out'
  readonly presentUntil?: number
}

/** Why one is taken while an older one stands there. */
export const NOT_THE_OLDEST = ['not-found', 'still-cooling', 'for-another-day'] as const
export type NotTheOldest = (typeof NOT_THE_OLDEST)[number]

export interface LotTaken {
  readonly type: 'lotTaken'
  readonly lot: string
  readonly amount: number
  readonly by: { readonly service: string; readonly station: string; readonly batch: string }
  readonly why?: NotTheOldest
}

export interface LotMoved {
  readonly type: 'lotMoved'
  readonly lot: string
  readonly place: LotPlace
}

export interface LotFrozen {
  readonly type: 'lotFrozen'
  readonly lot: string
  readonly frozen: Frozen
}

/** Put into the cold to thaw. */
export interface LotThawed {
  readonly type: 'lotThawed'
  readonly lot: string
  readonly dateMark: DateStamp
}

export const LOT_DISCARD_REASONS = ['past-date', 'not-cooled', 'out-of-limits', 'other'] as const
export type LotDiscardReason = (typeof LOT_DISCARD_REASONS)[number]

export interface LotThrownOut {
  readonly type: 'lotThrownOut'
  readonly lot: string
  readonly amount: number
  readonly reason: LotDiscardReason
}

/** Another class took all of it. */
export interface LotGone {
  readonly type: 'lotGone'
  readonly lot: string
  readonly amount: number
}

/** That was a slip. */
export interface LotBack {
  readonly type: 'lotBack'
  readonly lot: string
}

/** Somebody in charge said of which pack it was made: its label is of this version from now on. */
export interface LotLabelConfirmed {
  readonly type: 'lotLabelConfirmed'
  readonly lot: string
  readonly ingredient: string
  readonly version: number
  readonly pack: Pack
  /** What counts beside that label. */
  readonly before: readonly Label[]
}

export interface LotPastDate {
  readonly type: 'lotPastDate'
  readonly lot: string
}

export interface LotCoolingMissed {
  readonly type: 'lotCoolingMissed'
  readonly lot: string
  readonly stage: 1 | 2
}

export interface LotReadingMissed {
  readonly type: 'lotReadingMissed'
  readonly lot: string
}

export interface LarderClockJumped {
  readonly type: 'larderClockJumped'
  readonly byMs: number
}

/** Somebody said that the clock is right now. */
export interface LarderClockConfirmed {
  readonly type: 'larderClockConfirmed'
  /** What it shows, epoch milliseconds; the larder's time goes on from there, also backwards. */
  readonly wall: number
}

/** A delivered food was taken in. */
export interface DeliveryReceived {
  readonly type: 'deliveryReceived'
  readonly food: DeliveredFood
  /** Another product, or nobody knows: from this version on the house's label of it is unread. */
  readonly labelVersion?: number
}

/** It went back with the driver. */
export interface DeliverySentBack {
  readonly type: 'deliverySentBack'
  readonly food: DeliveredFood
  readonly why: SentBack
}

export type LarderEvent =
  | LotSetAside
  | LotRead
  | LotTaken
  | LotMoved
  | LotFrozen
  | LotThawed
  | LotThrownOut
  | LotGone
  | LotBack
  | LotLabelConfirmed
  | LotPastDate
  | LotCoolingMissed
  | LotReadingMissed
  | LarderClockJumped
  | LarderClockConfirmed
  | DeliveryReceived
  | DeliverySentBack

export type LarderRecorded = LarderEvent & {
  /** 1, 2, 3 … in the larder's stream. */
  readonly position: number
  /** Epoch milliseconds, stamped by the server; never runs backwards. */
  readonly at: number
  /** Of what fell due null. */
  readonly command: string | null
  /** Id of the adult whose passphrase proved it, where one did. */
  readonly adult?: string
  /** Of what fell due: when it was. */
  readonly due?: number
}
