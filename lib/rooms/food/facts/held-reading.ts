/** What a reading of food that is held hot or cold brings with it. */

import { practiceFor } from '#lib/rooms/food/facts/food-now.ts'
import { type Watch, watchOf } from '#lib/rooms/food/facts/place-now.ts'
import { broughtBy } from '#lib/rooms/food/facts/probe-trail.ts'
import { inLimits, nextReading } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { knownPlace } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

interface HeldPlace extends Place {
  readonly heldBy: 'hot' | 'cold'
}

/**
 * Whether a reading in limits makes good that one was missed: it was taken in time and only told late,
 * or it is told before the food could have been out for so long. What counts is when it is told, since
 * nobody can tell of the past what the probe doesn't show any more.
 */
const makesGood = (
  state: RunningState,
  heldBy: 'hot' | 'cold',
  held: Watch,
  lastGoodAt: number | null,
  reading: Reading,
  now: number,
): boolean => {
  const known = Math.max(lastGoodAt ?? 0, held.since ?? 0)
  if (known === 0) return false
  const { dueAt } = nextReading(known, state.rushes, practiceFor(state, heldBy, known))
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
  { id, heldBy }: Omit<HeldPlace, 'what'>,
  reading: Reading,
  now: number,
): readonly ServiceEvent[] => {
  const seen = heldReading(state, { what: 'batch', id, heldBy }, reading, now)
  return seen.some((one) => one.type === 'takenOffSale' && one.why === 'reading-missed') ? seen : []
}

/** A reading of a hot or cold pan, or of a batch that waits, and whether it is sold after it. */
export const heldReading = (
  state: RunningState,
  place: HeldPlace,
  reading: Reading,
  now: number,
): readonly ServiceEvent[] => {
  const { what, id, heldBy } = place
  const placed = knownPlace(state, place)
  const held = watchOf(state, placed, heldBy)
  const { offSale } = placed
  const isRoast = findComponent(state.station, placed.component)?.food.roast ?? false
  const isIn = inLimits(heldBy, reading, limitsOf(state.station), isRoast)
  const lastGoodAt = offSale ? offSale.lastGoodAt : held.goodAt(reading.at)
  const isGood = isIn && makesGood(state, heldBy, held, lastGoodAt, reading, now)
  const lifts = isGood && offSale?.why === 'reading-missed'
  const read: ServiceEvent = {
    type: 'temperatureRead',
    what,
    id,
    reading,
    inLimits: isIn,
    ...(lifts ? { lifts: true } : {}),
    ...broughtBy(state, place, reading),
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
