/** One place as it is asked what its food comes to, in line order. */

import { endsAt, type Found, keptBy } from '#lib/rooms/day/facts/ends/food-history.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { End, EndOf, EndWhy, FoodHistory } from '#lib/safety/ends.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { findBatch, type Placed, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface DayReading {
  readonly of: 'cooked' | 'cooling' | 'reheated' | 'held'
  readonly reading: Reading
}

export interface EndStep {
  readonly place: Placed
  readonly heldBy: FoodHistory['heldBy']
  /** What else is there of the same food, by its kind of place; amounts in the component's unit. */
  readonly elsewhere: readonly { readonly what: Placed['what']; readonly amount: number }[]
  readonly offered: readonly EndOf[]
  readonly barred: readonly (EndOf & { readonly why: EndWhy })[]
  /** What was read of it, oldest first, at most six: the last of its making, then the newest. */
  readonly read: readonly DayReading[]
  /** Nobody said its first day: told, more may be offered. */
  readonly asksDay: boolean
  /** The next place that is asked; null where this is the last. */
  readonly next: Place | null
  /** So many are asked, this one too. */
  readonly count: number
}

const MOST_READ = 6

const lastMet = (all: readonly HeatReading[]) => all.slice(-1)

/** A batch that cools shows each reading; of a pan only the newest of its batches was made so. */
const readOf = (state: RunningState, place: Placed): readonly DayReading[] => {
  const batches = place.batches.flatMap((id) => findBatch(state, id) ?? []).slice(-1)
  const told = batches.flatMap(({ cooking, cooling, reheat }): DayReading[] => [
    ...lastMet(cooking).map((reading) => ({ of: 'cooked' as const, reading })),
    ...cooling.map((reading) => ({ of: 'cooling' as const, reading })),
    ...(reheat ? lastMet(reheat.readings) : []).map((reading) => ({
      of: 'reheated' as const,
      reading,
    })),
  ])
  const held = place.readings.map((reading) => ({ of: 'held' as const, reading }))
  const all = [...told, ...held].sort((one, other) => one.reading.at - other.reading.at)
  return all.length <= MOST_READ ? all : [...all.slice(0, 1), ...all.slice(1 - MOST_READ)]
}

const COLDEST_F = 32
const HOTTEST_F = 212

/** Of the same food in other places, a kind of place once. */
const elsewhereOf = (all: readonly Placed[], { what, id, component }: Placed) => {
  const others = all.filter(
    (one) => one.component === component && (one.what !== what || one.id !== id),
  )
  return (['pan', 'backup', 'batch'] as const).flatMap((kind) => {
    const amount = others
      .filter((one) => one.what === kind)
      .reduce((sum, one) => sum + one.amount, 0)
    return amount === 0 ? [] : [{ what: kind, amount }]
  })
}

/** How high a temperature is drawn: 0 for water that freezes, 1 for water that boils. */
export const drawnAt = ({ tenths, scale }: Temperature): number => {
  const f = scale === 'F' ? tenths / 10 : (tenths / 10) * 1.8 + 32
  return Math.max(0, Math.min(1, (f - COLDEST_F) / (HOTTEST_F - COLDEST_F)))
}

/** Null where nothing is to be said of it any more. */
export const endStepAt = (
  state: RunningState,
  at: Place,
  now: number,
  found: Found = {},
): EndStep | null => {
  const all = toAnswer(state)
  const index = all.findIndex(({ what, id }) => what === at.what && id === at.id)
  const place = placeOf(state, at)
  if (index === -1 || !place) return null
  const ends = endsAt(state, place, now, found)
  const next = all[index + 1] ?? all[0]
  return {
    place,
    heldBy: keptBy(state, place, now),
    elsewhere: elsewhereOf(all, place),
    offered: ends.filter(({ offered }) => offered),
    barred: ends.flatMap((one) => (one.why === null ? [] : [{ ...one, why: one.why }])),
    read: readOf(state, place),
    asksDay: ends.some(({ why }) => why === 'no-date'),
    next: all.length < 2 || !next ? null : { what: next.what, id: next.id },
    count: all.length,
  }
}

/** Ends that say the same of why they aren't there, told once. */
export const barredTogether = (
  barred: EndStep['barred'],
): readonly (Pick<EndStep['barred'][number], 'why' | 'paragraph'> & {
  readonly ends: readonly End[]
})[] => {
  const by = new Map<string, { why: EndWhy; paragraph: string | null; ends: End[] }>()
  for (const { why, paragraph, end } of barred) {
    const key = `${why} ${paragraph}`
    const one = by.get(key) ?? { why, paragraph, ends: [] }
    one.ends.push(end)
    by.set(key, one)
  }
  return [...by.values()]
}
