/** Food of a planned service that is begun, and that nothing counts yet. */
import type { TaskKind } from '#lib/prep/prep-plan.ts'
import type { RunningState } from '#lib/service/state.ts'

const OF_FOOD: readonly TaskKind[] = ['thaw', 'chill', 'measure', 'make', 'cook', 'reheat']

/**
 * Components of which a task was ticked or passed on half done, and that no batch was ever entered of:
 * once the plan is dropped nobody knows of them. In the order of the document.
 */
export const inNoBatch = ({ prep, station, batches }: RunningState): readonly string[] => {
  const done = [...Object.keys(prep?.ticked ?? {}), ...Object.keys(prep?.passed ?? {})]
  const entered = new Set(Object.values(batches).map(({ component }) => component))
  return station.components
    .map(({ id }) => id)
    .filter((id) => !entered.has(id) && OF_FOOD.some((kind) => done.includes(`${kind}.${id}`)))
}
