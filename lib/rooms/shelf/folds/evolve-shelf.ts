/** Folds what is known of the hot or cold shelf, and how long what stands there lasts by it. */
import type { Stamp } from '#lib/service/events/event.ts'
import type { ShelfEvent, ShelfRead } from '#lib/service/events/shelf-event.ts'
import { releasedFrom } from '#lib/service/folding/pan-hold.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { onShelf, SHELF } from '#lib/service/shelf.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { withBuildAs } from '#lib/service/tickets.ts'

/** Nothing says that it stood hot or cold since the last good reading: that long it counts as room. */
const countsAsRoom = (state: RunningState): RunningState => {
  const { withinMs } = limitsOf(state.station).timeOnly4h
  const goodAt = state.shelf?.goodAt ?? null
  const bound = (build: Build): Build => {
    const own = build.until?.roomUntil ?? (build.madeAt ?? build.since) + withinMs
    const room = Math.max(own, goodAt === null ? own : goodAt + withinMs)
    const throwOutAt = Math.min(room, build.until?.throwOutAt ?? room)
    const collectBy = Math.min(throwOutAt, build.until?.collectBy ?? throwOutAt)
    return { ...build, until: { collectBy, throwOutAt } }
  }
  return onShelf(state).reduce(
    (so, { ticket, build }) => withBuildAs(so, ticket.number, bound(build)),
    state,
  )
}

const wasRead = (before: RunningState, { reading, inLimits, at }: ShelfRead & Stamp) => {
  const { goodAt = null, offSale = null } = before.shelf ?? {}
  if (inLimits)
    // A better one changes nothing of what stood there as it was out.
    return { ...before, shelf: { newest: reading, goodAt: offSale ? null : reading.at, offSale } }
  const state = countsAsRoom(before)
  const out = offSale ?? { since: at, lastGoodAt: goodAt }
  return { ...state, shelf: { newest: reading, goodAt: null, offSale: out } }
}

/** @throws where it was never read. */
export const evolveShelf = (state: RunningState, event: ShelfEvent & Stamp): RunningState => {
  if (event.type === 'shelfRead') return wasRead(state, event)
  const { shelf } = state
  if (!shelf) throw new Error('nobody ever read the shelf')
  const { missed: _, ...known } = shelf
  if (event.type === 'shelfReadingMissed') {
    const { lastGoodAt, at: since } = event
    const missed = lastGoodAt === undefined ? {} : { missed: { since, lastGoodAt } }
    return { ...countsAsRoom(state), shelf: { ...known, goodAt: null, ...missed } }
  }
  // Nothing is good by that: it is read again, as what comes onto it is.
  const released = event.way === 'discard' ? state : releasedFrom(state, SHELF, undefined)
  return { ...released, shelf: { ...known, goodAt: null, offSale: null } }
}
