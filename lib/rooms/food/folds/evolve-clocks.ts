/** Folds time clocks: what they bind besides the food for which they are told. */

import { tookFrom } from '#lib/rooms/food/facts/taken-from.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { Place, TimeClockStarted } from '#lib/service/events/food-event.ts'
import { withPlace } from '#lib/service/folding/food-folding.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { allStock, type StockKind, stockOf } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
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

/** What holds food of a place: itself, and what was loaded of a batch since a moment. */
const holdersOf = (state: RunningState, { what: of, id: own }: Place, since: number) =>
  allStock(state).filter(
    ({ what, id, stock: { amount, ended, batches, loadedAt } }) =>
      (what === of && id === own) ||
      (of === 'batch' && (amount > 0 || ended) && batches.includes(own) && loadedAt >= since),
  )

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

/** On time alone: a place, what was loaded out of it since its clock started, and what is made of that. */
export const clockStarted = (
  state: RunningState,
  event: TimeClockStarted & Stamp,
): RunningState => {
  const { clock, reading } = event
  const next = withPlace(state, event, { clock, readings: [reading], since: reading.at })
  return holdersOf(next, event, clock.startedAt).reduce((so, { what, id, stock }) => {
    const own = stock.food?.clock
    const isSooner = own == null || clock.throwOutAt < own.throwOutAt
    const held = isSooner ? withPlace(so, { what, id, at: event.at }, { clock }) : so
    return boundByClock(held, what, id, clock.startedAt)
  }, next)
}
