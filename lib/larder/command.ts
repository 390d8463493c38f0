/** What is asked of the larder, and why it isn't done. */
import type { FreezeProblem } from '#lib/larder/days.ts'
import type { DeliveryRefusal, SaidDelivery, SentBack } from '#lib/larder/delivery.ts'
import type { LotDiscardReason } from '#lib/larder/event.ts'
import type { LotPlace } from '#lib/larder/lot.ts'
import type { Pack } from '#lib/larder/relabelled.ts'
import type { LotProblem } from '#lib/larder/take.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { MomentProblem, ProbeAt, ReadingLack, ReadingQuestion } from '#lib/safety/readings.ts'
import type { Scale, Temperature } from '#lib/safety/temperature.ts'

/** A reading as somebody tells it. */
export interface ToldReading {
  readonly tenths: number
  readonly scale: Scale
  readonly probe: string | null
  readonly where: ProbeAt
  /** When it was taken, epoch milliseconds; now where left away. */
  readonly at?: number | undefined
  readonly scaleConfirmed?: boolean | undefined
  readonly cleaned?: boolean | undefined
}

interface OfLot {
  readonly lot: string
  /** Whoever did it; kept apart from the log. */
  readonly initials?: string | undefined
}

export type LarderCommand =
  | (OfLot & {
      readonly type: 'readLot'
      readonly reading: ToldReading
      /** Of what cools: until when somebody is there who can read it. */
      readonly presentUntil?: number | undefined
    })
  | (OfLot & { readonly type: 'moveLot'; readonly place: LotPlace })
  | (OfLot & {
      readonly type: 'freezeLot'
      readonly preparedOn?: CivilDate | undefined
      readonly useBy?: CivilDate | undefined
    })
  | (OfLot & { readonly type: 'thawLot' })
  | (OfLot & { readonly type: 'throwOutLot'; readonly reason: LotDiscardReason })
  | (OfLot & { readonly type: 'anotherTookLot' })
  | (OfLot & { readonly type: 'lotIsBack' })
  /** Of an ingredient whose label changed since: by the word of somebody in charge. */
  | (OfLot & {
      readonly type: 'confirmLotLabel'
      readonly ingredient: string
      readonly pack: Pack
      /** The version that was seen as the newest. */
      readonly saw: number
    })
  | { readonly type: 'confirmLarderClock'; readonly initials?: string | undefined }
  | {
      readonly type: 'receiveDelivery'
      readonly delivery: SaidDelivery
      readonly initials?: string | undefined
    }
  | {
      readonly type: 'sendBackDelivery'
      readonly delivery: SaidDelivery
      readonly why: SentBack
      readonly initials?: string | undefined
    }

export type LarderRefusal =
  | LotProblem
  | DeliveryRefusal
  | { readonly code: 'needs-initials' }
  | { readonly code: 'lot-not-read'; readonly because: 'frozen' }
  | {
      readonly code: 'lot-reading-asked'
      readonly question: ReadingQuestion
      readonly read: Temperature
    }
  | { readonly code: 'lot-reading-lacks'; readonly lack: ReadingLack }
  | { readonly code: 'lot-wrong-moment'; readonly problem: MomentProblem }
  | { readonly code: 'lot-cannot-freeze'; readonly because: FreezeProblem | 'not-cold' | 'frozen' }
  | { readonly code: 'lot-not-frozen' }
  | { readonly code: 'lot-no-slip' }
  /** Its label is the one by which it was set aside. */
  | { readonly code: 'lot-label-same' }
  /** It changed once more since that was seen. */
  | { readonly code: 'lot-label-newer' }
  | { readonly code: 'nothing-to-confirm' }
  | { readonly code: 'could-not-decide' }
  | { readonly code: 'id-used-for-something-else' }

export type LarderAnswer =
  | { readonly answer: 'accepted'; readonly position: number }
  | { readonly answer: 'refused'; readonly refusal: LarderRefusal }
