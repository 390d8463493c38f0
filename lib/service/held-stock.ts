/** What stands on the line and behind it, under one way of naming it. */

import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import type { PlaceKind } from '#lib/service/events/food-event.ts'
import {
  type BackupPan,
  EMPTY_STOCK,
  type HeldStock,
  type ToThrowOut,
} from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan, linePansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export type StockKind = 'pan' | 'backup'

/** Whether something stands on the line or behind it: a batch doesn't, and what is made of food. */
export const isOfStock = <Of extends { readonly what: string }>(
  one: Of,
): one is Of & { readonly what: StockKind } => one.what === 'pan' || one.what === 'backup'

type Backup = StationDocument['backups'][number]

export const findBackup = (station: StationDocument, id: string): Backup | undefined =>
  station.backups.find((one) => one.id === id)

/** Which component a pan of the line or a back-up pan holds. */
export const componentIn = (station: StationDocument, id: string): string | undefined =>
  findPan(station, id)?.component ?? findBackup(station, id)?.component

export const stockOf = (
  state: RunningState,
  what: StockKind,
  id: string,
): HeldStock | undefined => {
  const all = what === 'pan' ? state.pans : state.backupPans
  return Object.hasOwn(all, id) ? all[id] : undefined
}

/** Where something of an id stands; null where nothing is called so. */
export const whereIs = (state: RunningState, id: string): StockKind | null => {
  if (state.pans[id]) return 'pan'
  return state.backupPans[id] ? 'backup' : null
}

/** Where a component may be taken from: its pans of the line, then its back-up pans. */
export const stockPlacesOf = (
  state: RunningState,
  component: string,
): readonly { readonly what: StockKind; readonly id: string }[] => [
  ...linePansOf(state.station, component).map(({ id }) => ({ what: 'pan' as const, id })),
  ...Object.entries(state.backupPans).flatMap(([id, one]) =>
    one.component === component ? [{ what: 'backup' as const, id }] : [],
  ),
]

/** @throws where nothing is called so. */
export const withStock = (
  state: RunningState,
  what: StockKind,
  id: string,
  change: (stock: HeldStock) => HeldStock,
): RunningState => {
  if (what === 'pan') {
    const pan = state.pans[id]
    if (!pan) throw new Error(`the line has no pan ${id}`)
    return { ...state, pans: { ...state.pans, [id]: change(pan) } }
  }
  const backup = state.backupPans[id]
  if (!backup) throw new Error(`there is no back-up pan ${id}`)
  const { component, guarded, kept } = backup
  return {
    ...state,
    backupPans: { ...state.backupPans, [id]: { ...change(backup), component, guarded, kept } },
  }
}

/** Every place of the station that holds food, the line first. */
export const allStock = (
  state: RunningState,
): readonly { readonly what: StockKind; readonly id: string; readonly stock: HeldStock }[] => [
  ...Object.entries(state.pans).map(([id, stock]) => ({ what: 'pan' as const, id, stock })),
  ...Object.entries(state.backupPans).map(([id, stock]) => ({
    what: 'backup' as const,
    id,
    stock,
  })),
]

/** The station's back-up pans as they stand before anything is put into them. */
export const emptyBackups = (station: StationDocument): Readonly<Record<string, BackupPan>> =>
  Object.fromEntries(
    station.backups.map((one) => [
      one.id,
      { ...EMPTY_STOCK, component: one.component, guarded: one.protected, kept: one.kept },
    ]),
  )

/**
 * What is left of a stock once its food is gone: how often it was loaded and counted. It counts as a
 * load, so that nothing of before is put back into it.
 */
export const emptied = (stock: HeldStock): HeldStock => ({
  ...EMPTY_STOCK,
  load: stock.load + 1,
  counted: stock.counted,
  soiledBy: stock.soiledBy,
})

/**
 * Whether a stock holds food, or may hold it though nothing is counted there: it was filled since it
 * was last emptied, so that counting it up or taking a finish back brings its food to light.
 */
export const mayHold = ({ amount, full }: Pick<HeldStock, 'amount' | 'full'>): boolean =>
  amount > 0 || full > 0

/** A place, a build or a rest as one text: `pan/pan-rice`, `batch/b2`, `build/21A`. */
export const keyOf = (what: string, id: string): string => `${what}/${id}`

/** That something waits for somebody's initials and is thrown out; undefined where it doesn't. */
export const boundAt = (
  { toThrowOut }: Pick<RunningState, 'toThrowOut'>,
  what: string,
  id: string,
): ToThrowOut | undefined => toThrowOut[keyOf(what, id)]

/** Whether what stands there goes nowhere before somebody decides on it, or initials it. */
export const isKeptBack = (state: RunningState, what: StockKind, id: string): boolean =>
  (stockOf(state, what, id)?.offSale ?? null) !== null || boundAt(state, what, id) !== undefined

/** By how much the clock fell, milliseconds, where nobody has confirmed that yet. */
export const setBackBy = ({ clockJump }: RunningState): number =>
  Math.max(0, -(clockJump?.byMs ?? 0))

/** The newest event may be so old: by then what ends with the day isn't sold by a doubtful clock. */
const STALE_MS = 4 * HOUR_MS

/** Why food can't be sold by a clock whose jump nobody has confirmed. */
export type ClockDoubt =
  /** It has a time or a date, and nobody knows whether that is over. */
  | 'timed'
  /** It is hot or cold, and nobody knows how long ago it was read. */
  | 'unread'

/** Whether something was read since the clock jumped, and its next reading isn't due by then. */
export const isReadSinceJump = (
  { clockJump, station, at }: RunningState,
  what: PlaceKind,
  id: string,
): boolean => {
  const readAt = clockJump?.read[keyOf(what, id)]
  return readAt !== undefined && at < readAt + station.safety.readings.everyMin * MINUTE_MS
}

/** What nobody knows of the food that stands there; null where its clock is in no doubt. */
export const clockDoubt = (state: RunningState, what: StockKind, id: string): ClockDoubt | null => {
  const food = stockOf(state, what, id)?.food
  if (state.clockJump === null || !food) return null
  const { clock, dateMark, dayEndsAt, heldBy } = food
  const mayBeOver = dayEndsAt !== undefined && dayEndsAt <= state.at + setBackBy(state) + STALE_MS
  if (clock !== null || dateMark !== null || mayBeOver) return 'timed'
  const isWatched = heldBy === 'hot' || heldBy === 'cold'
  return isWatched && !isReadSinceJump(state, what, id) ? 'unread' : null
}

/** Whether food stands there that may be sold by a clock without doubt. */
export const isForSale = (state: RunningState, what: StockKind, id: string): boolean => {
  const stock = stockOf(state, what, id)
  if (!stock || stock.amount <= 0 || stock.offSale !== null) return false
  if (boundAt(state, what, id) !== undefined) return false
  if (stock.food === null) {
    const component = componentIn(state.station, id)
    return state.station.components.find((one) => one.id === component)?.held === 'dry'
  }
  return true
}

/**
 * Whether food stands there that may be sold: known, not off sale, not to be thrown out, and no jump of
 * the clock leaves it open how old it is.
 */
export const isUsable = (state: RunningState, what: StockKind, id: string): boolean =>
  isForSale(state, what, id) && clockDoubt(state, what, id) === null

/** What may be taken out of it, in its component's unit. */
export const usableIn = (state: RunningState, what: StockKind, id: string): number =>
  isUsable(state, what, id) ? (stockOf(state, what, id)?.amount ?? 0) : 0

/** One place of food, and since when what it held isn't known to be good. */
export interface Suspect {
  readonly what: StockKind
  readonly id: string
  /** Epoch milliseconds of its last reading in limits; null: since it was loaded. */
  readonly lastGoodAt: number | null
}
