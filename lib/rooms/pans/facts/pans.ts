/** The line as the lead sees it: how full each pan is, what of it is owed, what is left to sell. */

import type { ReadingKind } from '#lib/estimate/scoop-bias.ts'
import { backupsOf, owedBehind } from '#lib/rooms/pans/facts/behind.ts'
import { mostInPan } from '#lib/rooms/pans/facts/capacity.ts'
import { type Level, levelOf } from '#lib/rooms/pans/facts/levels.ts'
import type { End } from '#lib/safety/ends.ts'
import { EMPTY_STOCK, type HeldStock } from '#lib/service/food-state.ts'
import { boundAt, clockDoubt, isForSale, usableIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { linePansOf, pansOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

/** Under this share of what it was loaded with, a pan counts as nearly empty. */
export const NEARLY_EMPTY = 1 / 4

export type PanStanding =
  /** Nothing was put in yet. */
  | 'not-loaded'
  /** Accepted builds take more of it than the pans hold. */
  | 'short'
  /** No whole portion is left to sell. */
  | 'sold-out'
  /** Used up, while another pan of the component still has some. */
  | 'empty'
  | 'nearly-empty'
  | 'stocked'

/** Why nothing of what a pan holds may be sold, whatever it holds. */
export type PanTrouble =
  /** Its time or date is over, or its ways ended: it waits for initials. */
  | 'throw-out'
  /** Out of its limits, or a reading was missed. */
  | 'off-sale'
  /** The clock jumped: what it holds is read again, or the jump is confirmed. */
  | 'unread'
  /** The clock jumped, and its time can't be told until that is confirmed. */
  | 'timed'
  /** Nothing is recorded of its food. */
  | 'not-known'

export interface PanPicture {
  readonly pan: string
  readonly component: string
  readonly standing: PanStanding
  readonly trouble: PanTrouble | null
  /** What its food came to at the close; null where nobody said, or something was put in since. */
  readonly ended: End | null
  /** False where selling was stopped by choice, whatever the pan holds. */
  readonly selling: boolean
  /** Share of a full pan that is in it, 0 to 1. */
  readonly filled: number
  /** Share of a full pan that is owed to builds, 0 to `filled`. */
  readonly owed: number
  /** Whole portions left to sell out of this pan, 0 or more. */
  readonly left: number
  /** Portions on tickets, a part of one counted whole; what no pan can fill counts at the last. */
  readonly onTickets: number
  /** Portions that accepted builds lack of the component, a part of one counted whole. */
  readonly lacking: number
  readonly unit: Level['unit']
  /** What it holds, milligrams or pieces. */
  readonly amount: number
  /** One portion, milligrams or pieces. */
  readonly each: number
  /** Epoch milliseconds; null where it was never loaded. */
  readonly loadedAt: number | null
  /** Components whose scoop went into it: it may contain them until it is emptied and washed. */
  readonly soiledBy: readonly string[]
  /** Components whose scoop stands in for its own, or did, until both pans are changed. */
  readonly standInFrom: readonly string[]
  /** Components for whose scoop its own stands in, or did, until both pans are changed. */
  readonly lentTo: readonly string[]
  /** Of its component's back-up pans, however they are kept; null where the station has none. */
  readonly backup: { readonly readySince: number | null } | null
}

const standingOf = (
  component: { readonly level: Level; readonly loaded: boolean },
  pan: { readonly amount: number; readonly full: number; readonly load: number },
): PanStanding => {
  if (component.level.remaining < 0) return 'short'
  if (component.level.portionsLeft === 0) return component.loaded ? 'sold-out' : 'not-loaded'
  if (pan.amount === 0) return pan.load === 0 ? 'not-loaded' : 'empty'
  return pan.amount < pan.full * NEARLY_EMPTY ? 'nearly-empty' : 'stocked'
}

/** An empty pan's food was said to come to an end after it was loaded. */
const endOf = (state: RunningState, pan: string, held: HeldStock): End | null => {
  const last = state.ends?.findLast(({ what, id }) => what === 'pan' && id === pan)
  return last && held.amount <= 0 && last.at >= held.loadedAt ? last.end : null
}

const troubleOf = (state: RunningState, pan: string, held: HeldStock): PanTrouble | null => {
  if (boundAt(state, 'pan', pan) !== undefined) return 'throw-out'
  if (held.offSale !== null) return 'off-sale'
  if (held.amount <= 0) return null
  return isForSale(state, 'pan', pan) ? clockDoubt(state, 'pan', pan) : 'not-known'
}

/** One of them that holds food which may be sold; a protected one also where it was only said to be ready. */
const backupOf = (state: RunningState, component: string): PanPicture['backup'] => {
  const own = state.station.backups.filter((one) => one.component === component)
  if (own.length === 0) return null
  const filled = backupsOf(state, component, 'all').flatMap(
    (id) => state.backupPans[id]?.loadedAt ?? [],
  )
  const since = state.backups[component] ?? (filled.length > 0 ? Math.min(...filled) : null)
  return { readySince: since }
}

const picturesOf = (state: RunningState, component: string): readonly PanPicture[] => {
  const level = levelOf(state, component)
  const each = state.portions[component]?.amount ?? 1
  const places = linePansOf(state.station, component).map((pan) => ({
    pan: pan.id,
    held: state.pans[pan.id] ?? EMPTY_STOCK,
  }))
  const lent = Object.values(state.lent)
  const loaded = places.some(({ held }) => held.load > 0 || held.amount > 0)
  let toOwe = level.onTickets - owedBehind(state, component)
  let free = 0
  return places.map(({ pan, held }, place) => {
    const usable = usableIn(state, 'pan', pan)
    const owed = Math.min(usable, toOwe)
    toOwe -= owed
    const before = Math.floor(free / each)
    free += usable - owed
    const full = Math.max(held.full, held.amount)
    return {
      pan,
      component,
      standing: standingOf({ level, loaded }, held),
      trouble: troubleOf(state, pan, held),
      ended: endOf(state, pan, held),
      selling: state.notSelling.component[component] === undefined,
      filled: full === 0 ? 0 : held.amount / full,
      owed: full === 0 ? 0 : owed / full,
      left: Math.floor(free / each) - before,
      onTickets: Math.ceil((owed + (place === places.length - 1 ? toOwe : 0)) / each),
      lacking: Math.ceil(Math.max(0, -level.remaining) / each),
      unit: level.unit,
      amount: held.amount,
      each,
      loadedAt: held.loadedAt > 0 ? held.loadedAt : null,
      soiledBy: held.soiledBy,
      standInFrom: lent.filter((one) => one.component === component).map(({ by }) => by),
      lentTo: lent.filter(({ by }) => by === component).map((one) => one.component),
      backup: backupOf(state, component),
    }
  })
}

export interface Doubt {
  readonly kind: ReadingKind
  /** Portions that it was read to hold, and that it counts as. */
  readonly read: number
  readonly counted: number
}

/** The newest reading of a pan where it is far from what is counted on, until it is read again. */
export const doubtOf = (
  state: RunningState,
  { pan, component, amount, each }: Pick<PanPicture, 'pan' | 'component' | 'amount' | 'each'>,
): Doubt | null => {
  const doubted = state.beliefs[component]?.doubted
  if (!doubted || doubted.pan !== pan) return null
  const { kind, amount: read } = doubted
  return { kind, read: Math.round(read / each), counted: Math.round(amount / each) }
}

/** Every pan of the line by its id. Builds take from a component's pans in the line's order. */
export const panPictures = (state: RunningState): Readonly<Record<string, PanPicture>> => {
  const components = [...new Set(pansOf(state.station).map((pan) => pan.component))]
  return Object.fromEntries(
    components.flatMap((id) => picturesOf(state, id)).map((one) => [one.pan, one]),
  )
}

/** Most whole portions that a pan can be said to hold, at least 1. */
export const mostPortions = (state: RunningState, pan: Pan): number =>
  Math.max(1, Math.floor(mostInPan(state, pan) / (state.portions[pan.component]?.amount ?? 1)))

/** Whole portions as a command carries them: integer milligrams or pieces. */
export const amountOf = (state: RunningState, component: string, portions: number): number =>
  portions * (state.portions[component]?.amount ?? 1)

export interface Queue {
  readonly waiting: number
  readonly making: number
  /** Made and not handed over yet. */
  readonly made: number
  readonly handedOver: number
  /** When the build that waits longest began to, epoch milliseconds. */
  readonly waitingSince: number | null
}

/** How many builds are at each point of the line. */
export const queueOf = (state: RunningState): Queue => {
  const builds = openBuilds(state).map(({ build }) => build)
  const waiting = builds.filter((build) => build.state === 'waiting')
  return {
    waiting: waiting.length,
    making: builds.filter((build) => build.state === 'making').length,
    made: builds.filter((build) => build.state === 'made').length,
    handedOver: state.handedOver,
    waitingSince: waiting.length === 0 ? null : Math.min(...waiting.map((build) => build.since)),
  }
}
