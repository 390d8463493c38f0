/** What a reading of food that is held hot or cold brings with it. */
import { findComponent } from '#lib/menu/find.ts'
import { type HoldingState, inLimits, nextReading } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { lastReadAt } from '#lib/service/batch-read.ts'
import { waitingOf, watchedSince } from '#lib/service/batch-watch.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import type { StockPlace } from '#lib/service/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { holdingOf, practiceOf } from '#lib/service/food-now.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { componentIn, stockOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

interface Place {
  readonly what: StockPlace['what']
  readonly id: string
  readonly heldBy: 'hot' | 'cold'
}

interface Held {
  readonly component: string
  readonly offSale: OffSale | null
  /** Of its last reading in limits by a moment; null where there is none. */
  readonly goodAt: (by: number) => number | null
  /** Since when it is watched, where nobody read it yet. */
  readonly since: number | null
  readonly stateAt: (now: number, more: readonly Reading[]) => HoldingState | null
}

const heldAt = (state: RunningState, { what, id, heldBy }: Place): Held => {
  const newestBy = (readings: readonly Reading[], by: number): number | null =>
    readings.filter(({ at }) => at <= by).at(-1)?.at ?? null
  if (what === 'batch') {
    const batch = state.batches[id]
    if (!batch) throw new Error(`there is no batch ${id}`)
    return {
      component: batch.component,
      offSale: batch.offSale,
      goodAt: () => lastReadAt(state.station, batch),
      // What was read while it waits proves nothing of the time before: only what it was made to does.
      since: watchedSince(state.station, { ...batch, readings: [] }, heldBy),
      stateAt: (now, more) => waitingOf(state, id, now, more),
    }
  }
  const stock = stockOf(state, what, id)
  return {
    component: componentIn(state.station, id) ?? id,
    offSale: stock?.offSale ?? null,
    goodAt: (by) => newestBy(stock?.readings ?? [], by),
    since: null,
    stateAt: (now, more) => holdingOf(state, what, id, now, more),
  }
}

/**
 * Whether a reading in limits makes good that one was missed: it was taken in time and only told late,
 * or it is told before the food could have been out for so long. What counts is when it is told, since
 * nobody can tell of the past what the probe doesn't show any more.
 */
const makesGood = (
  state: RunningState,
  held: Held,
  lastGoodAt: number | null,
  reading: Reading,
  now: number,
): boolean => {
  const known = Math.max(lastGoodAt ?? 0, held.since ?? 0)
  if (known === 0) return false
  const { dueAt } = nextReading(known, state.rushes, practiceOf(state.station))
  const isInTime = reading.at < dueAt
  const isSoon = now - known < limitsOf(state.station).timeOnly4h.withinMs
  return (isInTime || isSoon) && held.stateAt(now, [reading])?.state !== 'missed'
}

/**
 * What a reading brings with which a batch would be kept otherwise than until now; nothing where it was
 * read until then. A clock or a cooling doesn't begin where nobody knows.
 */
export const unreadUntil = (
  state: RunningState,
  { id, heldBy }: Omit<Place, 'what'>,
  reading: Reading,
  now: number,
): readonly ServiceEvent[] => {
  const seen = heldReading(state, { what: 'batch', id, heldBy }, reading, now)
  return seen.some((one) => one.type === 'takenOffSale' && one.why === 'reading-missed') ? seen : []
}

/** A reading of a hot or cold pan, or of a batch that waits, and whether it is sold after it. */
export const heldReading = (
  state: RunningState,
  place: Place,
  reading: Reading,
  now: number,
): readonly ServiceEvent[] => {
  const { what, id, heldBy } = place
  const held = heldAt(state, place)
  const { offSale } = held
  const isRoast = findComponent(state.station, held.component)?.food.roast ?? false
  const isIn = inLimits(heldBy, reading, limitsOf(state.station), isRoast)
  const lastGoodAt = offSale ? offSale.lastGoodAt : held.goodAt(reading.at)
  const isGood = isIn && makesGood(state, held, lastGoodAt, reading, now)
  const lifts = isGood && offSale?.why === 'reading-missed'
  const read: ServiceEvent = {
    type: 'temperatureRead',
    what,
    id,
    reading,
    inLimits: isIn,
    ...(lifts ? { lifts: true } : {}),
  }
  const off = (why: OffSale['why']): readonly ServiceEvent[] => [
    read,
    { type: 'takenOffSale', what, id, why, lastGoodAt },
  ]
  if (!isIn) return offSale?.why === 'out-of-limits' ? [read] : off('out-of-limits')
  // Told so late that it was never taken off sale, and too late to make it good.
  return offSale === null && !isGood && held.stateAt(reading.at, [])?.state === 'missed'
    ? off('reading-missed')
    : [read]
}
