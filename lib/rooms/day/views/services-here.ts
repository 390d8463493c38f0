/** GET /services: which service of a station is followed, and which are planned. */
import { inNoBatch } from '#lib/rooms/prep/facts/in-no-batch.ts'
import type { PlannedPeriod, ServicePlan } from '#lib/service/events/plan-event.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

/** A service that is planned, as it is told beside others. */
export interface PlannedHere extends PlannedPeriod, Pick<ServicePlan, 'kind'> {
  /** How many batches of it there are that weren't thrown out. */
  readonly batches: number
  /** Names of foods that its tasks began and no batch counts; left away where there are none. */
  readonly inNoBatch?: readonly string[]
}

export interface ServicesHere {
  readonly station: { readonly id: string; readonly timeZone: string } | null
  /** The one that is open, else the one that was opened last; null where none ever was. */
  readonly followed: { readonly service: string; readonly isOpen: boolean } | null
  /** The server's time, epoch milliseconds. */
  readonly at: number
  /** The earliest first. */
  readonly planned: readonly PlannedHere[]
}

/** What is told of a planned service; null of any other. */
export const plannedHere = (service: string, state: ServiceState): PlannedHere | null => {
  const { plan } = state
  if (!isRunning(state) || state.stage !== 'planned' || !plan) return null
  const { kind, on, doorsOpen, doorsClose, opensAt, closesAt } = plan
  const batches = Object.values(state.batches).filter((one) => one.thrownOutAt === null).length
  const begun = inNoBatch(state).map((id) => componentOf(state.station, id).name)
  return {
    ...{ service, kind, on, doorsOpen, doorsClose, opensAt, closesAt, batches },
    ...(begun.length === 0 ? {} : { inNoBatch: begun }),
  }
}

/** Whose prep is followed where none is asked for: the next to come; of those that are over none. */
export const nextPlanned = ({ planned, at }: ServicesHere): PlannedHere | null =>
  planned.find(({ closesAt }) => closesAt > at) ?? null

/** What is planned beside the service that a screen follows. */
export const plannedBeside = (
  { planned }: Pick<ServicesHere, 'planned'>,
  service: string | null,
): readonly PlannedHere[] => planned.filter((one) => one.service !== service)

/** What a plan is next to now: to come, on this very day, or over without an opening. */
export const whenOf = (
  { on, closesAt }: Pick<PlannedHere, 'on' | 'closesAt'>,
  now: number,
  today: string,
): 'over' | 'today' | 'ahead' => (closesAt <= now ? 'over' : on === today ? 'today' : 'ahead')

/** GET /services/crew: initials of who is there on a planned day, by the id of each entry of its crew. */
export interface CrewHere {
  readonly names: Readonly<Record<string, string>>
}
