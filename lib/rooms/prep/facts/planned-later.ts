/** For which later day a plan has a making that is about to be started. */
import { civilDate } from '#lib/measure/civil.ts'
import { isDone, preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import type { RunningState } from '#lib/service/state.ts'

/**
 * When the plan has it, epoch milliseconds, where that is on a later day than it is started; null where it
 * is for that very day or one before it, is made by now, or nobody planned it.
 *
 * @param startedAt epoch milliseconds
 */
export const plannedLater = (
  state: RunningState,
  component: string,
  startedAt: number,
): number | null => {
  const { timeZone } = state.station
  const making = preparedOf(state)?.tasks.find(
    (task) => task.component === component && (task.kind === 'cook' || task.kind === 'make'),
  )
  if (!making || isDone(state, making, startedAt)) return null
  return civilDate(making.from, timeZone) > civilDate(startedAt, timeZone) ? making.from : null
}
