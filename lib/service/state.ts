import type { MadeUntil } from '#lib/safety/time-control.ts'
import type { Amounts, BuildChoice } from '#lib/service/events/build-choice.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import type {
  AcceptedBuild,
  AcceptedFinding,
  HoldReason,
  StopReason,
} from '#lib/service/events/event.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { ServiceKind, ServicePlan } from '#lib/service/events/plan-event.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { type ClockJump, type FoodState, type HeldStock, NO_FOOD } from '#lib/service/food-state.ts'
import { type Account, NO_STOCK, type StockState } from '#lib/service/stock-state.ts'
import type { Asked, Handling, Need, NeedCode } from '#lib/station/codes/codes.ts'
import type { Portion } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export type BuildState = 'waiting' | 'making' | 'made' | 'handed-over' | 'cancelled'

export interface Stop {
  readonly reason: StopReason
  readonly at: number
  readonly to: AcceptedBuild | null
}

/** A build that may not go on as it is. It is lifted by a change that fits, or ends cancelled. */
export interface Hold {
  readonly reason: HoldReason
  readonly at: number
  /** What the guest answered when the need was told; null where they told none. */
  readonly told: { readonly asked: Asked; readonly needs: readonly Need[] } | null
  /** Pans that it took from and that are off sale, where that is why. */
  readonly pans?: readonly string[]
  /** A change that its guest asked for was dropped by it, so that a person answers. */
  readonly dropsChange?: true
}

/** A caution that the person in charge accepted with the guest, for one build. */
export interface Acceptance {
  readonly item: string
  /** Key of the food that was accepted. */
  readonly food: string
  readonly needs: readonly { readonly code: NeedCode; readonly handling: Handling }[]
  readonly findings: readonly AcceptedFinding[]
  readonly reason: CautionReason
  readonly at: number
  /** "21A": the build that was accepted under it; null while none was. */
  readonly build: string | null
}

/** A handed-over build whose guest is to be found. */
export interface ToFind {
  readonly ticket: number
  readonly letter: string
  readonly reason: HoldReason
  readonly at: number
}

export interface LabelChange {
  readonly ingredient: string
  readonly at: number
  /** Whether the new label was read; until then nothing of it counts as free. */
  readonly read: boolean
}

/** What a guest had of a build that was made again since. */
export type HadBefore = Pick<
  Build,
  'took' | 'takes' | 'madeAt' | 'since' | 'begunIn' | 'madeIn' | 'behind'
> & {
  /** What it was for its guest then. */
  readonly choice?: BuildChoice
}

export interface Build {
  readonly letter: string
  readonly state: BuildState
  readonly choice: BuildChoice
  readonly priceCents: number
  /** What it takes; on tickets while it is waiting or making. */
  readonly takes: Amounts
  /** What it took when it was finished. */
  readonly took: readonly Taking[]
  readonly stop: Stop | null
  readonly hold: Hold | null
  /** Its guest told a need once they had the food, which was left with them. */
  readonly told: boolean
  /** How often it was thrown out and started again. */
  readonly remakes: number
  /** Counts how often its choice changed, so that nobody starts what they haven't seen. */
  readonly version: number
  /** Until when made food may wait and be handed over; null while it isn't made. */
  readonly until: MadeUntil | null
  /** When it was last finished, epoch milliseconds; left away until it is. */
  readonly madeAt?: number
  /** Where in the log it was started and finished; left away until it is. */
  readonly begunIn?: number
  readonly madeIn?: number
  /** Components that were taken out of their protected back-up pans as it was started. */
  readonly behind?: readonly string[]
  /** Name of the assembly screen at which it is, or was, made; left away until one is said. */
  readonly screen?: string
  /** Name of the screen at which it was being made until `screen` took it over. */
  readonly tookFrom?: string
  /** Left away where it was never made again once it was handed over. */
  readonly had?: readonly HadBefore[]
  /** Throw-out time of what was made and taken back: it binds what is finished instead. */
  readonly boundTo?: number
  /** When it reached its state, epoch milliseconds. */
  readonly since: number
  /**
   * The `since` of a build in the making, once the clock was set back after it: no moment tells any
   * more what came after its start. It counts for nothing in another state.
   */
  readonly setBackSince?: number
}

/** What was in pans of a component, or shared a scoop with it, until that was cleaned or changed. */
export interface Wiped {
  readonly where: 'line' | 'behind' | 'lent'
  readonly component: string
  /** The component whose scoop it was. */
  readonly by: string
  /** Where in the log it may have begun, and where it was over. */
  readonly from: number
  readonly until: number
}

export interface Ticket {
  readonly number: number
  /** Id of the command that sent it: the key under which a name is kept elsewhere. */
  readonly sentBy: string | null
  readonly named: boolean
  readonly sentAt: number
  readonly paid: boolean
  /** Nothing is to come of it any more, though it isn't paid; left away until it is written off. */
  readonly writtenOff?: true
  readonly builds: readonly Build[]
}

/** What a pan of the line holds. */
export type PanState = HeldStock

export interface ServiceState extends StockState, FoodState {
  readonly stage: 'none' | 'planned' | 'open' | 'closed'
  readonly service: string
  readonly kind: ServiceKind
  /** Left away where it was opened without one. */
  readonly plan?: ServicePlan
  /** Left away until its preparation is planned. */
  readonly prep?: PrepState
  readonly revision: number
  readonly station: StationDocument | null
  readonly portions: Readonly<Record<string, Portion>>
  /** When it was opened, epoch milliseconds; while it is planned, when its doors are to open. */
  readonly openedAt: number
  readonly closesItselfAt: number | null
  readonly closedAt: number | null
  readonly nextTicket: number
  /** Tickets with a build that isn't handed over or cancelled. */
  readonly tickets: Readonly<Record<string, Ticket>>
  /** The others, by chunk and place in it, so that no copy grows with the length of the service. */
  readonly past: Readonly<Record<string, Readonly<Record<string, Ticket>>>>
  readonly pans: Readonly<Record<string, PanState>>
  readonly accounts: Readonly<Record<string, Account>>
  /** Left away until one is. */
  readonly wiped?: readonly Wiped[]
  /** What isn't sold by our choice, and since when. */
  readonly notSelling: {
    readonly component: Readonly<Record<string, number>>
    readonly item: Readonly<Record<string, number>>
  }
  /** Since when the person in charge is signed on; null: nobody is. */
  readonly inCharge: number | null
  /** Acceptances of cautions by their number, as `c1`. */
  readonly cautions: Readonly<Record<string, Acceptance>>
  readonly nextCaution: number
  /** Components whose protected back-up pan stands ready, and since when. */
  readonly backups: Readonly<Record<string, number>>
  /** Handed-over builds whose guests are to be found, by "21A". */
  readonly toFind: Readonly<Record<string, ToFind>>
  /**
   * By ingredient: pans that still hold the product of before, and the ids under which that counts
   * in this service's copy of the document.
   */
  readonly mixing: Readonly<
    Record<string, { readonly pans: readonly string[]; readonly before: readonly string[] }>
  >
  /** Labels that changed in this service, oldest first. */
  readonly labelChanges: readonly LabelChange[]
  /** Of the house's labels that are in the station's document; left away where no house keeps any. */
  readonly labelVersions?: LabelVersions
  /** Of the station's document whose contacts it took; left away while they are its own. */
  readonly contactsRevision?: number
  readonly made: number
  readonly handedOver: number
  /** A jump of the server's clock that nobody has confirmed: nothing falls due by it. */
  readonly clockJump: ClockJump | null
  /** Time of the newest event, epoch milliseconds. */
  readonly at: number
  /** Where that lies in the log. */
  readonly position: number
}

/** A service that is planned, open or closed, so that its station is there. */
export type RunningState = ServiceState & { readonly station: StationDocument }

export const isRunning = (state: ServiceState): state is RunningState => state.station !== null

/** Planned or open: its food is cooked, read and thrown out, and things fall due in it. */
export const isUnderWay = (state: ServiceState): state is RunningState =>
  isRunning(state) && state.stage !== 'closed'

export const NOT_OPENED: ServiceState = {
  ...NO_STOCK,
  ...NO_FOOD,
  stage: 'none',
  service: '',
  kind: 'real',
  revision: 0,
  station: null,
  portions: {},
  openedAt: 0,
  closesItselfAt: null,
  closedAt: null,
  nextTicket: 1,
  tickets: {},
  past: {},
  pans: {},
  accounts: {},
  notSelling: { component: {}, item: {} },
  inCharge: null,
  cautions: {},
  nextCaution: 1,
  backups: {},
  toFind: {},
  mixing: {},
  labelChanges: [],
  made: 0,
  handedOver: 0,
  clockJump: null,
  at: 0,
  position: 0,
}
