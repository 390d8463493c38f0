/** What goes along with food that is set aside. */

import { civilDate } from '#lib/measure/civil.ts'
import { reachOf } from '#lib/needs/contact.ts'
import { waysTo } from '#lib/needs/declared.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { mixKey } from '#lib/rooms/care/facts/mixing.ts'
import { batchesIn, daysLeftAt, keptBy } from '#lib/rooms/day/facts/ends/food-history.ts'
import { comesOffHeat, firstDoneAt } from '#lib/rooms/food/facts/food-now.ts'
import { type CivilDate, type DateStamp, earlierUseBy } from '#lib/safety/date-stamp.ts'
import type { SetAsideEnd } from '#lib/safety/ends.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { GoesAlong } from '#lib/service/events/end-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { findBatch, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findComponent } from '#lib/station/find.ts'
import { labelOf } from '#lib/station/label.ts'

const madeOf = (state: RunningState, component: string): readonly string[] => {
  const found = findComponent(state.station, component)
  const ways = found ? [...waysTo(state.station, found)] : []
  return [...new Set(ways.flatMap((way) => way.at(-1) ?? []))].sort()
}

/** Labels of products of before that are in it, under the ingredient that they were of. */
const beforeIn = (state: RunningState, place: Placed): GoesAlong['before'] =>
  Object.entries(state.mixing).flatMap(([ingredient, { pans, before }]) =>
    pans.includes(mixKey(place))
      ? state.station.ingredients.flatMap((one) =>
          before.includes(one.id) ? [{ ingredient, label: labelOf(one) }] : [],
        )
      : [],
  )

const soiledBy = (state: RunningState, place: Placed): readonly string[] => {
  const probed = place.what === 'batch' ? (findBatch(state, place.id)?.probedWith ?? []) : []
  return [...new Set([...place.soiledBy, ...probed])].sort()
}

const isOpen = (state: RunningState, { what, id }: Placed): boolean =>
  what === 'pan' || (what === 'backup' && state.backupPans[id]?.guarded !== true)

/** A batch was in the kitchen yet: only what it was made on touched it, and what a probe brought. */
const touchedBy = (state: RunningState, place: Placed): GoesAlong['touched'] => {
  const { station, soiled, lent } = kitchenOf(state)
  const reach = reachOf(station, soiled, lent)?.get(place.component)
  if (!reach) return null
  const reached = isOpen(state, place) ? reach.line : reach.backup
  const all = new Set([...reached.map((one) => one.component), ...soiledBy(state, place)])
  return [...all].sort().map((component) => ({ component, madeOf: madeOf(state, component) }))
}

/**
 * Of what is cold by now, the cooling that ended last: all of it was cold before it came together. From
 * room temperature it is counted from when the food was made, so that of food of several ages none goes
 * along: it would be held against the oldest of it.
 */
const cooledIn = (
  batches: ReturnType<typeof batchesIn>,
  heldBy: GoesAlong['heldBy'],
  { coolingFrom, finishedAt }: Pick<GoesAlong, 'coolingFrom' | 'finishedAt'>,
): readonly Reading[] => {
  if (heldBy !== 'cold') return []
  const newest = ({ cooling }: BatchState) => cooling.at(-1)?.at ?? 0
  const [last] = batches.map(([, batch]) => batch).sort((one, other) => newest(other) - newest(one))
  if (!last) return []
  return coolingFrom === 'cooked' || firstDoneAt(last) === finishedAt ? last.cooling : []
}

/** How it is set aside, and what was read and told of it now. */
export interface SetAsideAs {
  readonly end: SetAsideEnd
  readonly mark: DateStamp | null
  readonly reading: Reading | null
  readonly presentUntil: number | undefined
  /** The maker's, as it was told now. */
  readonly useBy?: CivilDate | undefined
  readonly now: number
}

/** All that is known of food as it leaves its service. */
export const goesAlong = (
  state: RunningState,
  place: Placed,
  { end, mark, reading, presentUntil, useBy, now }: SetAsideAs,
): GoesAlong => {
  const { station, labelVersions, portions } = state
  const component = componentOf(station, place.component)
  const batches = batchesIn(state, place)
  const makers = earlierUseBy(useBy, mark?.useBy)
  const heldBy = keptBy(state, place, now) ?? component.held
  const own = place.what === 'batch' ? findBatch(state, place.id) : undefined
  const newest = reading ?? place.newest
  const today = civilDate(now, station.timeZone)
  const ingredients = madeOf(state, place.component)
  const finished = batches.flatMap(([, batch]) => firstDoneAt(batch) ?? [])
  const oldest = place.what === 'batch' ? null : (stockFood(state, place)?.finishedAt ?? null)
  const moments = [...finished, ...(oldest === null ? [] : [oldest])]
  const finishedAt = moments.length === 0 ? null : Math.min(...moments)
  const coolingFrom = comesOffHeat(component) ? ('cooked' as const) : ('room' as const)
  const until = presentUntil ?? own?.presentUntil
  const versions = Object.fromEntries(
    ingredients.flatMap((id) => {
      const version = labelVersions?.[id]
      return version === undefined ? [] : [[id, version] as const]
    }),
  )
  return {
    unit: portions[place.component]?.unit ?? 'mg',
    heldBy,
    dateMark: mark,
    ...(end === 'freeze'
      ? {
          frozen: {
            on: today,
            daysLeft: mark && daysLeftAt(state, mark, now),
            ...(makers === undefined ? {} : { useBy: makers }),
          },
        }
      : {}),
    finishedAt,
    batches: batches.map(([batch, { startedAt, finishedAt }]) => ({
      batch,
      startedAt,
      finishedAt,
    })),
    cooking: batches.flatMap(([, { cooking }]) => cooking),
    cooling: [
      ...(own?.cooling ?? cooledIn(batches, heldBy, { coolingFrom, finishedAt })),
      ...(end === 'cool' && reading ? [reading] : []),
    ],
    coolingFrom,
    ...(end === 'cool' && until !== undefined ? { presentUntil: until } : {}),
    cooledAgain: batches.some(([, one]) => one.cooledAgain),
    reheated: batches.some(([, one]) => one.reheat?.ok === true),
    soiledBy: soiledBy(state, place),
    touched: touchedBy(state, place),
    stoodOpen: isOpen(state, place),
    madeOf: ingredients,
    ...(labelVersions === undefined ? {} : { labels: versions }),
    before: beforeIn(state, place),
    reading: newest,
  }
}

const stockFood = ({ pans, backupPans }: RunningState, { what, id }: Placed) =>
  (what === 'pan' ? pans[id] : backupPans[id])?.food
