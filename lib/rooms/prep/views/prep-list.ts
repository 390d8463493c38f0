/** The tasks as the crew sees them: what is done, late, in hand, or still to come. */
import type { Task } from '#lib/prep/prep-plan.ts'
import { isDone, isReading, preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
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
  /** How long ago it should have been over, milliseconds; 0 where it isn't late. */
  readonly lateBy: number
}

/** Late is told of what is within its time no more, and of a reading from the moment at which it is due. */
export const prepList = (state: RunningState, now: number): readonly TaskSeen[] =>
  (preparedOf(state)?.tasks ?? []).map((task) => {
    const lateBy = Math.max(0, now - task.to)
    const isLate = lateBy > 0
    const isOver = isDone(state, task, now)
    const is = isOver ? 'done' : isLate ? 'late' : task.from <= now ? 'now' : 'to-come'
    return {
      ...{ task, is, lateBy: is === 'late' ? lateBy : 0, isReading: isReading(task) },
      isTicked: state.prep?.ticked[task.id] !== undefined,
      passed: state.prep?.passed[task.id] ?? null,
    }
  })
