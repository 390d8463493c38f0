/** What a task has to do with food that cools. */
import type { Task } from '#lib/prep/prep-plan.ts'
import { type CoolBy, coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Cools {
  /** Pots of its food that are to be cool by an hour. */
  readonly pots: readonly { readonly id: string; readonly by: CoolBy }[]
  /** It isn't cooked yet, and is read as it cools after. */
  readonly isToCome: boolean
}

const NOTHING: Cools = { pots: [], isToCome: false }

const COOLED: ReadonlySet<Task['kind']> = new Set(['cook', 'cool', 'read-first', 'read-cold'])

export const coolsOf = (
  state: RunningState,
  { kind, component }: Pick<Task, 'kind' | 'component'>,
  now: number,
): Cools => {
  if (component === null || !COOLED.has(kind)) return NOTHING
  const pots = Object.entries(state.batches).flatMap(([id, batch]) => {
    const by = batch.component === component ? coolBy(state, id, now) : null
    return by ? [{ id, by }] : []
  })
  const isRead = preparedOf(state)?.tasks.some(({ id }) => id === `read-first.${component}`)
  return { pots, isToCome: kind === 'cook' && pots.length === 0 && isRead === true }
}
