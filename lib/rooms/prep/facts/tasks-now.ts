/** The tasks of a planned service, and what of them is done. */
import type { Prepared, Task } from '#lib/prep/prep-plan.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { prepPlanOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface Worked {
  readonly plan: ServicePlan
  readonly station: StationDocument
  readonly foods: PrepState['foods']
  readonly prepared: Prepared
}

/** Worked out once for as long as nothing changes that it depends on. */
const worked = new WeakMap<PrepState['foods'], Worked>()

/** null where nobody planned its preparation. */
export const preparedOf = ({ plan, prep, station }: RunningState): Prepared | null => {
  if (!plan || !prep) return null
  const before = worked.get(prep.foods)
  if (before && before.plan === plan && before.station === station) return before.prepared
  const prepared = tasksOf(prepPlanOf(station, plan, prep))
  worked.set(prep.foods, { plan, station, foods: prep.foods, prepared })
  return prepared
}

/** A reading is taken of its batch, with probe and initials: no tick stands for one. */
export const isReading = ({ kind }: Pick<Task, 'kind'>): boolean =>
  kind === 'cool' || kind === 'read-first' || kind === 'read-cold'

/** Loading and serving are the service's own, once it is open. */
export const isOfCrew = ({ kind }: Pick<Task, 'kind'>): boolean =>
  kind !== 'load' && kind !== 'serve'

/** Loads of a component that were made for this service and got so far; a lot of the larder is none. */
const loadsMade = (
  { batches }: RunningState,
  component: string,
  loadsOf: (batch: BatchState) => number,
): number =>
  Object.values(batches)
    .filter((one) => one.component === component && one.thrownOutAt === null && !one.lot)
    .reduce((sum, batch) => sum + loadsOf(batch), 0)

/**
 * Whether what is in the log says that it is done: a tick, as many finished loads as are planned, or as
 * many that were read in their limit.
 */
export const isDone = (state: RunningState, task: Task, now: number): boolean => {
  const { id, kind, component } = task
  const planned = state.prep?.foods.find((food) => food.component === component)?.loads ?? 1
  if (component !== null && isReading(task)) {
    const isRead = (batch: BatchState): boolean => {
      const stage = coolingOf(state.station, batch, now)?.state
      if (kind === 'cool') return stage !== undefined && stage !== 'no-start'
      return stage === 'cooled' || (kind === 'read-first' && stage === 'second-stage')
    }
    return loadsMade(state, component, (one) => (isRead(one) ? one.loads : 0)) >= planned
  }
  if (state.prep?.ticked[id] !== undefined) return true
  const isMade = kind === 'cook' || kind === 'make'
  return (
    isMade && component !== null && loadsMade(state, component, (one) => one.loadsDone) >= planned
  )
}
