/** The tasks as the crew sees them: what is done, late, in hand, or still to come. */
import type { Task } from '#lib/prep/prep-plan.ts'
import {
  type GoesBack,
  goesBack,
  type OutOfCold,
  outOfCold,
} from '#lib/rooms/prep/facts/out-of-cold.ts'
import { isDone, isReading, preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { coolsOf } from '#lib/rooms/prep/views/cools-of.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import type { RunningState } from '#lib/service/state.ts'

export type TaskIs = 'done' | 'late' | 'now' | 'to-come'

export interface TaskSeen {
  readonly task: Task
  readonly is: TaskIs
  /** Whether the tick can be taken back: it was one, and nothing else says that it is done. */
  readonly isTicked: boolean
  readonly isReading: boolean
  readonly passed: PrepState['passed'][string] | null
  /** The clock of food that lies half done out of the cooler; null where none runs. */
  readonly out: OutOfCold | null
  /** What is said to go back into the cooler as the task ends; null where nothing is. */
  readonly back: GoesBack | null
  /**
   * Of a reading of a pot that cools: by when its stage ends, which is sooner than planned where it was
   * cooked sooner. Epoch milliseconds; null where none cools.
   */
  readonly readBy: number | null
  /** How long ago it should have been over, milliseconds; 0 where it isn't late. */
  readonly lateBy: number
}

const readByOf = (state: RunningState, task: Task, now: number): number | null => {
  if (!isReading(task)) return null
  const ends = coolsOf(state, task, now).pots.flatMap(({ by }) => {
    // Its cooling starts as it is cooked.
    if (task.kind === 'cool') return by.isStarted ? [] : by.since
    return task.kind === 'read-first' ? (by.first ?? []) : by.second
  })
  return ends.length === 0 ? null : Math.min(...ends)
}

/** Late is told of what is within its time no more, and of a reading from the moment at which it is due. */
export const prepList = (state: RunningState, now: number): readonly TaskSeen[] =>
  (preparedOf(state)?.tasks ?? []).map((task) => {
    const readBy = readByOf(state, task, now)
    const lateBy = Math.max(0, now - (readBy ?? task.to))
    const isLate = lateBy > 0
    const isOver = isDone(state, task, now)
    const is = isOver ? 'done' : isLate ? 'late' : task.from <= now ? 'now' : 'to-come'
    const passed = state.prep?.passed[task.id] ?? null
    return {
      ...{ task, is, lateBy: is === 'late' ? lateBy : 0, isReading: isReading(task) },
      isTicked: state.prep?.ticked[task.id] !== undefined,
      passed,
      readBy,
      out: isOver ? null : outOfCold(state.station, task, passed, now),
      back: isOver ? null : goesBack(state.station, task),
    }
  })

/** What is behind comes first, and what is done last. */
const ORDER: Readonly<Record<TaskIs, number>> = { late: 0, now: 1, 'to-come': 2, done: 3 }

const isOutTooLong = ({ out }: TaskSeen): boolean => out !== null && out.is !== 'in-time'

/** Food that is out of the cooler for too long first; then what is late, in hand, to come, done, by its start. */
export const inTurn = (seen: readonly TaskSeen[]): readonly TaskSeen[] =>
  [...seen].sort(
    (one, other) =>
      Number(isOutTooLong(other)) - Number(isOutTooLong(one)) ||
      ORDER[one.is] - ORDER[other.is] ||
      one.task.from - other.task.from,
  )

/**
 * Whether a task is told loudly: food that is out for too long, and of all that are late the first one
 * alone, since whoever sees all of them red sees none.
 * @param turn as `inTurn` has them
 */
export const isLoud = (one: TaskSeen, turn: readonly TaskSeen[]): boolean =>
  isOutTooLong(one) || (one.is === 'late' && turn.find(({ is }) => is === 'late') === one)
