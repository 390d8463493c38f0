/** The part of a service's state that is about demand, what is believed of the pans, and advice. */

import type { Told } from '#lib/estimate/advice.ts'
import type { AdviceReason } from '#lib/estimate/advice-reason.ts'
import type { Measures } from '#lib/estimate/nearest-scoop.ts'
import type { StockBelief } from '#lib/estimate/scoop-bias.ts'
import { noCounts, type ServiceCounts } from '#lib/estimate/service-counts.ts'
import { type BuildTimes, NO_BUILD_TIMES } from '#lib/estimate/wait.ts'
import type { DiscardReason } from '#lib/service/events/food-event.ts'
import type { KnownBias, WasteReason } from '#lib/service/events/stock-event.ts'
import type { Portion } from '#lib/station/portion.ts'

/** loaded + corrected = in pan and behind + used + wasted + takenAway + setAside, by component. */
export interface Account {
  readonly onTickets: number
  readonly used: number
  readonly wasted: number
  readonly loaded: number
  readonly corrected: number
  readonly takenAway: number
  /** For another service; left away where nothing was. */
  readonly setAside?: number
}

/** Portions kept of a component for some orders. */
export interface Keep {
  readonly portions: number
  /** Ids of items, codes of needs, or `kept-apart`. */
  readonly for: readonly string[]
  /** Tickets from this number on take from it. */
  readonly fromTicket: number
  /** Portions that builds for which it is kept have taken of it since. */
  readonly taken: number
  readonly at: number
}

/** Tools that stand in for a component's own scoop. */
export interface StandIn {
  readonly measures: readonly Measures[]
  /** The portion as it should be. */
  readonly usual: Portion
  /** How heavy its own scoop was, for when it is back. */
  readonly ownBias: KnownBias
  readonly at: number
}

/** A scoop that is, or was, lent: what its tool has been in and the component touch each other. */
export interface LentScoop {
  readonly component: string
  /** The component whose own scoop it is, or that it had been in before. */
  readonly by: string
  /** Pans of the line, of both, that weren't changed since. */
  readonly pans: readonly string[]
  /** Since when, epoch milliseconds. */
  readonly since: number
  /** And since where in the log: food that was made before wasn't touched. */
  readonly sinceIn?: number
}

/** Amounts by reason: of waste, and of what was thrown out with initials. */
export type WastedFor = Readonly<Partial<Record<WasteReason | DiscardReason, number>>>

export type AdviceEntry = Told & { readonly reason: AdviceReason }

/** loaded + corrected = in pan and behind + used + wasted + takenAway, by component. */
export interface Account {
  readonly onTickets: number
  readonly used: number
  readonly wasted: number
  readonly loaded: number
  readonly corrected: number
  readonly takenAway: number
}

/** A build that waits for more of what it lacks. */
export interface WaitsFor {
  readonly component: string
  readonly at: number
}

export interface StockState {
  /** Minute of the civil day at which the service was opened. */
  readonly openedMinute: number
  /** Civil date of the opening, by which labels are too old; left away by older logs, and of what is invented. */
  readonly servedOn?: string
  /** Guests expected; null where nobody said. */
  readonly expected: number | null
  /** When it is to close, epoch milliseconds; null where nobody said. */
  readonly closesAt: number | null
  readonly assemblers: number
  /** What guests wanted so far. */
  readonly counts: ServiceCounts
  /** What the pans of a component really hold, and how heavy it is scooped, in portions. */
  readonly beliefs: Readonly<Record<string, StockBelief>>
  /** When a component's pans were last weighed, counted or looked at. */
  readonly lookedAt: Readonly<Record<string, number>>
  readonly keeps: Readonly<Record<string, Keep>>
  /** Components whose own scoop is missing. */
  readonly standIns: Readonly<Record<string, StandIn>>
  /** By tool: components that it has been in beside its own since it was washed. */
  readonly toolsIn: Readonly<Record<string, readonly string[]>>
  /** By "rice/beans": scoops that stand in or stood in, until the pans of both are clean. */
  readonly lent: Readonly<Record<string, LentScoop>>
  /** What was wasted or thrown out, by component and reason, in the component's unit. */
  readonly wastes: Readonly<Record<string, WastedFor>>
  readonly adviceLog: readonly AdviceEntry[]
  readonly buildTimes: BuildTimes
  /** Short builds that wait, by "21A". */
  readonly waits: Readonly<Record<string, WaitsFor>>
}

export const NO_STOCK: StockState = {
  openedMinute: 0,
  expected: null,
  closesAt: null,
  assemblers: 1,
  counts: noCounts(0, 0, null),
  beliefs: {},
  lookedAt: {},
  keeps: {},
  standIns: {},
  toolsIn: {},
  lent: {},
  wastes: {},
  adviceLog: [],
  buildTimes: NO_BUILD_TIMES,
  waits: {},
}
