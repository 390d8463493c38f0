/** What stands in the way of closing a service. */
import { toAnswer, wasPlanned } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { isUsedUp } from '#lib/service/batch-loads.ts'
import { isMissed } from '#lib/service/events/handed-over-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { allStock } from '#lib/service/held-stock.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** Food that somebody has to resolve or to initial first. */
const boundFood = (state: RunningState): number =>
  Object.keys(state.toThrowOut).length +
  allStock(state).filter(({ stock }) => stock.offSale !== null).length +
  Object.values(state.batches).filter((one) => one.offSale !== null).length

/** After the close nobody could record a reading of it any more. */
const isCooling = (state: RunningState, batch: BatchState, now: number): boolean => {
  if (batch.thrownOutAt !== null || isUsedUp(batch)) return false
  const cooling = coolingOf(state.station, batch, now)
  return cooling?.state === 'first-stage' || cooling?.state === 'second-stage'
}

/** A service that was planned asks for each pan; others close as they always did. */
const unanswered = (state: RunningState): readonly Refusal[] => {
  const places = wasPlanned(state) ? toAnswer(state) : []
  const [first] = places
  if (!first) return []
  const { what, id, component } = first
  return [{ code: 'food-unanswered', count: places.length, what, id, component }]
}

/**
 * Closing leaves no guest standing: every build is handed over or cancelled, every guest found, and
 * answered for what was handed over of food that was found bad. It leaves no food behind that is off
 * sale, to be thrown out, or cooling; of a service that was planned no food of which nobody said what it
 * comes to. What was only not read stays told in the log. `now` in epoch
 * milliseconds; empty where it can be closed.
 */
export const notYetClosed = (state: RunningState, now: number): readonly Refusal[] => {
  const builds = openBuilds(state).length
  const toFind = Object.keys(state.toFind).length
  const bound = boundFood(state)
  const untold = Object.values(state.toTell).filter((one) => !isMissed(one.because)).length
  const cooling = Object.entries(state.batches).find(([, one]) => isCooling(state, one, now))
  return [
    ...(builds > 0 ? [{ code: 'builds-open', count: builds } as const] : []),
    ...(toFind > 0 ? [{ code: 'guests-to-find', count: toFind } as const] : []),
    ...(bound > 0 ? [{ code: 'throw-out-first', count: bound } as const] : []),
    ...(untold > 0 ? [{ code: 'handed-over-first', count: untold } as const] : []),
    ...unanswered(state),
    ...(cooling ? [{ code: 'still-cooling', batch: cooling[0] } as const] : []),
  ]
}
