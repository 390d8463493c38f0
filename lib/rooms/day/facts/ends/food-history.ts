/** What happened to the food at a place, as its ends ask it. */

import { civilDate } from '#lib/measure/civil.ts'
import { batchHeldBy, waitingOf } from '#lib/rooms/food/facts/batch-watch.ts'
import { toldMark } from '#lib/rooms/food/facts/dated.ts'
import {
  comesOffHeat,
  coolingOf,
  holdingOf,
  isCookedHere,
  needsBatch,
} from '#lib/rooms/food/facts/food-now.ts'
import { daysLeftFrozen } from '#lib/safety/date-marks.ts'
import { type DateStamp, earlierStamp, pastStamp } from '#lib/safety/date-stamp.ts'
import { type EndOf, endsOf, type FoodHistory } from '#lib/safety/ends.ts'
import type { ToldDates } from '#lib/safety/told-dates.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { boundAt, isReadSinceJump } from '#lib/service/held-stock.ts'
import { findBatch, type Placed } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

/** What somebody finds or tells as food comes to its end. */
export interface Found {
  /** It was read now, in its limits, and that counts. */
  readonly read?: boolean
  readonly dates?: Pick<ToldDates, 'preparedOn' | 'useBy'>
}

const NOTHING: Found = {}

/** Batches that are in a place, as far as the service knows them. */
export const batchesIn = (
  state: RunningState,
  { batches }: Placed,
): readonly (readonly [id: string, batch: BatchState])[] =>
  batches.flatMap((id) => {
    const batch = findBatch(state, id)
    return batch ? [[id, batch] as const] : []
  })

/** Where a batch's cooling stands; null for what isn't one, or never was cooled. */
export const coolingAt = (state: RunningState, { what, id }: Placed, now: number) => {
  const batch = what === 'batch' ? findBatch(state, id) : undefined
  return batch && !batch.reheat?.ok ? coolingOf(state.station, batch, now) : null
}

/** How food is kept at a moment, on its way down too; null: nobody knows. */
export const keptBy = (state: RunningState, place: Placed, now: number): FoodHistory['heldBy'] => {
  const { what, id, component, food } = place
  if (componentOf(state.station, component).held === 'dry') return 'dry'
  if (food?.clock) return 'time'
  const batch = what === 'batch' ? findBatch(state, id) : undefined
  if (!batch) return what === 'batch' ? null : (state[STOCK[what]][id]?.food?.heldBy ?? null)
  const cooling = coolingAt(state, place, now)
  if (cooling && cooling.state !== 'cooled') return 'cooling'
  return batchHeldBy(state.station, batch, now)
}

const STOCK = { pan: 'pans', backup: 'backupPans' } as const

/**
 * The last day of food: of what is marked, of what is told now, and of the day on which the oldest of
 * its batches that nobody dated was started, the earliest. Null where its first day is
 * unknown: of a use-by alone, and of hot food out of a pack.
 */
export const endMark = (
  state: RunningState,
  place: Placed,
  { dates = {} }: Found,
  now: number,
): { readonly mark: DateStamp | null } | { readonly refusal: Refusal } => {
  const own = place.food?.dateMark ?? null
  const isMade = needsBatch(componentOf(state.station, place.component))
  const undated = batchesIn(state, place).filter(([, one]) => one.dateMark === null)
  const started = isMade ? undated.map(([, one]) => one.startedAt) : []
  const first =
    started.length === 0 ? [] : [civilDate(Math.min(...started), state.station.timeZone)]
  const days = [...first, ...(dates.preparedOn === undefined ? [] : [dates.preparedOn])]
  const preparedOn = days.sort()[0]
  const told = toldMark(state, { preparedOn, useBy: dates.useBy }, now)
  if ('refusal' in told) return told
  const isOfPack = !isMade && keptBy(state, place, now) === 'hot'
  const isKnown =
    preparedOn !== undefined || (own !== null && !isOfPack && place.food?.dayEndsAt === undefined)
  return { mark: isKnown ? earlierStamp(own, told.mark) : null }
}

const readAt = (
  state: RunningState,
  place: Placed,
  heldBy: FoodHistory['heldBy'],
  now: number,
): FoodHistory['read'] => {
  const { what, id, offSale } = place
  const because = boundAt(state, what, id)?.because
  if (because === 'too-warm' || because === 'out-of-limits') return 'out'
  if (offSale?.why === 'out-of-limits') return 'out'
  if (offSale && offSale.why !== 'cooling-missed') return 'unread'
  if (heldBy === 'dry') return 'in-limits'
  if (state.clockJump !== null && !isReadSinceJump(state, what, id)) return 'unread'
  if (heldBy === 'cooling') return place.newest ? 'in-limits' : 'unread'
  if (heldBy !== 'hot' && heldBy !== 'cold') return 'in-limits'
  const held = what === 'batch' ? waitingOf(state, id, now) : holdingOf(state, what, id, now)
  if (!held || held.state === 'missed') return 'unread'
  return held.state === 'out' ? 'out' : 'in-limits'
}

const clockAt = (state: RunningState, place: Placed, now: number): FoodHistory['clock'] => {
  const because = boundAt(state, place.what, place.id)?.because
  if (because === 'time') return 'over'
  if (!place.food?.clock) return 'never'
  const until = lastsUntil(state, place)
  return until !== null && until <= now ? 'over' : 'running'
}

const dateAt = (
  state: RunningState,
  place: Placed,
  mark: DateStamp | null,
  now: number,
): FoodHistory['date'] => {
  if (boundAt(state, place.what, place.id)?.because === 'date') return 'past'
  const endsAt = place.food?.dayEndsAt
  if (endsAt !== undefined && now >= endsAt) return 'past'
  if (mark === null) return 'none'
  return pastStamp(mark, now) ? 'past' : 'ahead'
}

const readyAt = (state: RunningState, { what, id, stage }: Placed): FoodHistory['ready'] => {
  const batch = what === 'batch' ? findBatch(state, id) : undefined
  if (!batch || stage !== 'making') return 'yes'
  const isRaw = isCookedHere(componentOf(state.station, batch.component)) && !batch.cooked
  return isRaw ? 'not-cooked' : 'making'
}

/** What happened to food up to now. @param mark its last day, by `endMark` */
export const historyOf = (
  state: RunningState,
  place: Placed,
  mark: DateStamp | null,
  now: number,
  { read = false }: Found = NOTHING,
): FoodHistory => {
  const heldBy = keptBy(state, place, now)
  const cooling = coolingAt(state, place, now)
  const isLost =
    cooling?.state === 'missed' ||
    cooling?.state === 'warmed' ||
    (cooling?.state === 'no-start' && cooling.below)
  return {
    made: 'no',
    ready: readyAt(state, place),
    heldBy,
    from: comesOffHeat(componentOf(state.station, place.component)) ? 'cooked' : 'room',
    clock: clockAt(state, place, now),
    read: read ? 'in-limits' : readAt(state, place, heldBy, now),
    coolingMissed: isLost || place.offSale?.why === 'cooling-missed',
    reheated: batchesIn(state, place).some(([, one]) => one.reheat?.ok === true),
    date: dateAt(state, place, mark, now),
  }
}

/**
 * Days that are left from thawing on, where food is frozen now. The day on which it is frozen is used
 * where it may be the first, or was thawed on it (3-501.17, and F28).
 */
export const daysLeftAt = ({ station }: RunningState, mark: DateStamp, now: number): number => {
  const { days } = limitsOf(station).dateMark
  return Math.min(days - 1, daysLeftFrozen(mark, civilDate(now, station.timeZone)))
}

/** What was thawed on its last day has none left: frozen again it could only be thrown out. */
const withoutDays = (ends: readonly EndOf[]): readonly EndOf[] =>
  ends.map((one) =>
    one.end === 'freeze' && one.offered
      ? { ...one, offered: false, why: 'no-days-left', paragraph: '3-501.18(A)' }
      : one,
  )

/** The ends of the food at a place as it is now; local code and the person in charge decide. */
export const endsAt = (
  state: RunningState,
  place: Placed,
  now: number,
  found: Found = NOTHING,
): readonly EndOf[] => {
  const dated = endMark(state, place, found, now)
  const mark = 'mark' in dated ? dated.mark : null
  const crewMeal = state.station.day.crewMeal === true
  const ends = endsOf(historyOf(state, place, mark, now, found), crewMeal)
  return mark !== null && daysLeftAt(state, mark, now) < 1 ? withoutDays(ends) : ends
}
