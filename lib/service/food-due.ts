/** When food falls due: a reading missed, a stage of cooling, a throw-out time, a date. */

import { nextMonitoring, throwOutMoment } from '#lib/safety/time-control.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { batchReadBy } from '#lib/service/batch-watch.ts'
import { buildPassed } from '#lib/service/build-passed.ts'
import type { FoodEvent } from '#lib/service/food-event.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import { coolingOf, holdingOf, TELLING_MS } from '#lib/service/food-now.ts'
import type { BatchState, HeldStock } from '#lib/service/food-state.ts'
import { allStock, type StockKind, throwOutKey } from '#lib/service/held-stock.ts'
import { shelfNext } from '#lib/service/shelf-reading.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

export interface FoodDue {
  /** Epoch milliseconds. */
  readonly at: number
  readonly event: FoodEvent
}

/** When a pan's next reading is missed; null where none is asked for. */
const readingMissedAt = (
  state: RunningState,
  what: StockKind,
  id: string,
  stock: HeldStock,
): number | null => {
  const { food } = stock
  if (stock.offSale !== null || !food) return null
  if (food.clock) return nextMonitoring(food.clock, stock.readings)
  const holding = holdingOf(state, what, id, state.at)
  if (!holding || holding.state === 'out') return null
  return holding.state === 'missed' ? holding.since : holding.next.dueAt
}

const dueOfStock = (
  state: RunningState,
  what: StockKind,
  id: string,
  stock: HeldStock,
): readonly FoodDue[] => {
  if (stock.amount <= 0 || state.toThrowOut[throwOutKey(what, id)]) return []
  const until = lastsUntil(state, stock)
  const clock = stock.food?.clock
  const isTimed =
    clock != null && until === throwOutMoment(clock, stock.readings, limitsOf(state.station))
  const missedAt = readingMissedAt(state, what, id, stock)
  return [
    ...(until === null
      ? []
      : [
          {
            at: until,
            event: {
              type: 'throwOutPassed' as const,
              what,
              id,
              because: isTimed ? ('time' as const) : ('date' as const),
            },
          },
        ]),
    ...(missedAt === null
      ? []
      : [{ at: missedAt, event: { type: 'readingMissed' as const, what, id } }]),
  ]
}

const dueOfBatch = (state: RunningState, id: string, batch: BatchState): readonly FoodDue[] => {
  if (batch.thrownOutAt !== null || state.toThrowOut[throwOutKey('batch', id)]) return []
  if (batch.finishedAt !== null && leftOfBatch(batch) === 0) return []
  const dues: FoodDue[] = []
  const passes = (at: number, because: 'time' | 'date') =>
    dues.push({ at, event: { type: 'throwOutPassed', what: 'batch', id, because } })
  if (batch.clock) passes(batch.clock.throwOutAt, 'time')
  if (batch.dateMark) passes(batch.dateMark.endsAt, 'date')
  const cooling = batch.offSale === null ? coolingOf(state.station, batch, state.at) : null
  const missed = (at: number, stage: 1 | 2) =>
    dues.push({ at, event: { type: 'coolingMissed', batch: id, stage } })
  // The last millisecond still counts; a stage that was over when it was told may still be told.
  const overAt = (dueAt: number) => (dueAt < batch.toldAt ? batch.toldAt + TELLING_MS : dueAt + 1)
  if (cooling?.state === 'first-stage') missed(overAt(cooling.dueAt), 1)
  if (cooling?.state === 'second-stage') missed(overAt(cooling.dueAt), 2)
  if (cooling?.state === 'missed') missed(state.at, cooling.stage)
  const readBy = batch.offSale === null ? batchReadBy(state, id, state.at) : null
  if (readBy !== null)
    dues.push({ at: readBy, event: { type: 'readingMissed', what: 'batch', id } })
  return dues
}

const dueOfBuilds = (state: RunningState): readonly FoodDue[] =>
  openBuilds(state).flatMap(({ ticket, build }): FoodDue[] => {
    const id = buildName(ticket.number, build.letter)
    const at = build.until?.throwOutAt ?? null
    return build.state !== 'made' || at === null || state.toThrowOut[throwOutKey('build', id)]
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
    ...allStock(state).flatMap(({ what, id, stock }) => dueOfStock(state, what, id, stock)),
    ...Object.entries(state.batches).flatMap(([id, batch]) => dueOfBatch(state, id, batch)),
    ...dueOfBuilds(state),
    ...dueOfShelf(state),
  ].sort((one, other) => one.at - other.at)
