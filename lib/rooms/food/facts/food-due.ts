/** When food falls due: a reading missed, a stage of cooling, a throw-out time, a date. */

import { buildPassed } from '#lib/rooms/food/facts/build-passed.ts'
import { coolingOf, TELLING_MS } from '#lib/rooms/food/facts/food-now.ts'
import { missedFrom } from '#lib/rooms/food/facts/place-now.ts'
import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import { throwOutMoment } from '#lib/safety/time-control.ts'
import type { FoodEvent } from '#lib/service/events/food-event.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { allPlaces, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

export interface FoodDue {
  /** Epoch milliseconds. */
  readonly at: number
  readonly event: FoodEvent
}

/** A stage of cooling that nobody told in time. */
const dueOfCooling = (state: RunningState, id: string): readonly FoodDue[] => {
  const batch = state.batches[id]
  const cooling = batch && batch.offSale === null ? coolingOf(state.station, batch, state.at) : null
  if (!batch || !cooling) return []
  const missed = (at: number, stage: 1 | 2): readonly FoodDue[] => [
    { at, event: { type: 'coolingMissed', batch: id, stage } },
  ]
  // The last millisecond still counts; a stage that was over when it was told may still be told.
  const overAt = (dueAt: number) => (dueAt < batch.toldAt ? batch.toldAt + TELLING_MS : dueAt + 1)
  if (cooling.state === 'first-stage') return missed(overAt(cooling.dueAt), 1)
  if (cooling.state === 'second-stage') return missed(overAt(cooling.dueAt), 2)
  return cooling.state === 'missed' ? missed(state.at, cooling.stage) : []
}

const dueOfPlace = (state: RunningState, place: Placed): readonly FoodDue[] => {
  const { what, id, stage, amount, food, readings } = place
  if (stage === 'gone' || boundAt(state, what, id)) return []
  if (stage !== 'making' && amount <= 0) return []
  const until = lastsUntil(state, place)
  const isTimed =
    food?.clock != null && until === throwOutMoment(food.clock, readings, limitsOf(state.station))
  const because = isTimed ? ('time' as const) : ('date' as const)
  const missedAt = missedFrom(state, place, state.at)
  return [
    ...(until === null
      ? []
      : [{ at: until, event: { type: 'throwOutPassed' as const, what, id, because } }]),
    ...(what === 'batch' ? dueOfCooling(state, id) : []),
    ...(missedAt === null
      ? []
      : [{ at: missedAt, event: { type: 'readingMissed' as const, what, id } }]),
  ]
}

const dueOfBuilds = (state: RunningState): readonly FoodDue[] =>
  openBuilds(state).flatMap(({ ticket, build }): FoodDue[] => {
    const id = buildName(ticket.number, build.letter)
    const at = build.until?.throwOutAt ?? null
    return build.state !== 'made' || at === null || boundAt(state, 'build', id)
      ? []
      : [{ at, event: buildPassed(build, id, 'time') }]
  })

const dueOfShelf = (state: RunningState): readonly FoodDue[] => {
  const next = shelfNext(state)
  const lastGoodAt = state.shelf?.goodAt ?? null
  return next && lastGoodAt !== null
    ? [{ at: next.dueAt, event: { type: 'shelfReadingMissed', lastGoodAt } }]
    : []
}

/** All that will fall due of the food as it is, the first first. */
export const foodDue = (state: RunningState): readonly FoodDue[] =>
  [
    ...allPlaces(state).flatMap((place) => dueOfPlace(state, place)),
    ...dueOfBuilds(state),
    ...dueOfShelf(state),
  ].sort((one, other) => one.at - other.at)
