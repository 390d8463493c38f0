/** What stands behind each pan as it is drawn: back-up pans with their lids, batches as pots. */

import { coolingOf, isCookedHere } from '#lib/rooms/food/facts/food-now.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { type BatchPicture, batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { isKeptBack } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent, pansOf } from '#lib/station/find.ts'

export interface VesselPicture {
  readonly what: 'backup' | 'batch'
  readonly id: string
  readonly component: string
  /** A lid stands ready, a box is dry, a pot is on the heat, or comes from there; a tub holds cold food. */
  readonly kind: 'lid' | 'box' | 'pot' | 'tub'
  /**
   * `ready`: it may go on the line; `empty`: the place is there and nothing in it; `due`: its reading is
   * asked for; `under-way`: it is being made, cooled or waits to be finished; else it isn't to be served.
   */
  readonly stage: 'ready' | 'empty' | 'due' | 'under-way' | 'throw-out' | 'off-sale'
  /** Whole portions; null where that isn't known yet. */
  readonly portions: number | null
  /** What is asked of it by then, epoch milliseconds; null where nothing is. */
  readonly at: number | null
  /** That moment is over. */
  readonly isLate: boolean
  /** Lidded, with a scoop of its own: it serves what is kept apart. */
  readonly isGuarded: boolean
  /** The batch as it is told in words; null for a back-up pan. */
  readonly batch: BatchPicture | null
}

const STAGE_OF: Readonly<Record<BatchPicture['stage'], VesselPicture['stage']>> = {
  'throw-out': 'throw-out',
  'off-sale': 'off-sale',
  making: 'under-way',
  cooked: 'under-way',
  'to-cool': 'due',
  cooling: 'under-way',
  'to-read': 'due',
  cooled: 'ready',
  ready: 'ready',
}

const backupPictures = (state: RunningState, now: number): readonly VesselPicture[] =>
  state.station.backups.map(({ id, component, kept, protected: isGuarded }) => {
    const amount = state.backupPans[id]?.amount ?? 0
    const times = foodTimes(state, 'backup', id, now)
    const readBy = times?.readBy ?? null
    return {
      what: 'backup',
      id,
      component,
      kind: kept === 'boxed' ? 'box' : 'lid',
      stage: times?.toThrowOut
        ? 'throw-out'
        : amount <= 0
          ? 'empty'
          : times?.offSale
            ? 'off-sale'
            : isKeptBack(state, 'backup', id)
              ? 'throw-out'
              : readBy === null
                ? 'ready'
                : 'due',
      portions: Math.floor(amount / (state.portions[component]?.amount ?? 1)),
      at: readBy,
      isLate: readBy !== null && readBy <= now,
      isGuarded,
      batch: null,
    }
  })

/** Whether it is cooked here and not cold again: nothing else steams. */
const isPot = (state: RunningState, id: string, now: number): boolean => {
  const batch = state.batches[id]
  const component = findComponent(state.station, batch?.component ?? '')
  if (!batch || !component || batch.reheat?.ok) return true
  if (coolingOf(state.station, batch, now)?.state === 'cooled') return false
  return isCookedHere(component) || component.held === 'hot'
}

/** Of every component: what stands nearest first, back-up pans before batches, pressing ones first. */
export const vesselPictures = (
  state: RunningState,
  now: number,
): Readonly<Record<string, readonly VesselPicture[]>> => {
  const batches = batchPictures(state, now).map(
    (batch): VesselPicture => ({
      what: 'batch',
      id: batch.id,
      component: batch.component,
      kind: isPot(state, batch.id, now) ? 'pot' : 'tub',
      stage: STAGE_OF[batch.stage],
      portions: batch.portions,
      at: batch.at,
      isLate: batch.isLate,
      isGuarded: false,
      batch,
    }),
  )
  const all = [...backupPictures(state, now), ...batches]
  const components = [...new Set(all.map((one) => one.component))]
  return Object.fromEntries(components.map((id) => [id, all.filter((one) => one.component === id)]))
}

/**
 * What is drawn behind each pan of the line: behind the first pan of a food all of it, and behind the
 * last pan also what stands in no pan of the line, before its own.
 */
export const vesselsByPan = (
  state: RunningState,
  now: number,
): Readonly<Record<string, readonly VesselPicture[]>> => {
  const pictures = vesselPictures(state, now)
  const pans = pansOf(state.station)
  const onLine = new Set(pans.map(({ component }) => component))
  const others = Object.entries(pictures).flatMap(([component, list]) =>
    onLine.has(component) ? [] : list,
  )
  return Object.fromEntries(
    pans.map(({ id, component }, index) => {
      const isFirst = pans.findIndex((one) => one.component === component) === index
      const own = isFirst ? (pictures[component] ?? []) : []
      return [id, index === pans.length - 1 ? [...others, ...own] : own]
    }),
  )
}

type Sized = Pick<VesselPicture, 'at' | 'stage'>

/** Whether a time or a word stands on it, for which it needs more room than for a count. */
export const isWide = ({ at, stage }: Sized): boolean =>
  at !== null || stage === 'under-way' || stage === 'throw-out' || stage === 'off-sale'

/** What stands side by side behind one pan: two with counts, or one of them with a time. */
const WIDTH = { plain: 2, wide: 3 } as const
const ROW = 5

/** Rows that vessels take behind one pan, filled from the left; 0 where none stands there. */
export const rowsOf = (vessels: readonly Sized[]): number => {
  let [rows, used] = [0, ROW]
  for (const one of vessels) {
    const width = isWide(one) ? WIDTH.wide : WIDTH.plain
    if (used + width > ROW) {
      rows += 1
      used = 0
    }
    used += width
  }
  return rows
}
