/** A service before it opens: what is planned of it, and what becomes of the plan. */
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { Portion } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A practice teaches no forecast, and a demo teaches demos. */
export type ServiceKind = 'demo' | 'real' | 'practice'

/** Guests who come together; `label` says which, and is nobody's name. */
export interface PlannedGroup {
  readonly label: string
  readonly guests: number
  /** When they come, "HH:MM"; left away where nobody said. */
  readonly at?: string
}

/** Somebody who is there, without their initials, which lie in the second file. */
export interface PlannedCrew {
  /** `c1`, `c2` … in the order in which the plan names them. */
  readonly id: string
  /** A certified adult. */
  readonly adult: boolean
  /** Civil date; the day of the service, or one before it. */
  readonly on: string
  /** "HH:MM" of that date. */
  readonly from: string
  readonly to: string
}

export interface ServicePlan {
  readonly kind: Exclude<ServiceKind, 'demo'>
  /** Civil date in the station's time zone. */
  readonly on: string
  /** "HH:MM" of that date. */
  readonly doorsOpen: string
  readonly doorsClose: string
  /** The same as instants, epoch milliseconds. */
  readonly opensAt: number
  readonly closesAt: number
  /** Id of one of the document's bell schedules; null: none. */
  readonly bells: string | null
  readonly guests: {
    /** Who comes as they like; null where nobody said. */
    readonly walkIn: number | null
    readonly groups: readonly PlannedGroup[]
  }
  /** Ids of the items on sale; null: all of them. */
  readonly items: readonly string[] | null
  readonly crew: readonly PlannedCrew[]
}

/** When a service is planned for, epoch milliseconds beside what was said. */
export interface PlannedPeriod
  extends Pick<ServicePlan, 'on' | 'doorsOpen' | 'doorsClose' | 'opensAt' | 'closesAt'> {
  readonly service: string
}

/** A station's document as a planned service has it, with what its food of before was made of. */
interface Followed {
  readonly revision: number
  readonly station: StationDocument
  readonly labels?: LabelVersions
  readonly portions: Readonly<Record<string, Portion>>
}

export interface ServicePlanned extends Followed {
  readonly type: 'servicePlanned'
  readonly service: string
  readonly plan: ServicePlan
  /** Minute of the civil day at which doors open: 0 to under 1,440. */
  readonly minuteOfDay: number
}
export interface PlanChanged {
  readonly type: 'planChanged'
  readonly plan: ServicePlan
  readonly minuteOfDay: number
}
/** A newer document was published: a service that is planned follows it until it opens. */
export interface PlanFollowed extends Followed {
  readonly type: 'planFollowed'
}
/** It is never opened. */
export interface PlanDropped {
  readonly type: 'planDropped'
}

export type PlanEvent = ServicePlanned | PlanChanged | PlanFollowed | PlanDropped
