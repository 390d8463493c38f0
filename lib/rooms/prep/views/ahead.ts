/** What the server answers of a day ahead: shared by it and the plan's screen. */
import type { CorrectedYield } from '#lib/recipes/measured-yield.ts'
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface PlannedService
  extends Pick<ServicePlan, 'kind' | 'on' | 'doorsOpen' | 'doorsClose'> {
  readonly service: string
  /** Its doors closed, and nobody ever opened it. */
  readonly isOver: boolean
}

export interface AheadAnswer {
  readonly code: 'done'
  /** Services that are planned, the earliest first. */
  readonly plans: readonly PlannedService[]
  /** The server's time, epoch milliseconds. */
  readonly at: number
  readonly station: StationDocument
  /** Past services of which it was learned; 0: the menu alone tells. */
  readonly past: number
  /** Par of a planned service, by component; empty where none was asked for. */
  readonly wanted: Readonly<Record<string, ParTold>>
  /** Minutes that a making took, as measured. */
  readonly minutes: Readonly<Record<string, number>>
  /** What own batches made of their cards, by component; left away by a server of before. */
  readonly yields?: Readonly<Record<string, CorrectedYield>>
}
