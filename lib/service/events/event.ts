import type { Amounts, BuildChoice } from '#lib/service/events/build-choice.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import type {
  FinishedFood,
  FoodEvent,
  LoadedFood,
  OpenedFood,
} from '#lib/service/events/food-event.ts'
import type { LabelVersions, LineEvent } from '#lib/service/events/line-event.ts'
import type { PlanEvent, ServiceKind } from '#lib/service/events/plan-event.ts'
import type { PrepEvent } from '#lib/service/events/prep-event.ts'
import type { CorrectedBy, OpenedStock, StockEvent } from '#lib/service/events/stock-event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import type { AnyStationDocument } from '#lib/station/any-station-document.ts'
import type { Asked, Handling, Need, NeedCode } from '#lib/station/codes/codes.ts'
import type { Portion } from '#lib/station/portion.ts'
import type { Declaration } from '#lib/station/station-document.ts'

/** One build of a ticket, as it was accepted. */
export interface AcceptedBuild {
  readonly letter: string
  readonly choice: BuildChoice
  readonly takes: Amounts
  readonly priceCents: number
}

interface OfBuild {
  readonly ticket: number
  readonly letter: string
}

/** Why a build may not go on: a need told late, a label, what touched what, a pan that is off sale. */
export type HoldReason = 'need' | 'label' | 'contact' | 'off-sale'

export type StopReason = 'change' | 'cancel' | 'throw-out' | HoldReason

/** One caution as it stood when it was accepted. */
export interface AcceptedFinding {
  readonly component: string
  readonly need: NeedCode
  readonly why: 'may-contain' | 'not-listed' | 'soiled' | 'contact' | 'unknown'
  /** The component that it shares contact with, for `contact` and `soiled`. */
  readonly touches: string | null
  /** All that reach it and may have it in them: it counts for these and no others. */
  readonly reached: readonly string[]
  /** What it and each of these declared: it counts for nothing worse. Left away by older logs. */
  readonly states?: Readonly<Record<string, Declaration>>
}

export interface ServiceOpened extends OpenedStock, OpenedFood {
  readonly type: 'serviceOpened'
  readonly service: string
  readonly kind: ServiceKind
  readonly revision: number
  readonly station: AnyStationDocument
  /** Versions of the house's labels that are in it; left away where no house keeps any. */
  readonly labels?: LabelVersions
  readonly portions: Readonly<Record<string, Portion>>
  /** Civil date by which labels count as read long ago; left away: none does. */
  readonly servedOn?: string
  /** Epoch milliseconds at which a forgotten demo closes itself. */
  readonly closesItselfAt: number | null
}
export interface PanLoaded extends LoadedFood {
  readonly type: 'panLoaded'
  readonly pan: string
  readonly amount: number
  /** It was emptied and washed before: nothing foreign is in it any more. */
  readonly washed?: boolean
}
export interface PanChanged extends LoadedFood {
  readonly type: 'panChanged'
  readonly pan: string
  /** What the pan that went away still held. */
  readonly takenAway: number
  readonly amount: number
}
export interface CountCorrected extends CorrectedBy {
  readonly type: 'countCorrected'
  readonly pan: string
  readonly from: number
  readonly to: number
}
export interface TicketSent {
  readonly type: 'ticketSent'
  readonly ticket: number
  readonly named: boolean
  readonly paid: boolean
  readonly builds: readonly AcceptedBuild[]
}
export interface BuildChanged extends OfBuild {
  readonly type: 'buildChanged'
  readonly to: AcceptedBuild
}
export interface BuildCancelled extends OfBuild {
  readonly type: 'buildCancelled'
}
export interface BuildStopped extends OfBuild {
  readonly type: 'buildStopped'
  readonly reason: StopReason
  /** What it becomes; null where it is cancelled. */
  readonly to: AcceptedBuild | null
}
export interface StopAcknowledged extends OfBuild {
  readonly type: 'stopAcknowledged'
  readonly foodInIt: boolean
  /** What was thrown out, by pan; empty where no food was in it. */
  readonly wasted: readonly Taking[]
  /** What was thrown out beyond what the pans were counted to hold. */
  readonly uncounted: Amounts
  /** Components that were in it; all that it takes where left away. */
  readonly inIt?: readonly string[]
  /** Made builds that it couldn't be told from, by name: all of them were thrown out. */
  readonly mixedUpWith?: readonly string[]
}
export interface BuildStarted extends OfBuild {
  readonly type: 'buildStarted'
  /** Components that are taken out of their protected back-up pans; left away without needs. */
  readonly behind?: readonly string[]
  /** Name of the assembly screen at which it is made; left away where none was said. */
  readonly screen?: string
  /** It was being made at another screen, and goes on at this one: its food is what it was. */
  readonly tookOver?: true
}
export interface BuildFinished extends OfBuild, FinishedFood {
  readonly type: 'buildFinished'
  readonly took: readonly Taking[]
  /** What it took beyond what the pans were counted to hold. */
  readonly uncounted: Amounts
}
export interface FinishTakenBack extends OfBuild {
  readonly type: 'finishTakenBack'
}
export interface BuildRemade extends OfBuild {
  readonly type: 'buildRemade'
  readonly from: 'made' | 'handed-over'
  /** Made builds that it couldn't be told from, by name: all of them were thrown out. */
  readonly mixedUpWith?: readonly string[]
}
export interface BuildHandedOver extends OfBuild {
  readonly type: 'buildHandedOver'
}
export interface TicketPaid {
  readonly type: 'ticketPaid'
  readonly ticket: number
  readonly paid: boolean
  /** The lead wrote it off: it isn't paid, and nothing is to come any more. */
  readonly writtenOff?: true
}
export interface SellingStopped {
  readonly type: 'sellingStopped'
  readonly what: 'component' | 'item'
  readonly id: string
}
export type SellingResumed = Omit<SellingStopped, 'type'> & { readonly type: 'sellingResumed' }
/** The certified adult proved to be there, by passphrase. */
export interface InChargeSignedOn {
  readonly type: 'inChargeSignedOn'
}
export type InChargeSignedOff = { readonly type: 'inChargeSignedOff' }
export interface CautionAccepted {
  readonly type: 'cautionAccepted'
  /** 1, 2, 3 ... of its service. */
  readonly caution: number
  readonly item: string
  /** Key of the food that it was accepted of: its item, base, and where and how much of each part. */
  readonly food: string
  readonly needs: readonly { readonly code: NeedCode; readonly handling: Handling }[]
  readonly findings: readonly AcceptedFinding[]
  readonly reason: CautionReason
}
/** A guest told of a need after sending: the build is held as by `buildHeld`, and what it keeps from is known. */
export interface NeedTold extends OfBuild {
  readonly type: 'needTold'
  readonly asked: Asked
  readonly needs: readonly Need[]
}
/** A build that no longer fits its guest, or took from `pan`, which is off sale: it stops at once. */
export interface BuildHeld extends OfBuild {
  readonly type: 'buildHeld'
  readonly reason: HoldReason
  readonly pan?: string
  /** What it was to become is dropped by it: its guest has to be told. */
  readonly dropsChange?: true
}
/** What it was held for is over, and no food was made: it waits as it was accepted. */
export interface HoldLifted extends OfBuild {
  readonly type: 'holdLifted'
}
export interface ClockJumped {
  readonly type: 'clockJumped'
  readonly byMs: number
}
export type ClockConfirmed = { readonly type: 'clockConfirmed' }
export interface ServiceClosed {
  readonly type: 'serviceClosed'
  readonly why: 'by-hand' | 'demo-left-open'
}

/** What happened in a service. Past tense; the truth that every screen folds. */
export type ServiceEvent =
  | ServiceOpened
  | PanLoaded
  | PanChanged
  | CountCorrected
  | TicketSent
  | BuildChanged
  | BuildCancelled
  | BuildStopped
  | StopAcknowledged
  | BuildStarted
  | BuildFinished
  | FinishTakenBack
  | BuildRemade
  | BuildHandedOver
  | TicketPaid
  | SellingStopped
  | SellingResumed
  | InChargeSignedOn
  | InChargeSignedOff
  | CautionAccepted
  | NeedTold
  | BuildHeld
  | HoldLifted
  | LineEvent
  | PlanEvent
  | PrepEvent
  | ClockJumped
  | ClockConfirmed
  | StockEvent
  | FoodEvent
  | ServiceClosed

/** Where and when an event lies in the log of its service. */
export interface Stamp {
  readonly position: number
  /** Epoch milliseconds, the server's. */
  readonly at: number
  /** Id of the command that caused it; null for what fell due. */
  readonly command: string | null
  /** The moment at which it fell due, where it did. */
  readonly due?: number
  /** Id of the adult whose passphrase proved the command; left away where none did. */
  readonly adult?: string
}

export type Recorded = ServiceEvent & Stamp
