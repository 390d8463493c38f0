import { backupsOf, behindOf, owedBehind, type Wanted } from '#lib/rooms/pans/facts/behind.ts'
import { keptAmount } from '#lib/rooms/pans/facts/kept.ts'
import { lastingIn, type Selling } from '#lib/rooms/pans/facts/selling.ts'
import { usableIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { itemOf, linePansOf } from '#lib/station/find.ts'
import type { Portion } from '#lib/station/portion.ts'

export interface Level {
  readonly unit: Portion['unit']
  /** What the component's pans on the line hold and may be sold. */
  readonly inPan: number
  /** What stands in its back-up pans and may be sold. */
  readonly behind: number
  /** What is in pans and may not be sold: off sale, to be thrown out, or nobody knows of it. */
  readonly heldBack: number
  /** Owed to accepted builds that aren't made yet. */
  readonly onTickets: number
  /**
   * In pan minus what on tickets is taken from the line, without what ends too early to be sold;
   * below zero where builds are short.
   */
  readonly remaining: number
  /** Of in pan, what ends too early to be sold. */
  readonly ending: number
  /** When the first of that ends, epoch milliseconds; null for none. */
  readonly endsAt: number | null
  /** Whole portions left to sell, never below zero. */
  readonly portionsLeft: number
}

/** What one component's pans hold, owe and have left; of a state as an order finds it, for that order. */
export const levelOf = (state: Selling, component: string): Level => {
  const portion = state.portions[component]
  const places = linePansOf(state.station, component).map(({ id }) => id)
  let inPan = 0
  let heldBack = 0
  for (const id of places) {
    const usable = usableIn(state, 'pan', id)
    inPan += usable
    heldBack += (state.pans[id]?.amount ?? 0) - usable
  }
  const lasting = lastingIn(state, 'pan', places)
  const behind = behindOf(state, component, 'all')
  for (const one of Object.values(state.backupPans))
    if (one.component === component) heldBack += one.amount
  heldBack -= behind
  const onTickets = state.accounts[component]?.onTickets ?? 0
  const remaining = lasting.amount - onTickets + owedBehind(state, component)
  return {
    unit: portion?.unit ?? 'mg',
    inPan,
    behind,
    heldBack,
    onTickets,
    remaining,
    ending: lasting.ending,
    endsAt: lasting.endsAt,
    portionsLeft: portion ? Math.max(0, Math.floor(remaining / portion.amount)) : 0,
  }
}

/** What is left to sell in a component's protected back-up pans, and when the first of it ends. */
export const leftBehind = (
  state: Selling,
  component: string,
): Pick<Level, 'remaining' | 'ending' | 'endsAt'> => {
  const { amount, ending, endsAt } = lastingIn(state, 'backup', backupsOf(state, component))
  return { remaining: amount - owedBehind(state, component), ending, endsAt }
}

export const levelsOf = (state: Selling): Record<string, Level> =>
  Object.fromEntries(state.station.components.map((one) => [one.id, levelOf(state, one.id)]))

/** Whole portions that aren't kept for others, of what is left; `item` is what is to be sold. */
const freePortions = (
  state: RunningState,
  level: Level | undefined,
  component: string,
  item: string | null,
): number => {
  const keep = state.keeps[component]
  const portion = state.portions[component]
  if (!level || !portion) return 0
  if (!keep || (item !== null && keep.for.includes(item))) return level.portionsLeft
  const free = level.remaining - keptAmount(state, component)
  return Math.max(0, Math.floor(free / portion.amount))
}

/**
 * Whole portions that can be sold to anybody, or as part of an item: none where selling was stopped,
 * and not what is kept for others.
 */
export const sellable = (
  state: RunningState,
  levels: Readonly<Record<string, Level>>,
  component: string,
  item: string | null = null,
): number =>
  state.notSelling.component[component] === undefined
    ? freePortions(state, levels[component], component, item)
    : 0

export interface ItemLeft {
  /** How many can be sold now, 0 or more. */
  readonly remaining: number
  /** What limits it: a component, `base`, or the item itself where it isn't sold. */
  readonly limitedBy: string | null
  /** Usual components that a guest goes without, since there are none. */
  readonly gone: readonly string[]
}

/**
 * How many of an item are left: its base summed over the choices, its heart, and what can't be
 * left out. An optional component never limits it; when it is gone the item is sold without.
 */
export const itemLeft = (
  state: RunningState,
  levels: Readonly<Record<string, Level>>,
  id: string,
): ItemLeft => {
  const item = itemOf(state.station, id)
  const gone = item.parts
    .filter(
      (part) =>
        part.usual !== 'no' &&
        !part.required &&
        part.component !== item.heart &&
        sellable(state, levels, part.component, id) === 0,
    )
    .map((part) => part.component)
  if (state.notSelling.item[id] !== undefined) return { remaining: 0, limitedBy: id, gone }
  let remaining = Number.POSITIVE_INFINITY
  let limitedBy: string | null = null
  const limit = (count: number, by: string) => {
    if (count < remaining) {
      remaining = count
      limitedBy = by
    }
  }
  if (item.base)
    limit(
      item.base.choices.reduce((sum, choice) => sum + sellable(state, levels, choice, id), 0),
      'base',
    )
  for (const part of item.parts)
    if (part.required || part.component === item.heart)
      limit(sellable(state, levels, part.component, id), part.component)
  return { remaining, limitedBy, gone }
}

export interface Lacking {
  readonly component: string
  /** Where there would be enough, but for its time: when the first of it ends. Else null. */
  readonly endsAt: number | null
}

const lackOf = (
  state: Selling,
  component: string,
  wanted: number,
  isBehind: boolean,
): Lacking | null => {
  const { remaining, ending, endsAt } = (isBehind ? leftBehind : levelOf)(state, component)
  if (wanted <= 0 || remaining >= wanted) return null
  return { component, endsAt: remaining + ending >= wanted ? endsAt : null }
}

/** Components of which less is left than wanted, those of the line first; none where all can be filled. */
export const lacking = (state: Selling, { line, behind }: Wanted): readonly Lacking[] =>
  [line, behind].flatMap((wanted, place) =>
    Object.entries(wanted).flatMap(
      ([component, amount]) => lackOf(state, component, amount, place === 1) ?? [],
    ),
  )
