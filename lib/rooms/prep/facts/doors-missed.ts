/** Food whose preparation is so late that its pan isn't on the line as the doors open. */
import type { Task } from '#lib/prep/prep-plan.ts'
import { LOAD_MINUTES } from '#lib/prep/tasks-of.ts'
import { isDone, isReading, preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

export interface DoorsMissed {
  readonly component: string
  /** When it is on the line at the soonest, epoch milliseconds, whole minutes. */
  readonly readyAt: number
  /** So long after the doors, milliseconds. */
  readonly lateBy: number
  /** False: nothing says that what is left of it was begun, and it counts from now. */
  readonly isBegun: boolean
}

/** What is passed on says how far it is in these. */
const QUARTERS = 4

interface Ends {
  readonly at: number
  readonly isBegun: boolean
}

/** Of a making: which share of its loads is made, and since when the rest is in hand. */
const madeOf = (
  { batches, prep }: RunningState,
  { kind, component }: Task,
): { readonly share: number; readonly since: number | null } => {
  const own =
    kind === 'cook' || kind === 'make'
      ? Object.values(batches).filter(
          (one) => one.component === component && one.thrownOutAt === null && !one.lot,
        )
      : []
  const planned = prep?.foods.find((food) => food.component === component)?.loads ?? 1
  const made = own.reduce((sum, { loadsDone }) => sum + loadsDone, 0)
  const begun = own.filter(({ finishedAt }) => finishedAt === null)
  return {
    share: Math.min(1, made / planned),
    since: begun.length === 0 ? null : Math.min(...begun.map(({ startedAt }) => startedAt)),
  }
}

/** When a task is over at the soonest, with what comes before it; null where it is done. */
const endsOf = (
  state: RunningState,
  tasks: ReadonlyMap<string, Task>,
  task: Task,
  now: number,
): Ends | null => {
  if (isDone(state, task, now)) return null
  const { from, to } = task
  const [last] = task.after
    .flatMap((id) => tasks.get(id) ?? [])
    .flatMap((one) => {
      const ends = endsOf(state, tasks, one, now)
      // A reading stays as far from its cooking as it was: food cools no faster.
      return ends ? [{ ...ends, at: ends.at + (isReading(task) ? to - one.to : 0) }] : []
    })
    .sort((one, other) => other.at - one.at)
  const free = Math.max(now, last?.at ?? 0)
  if (isReading(task)) return { at: Math.max(free, to), isBegun: last?.isBegun ?? true }
  const { share, since } = madeOf(state, task)
  const far = (state.prep?.passed[task.id]?.far ?? 0) / QUARTERS
  if (since !== null || share > 0 || far > 0) {
    const left = (to - from) * (1 - Math.max(share, far)) - (since === null ? 0 : now - since)
    return { at: free + Math.max(0, left), isBegun: true }
  }
  // What is in its time is taken to be in hand.
  if (!last && from <= now && now <= to) return { at: to, isBegun: true }
  return { at: Math.max(free, from) + to - from, isBegun: last?.isBegun ?? from > now }
}

/**
 * Each food that isn't on the line as the doors open, the last one first. It counts each food's own
 * tasks, one after the other, as long as the plan says; whose hands are full counts no more, so that it
 * is never sooner than is said. Reading and loading its own pans is its share of the line's.
 *
 * @param now epoch milliseconds
 */
export const doorsMissed = (state: RunningState, now: number): readonly DoorsMissed[] => {
  const prepared = preparedOf(state)
  if (!prepared || !state.plan) return []
  const { opensAt } = state.plan
  const tasks = new Map(prepared.tasks.map((task) => [task.id, task]))
  const pans = pansOf(state.station)
  const load = (component: string): number => {
    const own = pans.filter((pan) => pan.component === component).length
    return Math.ceil((LOAD_MINUTES * own) / Math.max(1, pans.length)) * MINUTE_MS
  }
  return (tasks.get('load')?.after ?? [])
    .flatMap((id) => tasks.get(id) ?? [])
    .flatMap((task): readonly DoorsMissed[] => {
      const { component } = task
      const ends = component === null ? null : endsOf(state, tasks, task, now)
      if (component === null || ends === null) return []
      const readyAt = Math.ceil((ends.at + load(component)) / MINUTE_MS) * MINUTE_MS
      const lateBy = readyAt - opensAt
      return lateBy <= 0 ? [] : [{ component, readyAt, lateBy, isBegun: ends.isBegun }]
    })
    .sort((one, other) => other.readyAt - one.readyAt)
}
