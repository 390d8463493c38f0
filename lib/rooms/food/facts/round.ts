/**
 * Readings come due as a round: what is due soon is taken together, before a rush where one is ahead,
 * and nothing is put off past its own time.
 */

import { practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { missedFrom } from '#lib/rooms/food/facts/place-now.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { boundAt } from '#lib/service/held-stock.ts'
import { allPlaces, type Placed, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

/** One reading takes about so long, the probe cleaned before it. Common practice, no source. */
const READING_TAKES_MS = MINUTE_MS
/** Due so long after the first, it is taken along. Common practice, no source. */
const TOGETHER_MS = 30 * MINUTE_MS

export interface DueInRound {
  readonly place: Placed
  /** From this millisecond on it is missed; of one that was missed, since when. */
  readonly dueBy: number
  /** `out`: it was read out of its limits; somebody decides, and no reading helps. */
  readonly why: 'out' | 'missed' | 'due' | 'rush' | 'together'
  /** A back-up pan that is protected. */
  readonly isProtected: boolean
}

export interface Round {
  /** In the order in which they are read. */
  readonly places: readonly DueInRound[]
  /** Before this all of them are read, epoch milliseconds. */
  readonly dueBy: number
  /** It is asked for now; before that it is only what comes next. */
  readonly isAsked: boolean
  /** The rush that it is brought forward for, epoch milliseconds; null where none is. */
  readonly rushFrom: number | null
}

type Due = Omit<DueInRound, 'isProtected'>

const UNREAD = ['reading-missed', 'monitoring-missed']

/** When a place is read next, or that it is too late for that; null where nothing is read of it. */
const dueOf = (state: RunningState, place: Placed, now: number): Due | null => {
  const { what, id, stage, offSale } = place
  if (boundAt(state, what, id) || (stage !== 'standing' && stage !== 'waiting')) return null
  if (offSale?.why === 'cooling-missed') return null
  if (offSale)
    return {
      place,
      dueBy: offSale.since,
      why: UNREAD.includes(offSale.why) ? 'missed' : 'out',
    }
  const dueBy = missedFrom(state, place, now)
  return dueBy === null ? null : { place, dueBy, why: dueBy <= now ? 'missed' : 'due' }
}

/** Food on time alone may be read though no reading falls due. */
const onTime = (state: RunningState, place: Placed): Due | null => {
  const { what, id, stage, food, offSale } = place
  const isThere = stage === 'standing' || stage === 'waiting'
  if (!isThere || offSale || !food?.clock || boundAt(state, what, id)) return null
  return { place, dueBy: food.clock.throwOutAt, why: 'together' }
}

/** Protected back-up pans come first, while the probe was in nothing else; then the line; what waits last. */
const PART = { kept: 0, pan: 1, backup: 2, batch: 3 } as const

const inLineOrder = (state: RunningState, all: readonly Due[]): readonly DueInRound[] => {
  const line = pansOf(state.station)
  const isKept = ({ what, id }: Placed) =>
    what === 'backup' && state.backupPans[id]?.guarded === true
  const at = ({ what, id, component }: Placed): number =>
    line.findIndex((pan) => (what === 'pan' ? pan.id === id : pan.component === component))
  const part = (place: Placed): number => PART[isKept(place) ? 'kept' : place.what]
  return [...all]
    .sort(
      ({ place: one }, { place: other }) =>
        part(one) - part(other) || at(one) - at(other) || (one.id < other.id ? -1 : 1),
    )
    .map((due) => ({ ...due, isProtected: isKept(due.place) }))
}

/** A place as it is read now, due or not; null where nothing is read of it. */
export const placeInRound = (state: RunningState, at: Place, now: number): DueInRound | null => {
  const place = placeOf(state, at)
  const due = place && (dueOf(state, place, now) ?? onTime(state, place))
  return due ? (inLineOrder(state, [due])[0] ?? null) : null
}

/** Whether a reading would be asked for while a rush goes on, and there is something to bring forward. */
const fallsInto = (state: RunningState, { place, dueBy }: Due, rush: RushWindow): boolean => {
  const { askBeforeMs, leastBetweenMs } = practiceOf(state.station)
  const last = place.newest?.at ?? place.since
  return dueBy > rush.from && dueBy - askBeforeMs < rush.to && rush.from - last >= leastBetweenMs
}

/**
 * The round that is asked for, or the one that comes next; null where nothing is read.
 * @param rush the next one that is known, or that goes on; null where none is
 */
export const roundOf = (
  state: RunningState,
  now: number,
  rush: RushWindow | null = null,
): Round | null => {
  const all = allPlaces(state).flatMap((place) => dueOf(state, place, now) ?? [])
  const first = Math.min(...all.flatMap((one) => (one.why === 'due' ? [one.dueBy] : [])))
  if (all.length === 0) return null
  const { askBeforeMs } = practiceOf(state.station)
  const takes = (of: readonly Due[]) => Math.max(askBeforeMs, of.length * READING_TAKES_MS)
  const forward = rush && rush.from > now ? all.filter((one) => fallsInto(state, one, rush)) : []
  const isForward = rush !== null && forward.length > 0 && rush.from - takes(forward) <= now
  const dueBy = Math.min(first, isForward ? rush.from : Number.POSITIVE_INFINITY)
  const isMissed = all.some(({ why }) => why === 'missed')
  const isOut = all.some(({ why }) => why === 'out')
  // In line order what is only taken along may come before what is due first.
  const soon = all.filter((one) => one.why === 'due' && one.dueBy <= first + TOGETHER_MS)
  const isAsked = isForward || isMissed || first - takes(soon) <= now
  // Beside what is only out of its limits nothing is read that isn't due.
  const from = isMissed
    ? Math.min(now, dueBy)
    : isAsked || !isOut
      ? dueBy
      : Number.NEGATIVE_INFINITY
  const taken = all.flatMap((one): readonly Due[] => {
    if (one.why !== 'due') return [one]
    if (isForward && forward.includes(one)) return [{ ...one, why: 'rush' }]
    if (one.dueBy - askBeforeMs <= now) return [one]
    if (one.dueBy > from + TOGETHER_MS) return []
    return [{ ...one, why: one.dueBy === first ? 'due' : 'together' }]
  })
  return {
    places: inLineOrder(state, taken),
    dueBy: isMissed || !Number.isFinite(dueBy) ? now : dueBy,
    isAsked: isAsked || isOut,
    rushFrom: isForward ? rush.from : null,
  }
}
