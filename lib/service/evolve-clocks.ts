/** Folds time clocks: what they bind besides the food for which they are told. */
import type { Stamp } from '#lib/service/event.ts'
import type { TimeClockStarted } from '#lib/service/food-event.ts'
import { newest, withBatch, withFood } from '#lib/service/food-folding.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { allStock, type StockKind, stockOf } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { tookFrom } from '#lib/service/taken-from.ts'
import { putTicket } from '#lib/service/tickets.ts'

/** Made food that took from what stands there since a moment lasts no longer than it may. */
export const madeBound = (
  state: RunningState,
  { what, id }: { readonly what: StockKind; readonly id: string },
  { since, until }: { readonly since: number; readonly until: number },
): RunningState => {
  const isBound = (build: Build): boolean =>
    build.state === 'made' && build.since >= since && tookFrom(state, build, what, id)
  const bound = (build: Build): Build => {
    const throwOutAt = Math.min(until, build.until?.throwOutAt ?? until)
    const collectBy = Math.min(throwOutAt, build.until?.collectBy ?? throwOutAt)
    return { ...build, until: { ...build.until, collectBy, throwOutAt } }
  }
  let next = state
  for (const ticket of Object.values(state.tickets)) {
    if (!ticket.builds.some(isBound)) continue
    const builds = ticket.builds.map((build) => (isBound(build) ? bound(build) : build))
    next = { ...next, ...putTicket(next, { ...ticket, builds }) }
  }
  return next
}

/** Made food that took from a pan after the start of its clock is bound by it, told late or not. */
const boundByClock = (
  state: RunningState,
  what: StockKind,
  id: string,
  startedAt: number,
): RunningState => {
  const stock = stockOf(state, what, id)
  const until = stock ? lastsUntil(state, stock) : null
  return until === null ? state : madeBound(state, { what, id }, { since: startedAt, until })
}

export const clockStarted = (
  state: RunningState,
  event: TimeClockStarted & Stamp,
): RunningState => {
  const { what, id, clock, reading } = event
  if (what === 'batch') return batchClockStarted(state, event)
  const next = withFood(state, what, id, (stock) => ({
    ...stock,
    food: stock.food && { ...stock.food, heldBy: 'time', clock },
    since: reading.at,
    readings: [reading],
  }))
  return boundByClock(next, what, id, clock.startedAt)
}

/** What was loaded of the batch since its clock started runs on it too, and what was made of that. */
const batchClockStarted = (before: RunningState, event: TimeClockStarted & Stamp): RunningState => {
  const { id, clock, reading } = event
  const state = withBatch(before, id, (batch) => ({
    ...batch,
    clock,
    readings: [reading],
    toldAt: event.at,
    newestAt: newest(batch, Math.max(clock.startedAt, reading.at)),
  }))
  return allStock(state)
    .filter(
      ({ stock }) =>
        (stock.amount > 0 || stock.ended) &&
        stock.batches.includes(id) &&
        stock.loadedAt >= clock.startedAt,
    )
    .reduce((next, { what, id: pan, stock }) => {
      const own = stock.food?.clock
      const isSooner = own == null || clock.throwOutAt < own.throwOutAt
      const held = isSooner
        ? withFood(next, what, pan, (one) => ({
            ...one,
            food: one.food && { ...one.food, heldBy: 'time', clock },
          }))
        : next
      return boundByClock(held, what, pan, clock.startedAt)
    }, state)
}
