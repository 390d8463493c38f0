import { itemOf, pansOf } from '#lib/menu/find.ts'
import type { Portion } from '#lib/menu/portion.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface Level {
  readonly unit: Portion['unit']
  /** What the component's pans hold. */
  readonly inPan: number
  /** Owed to accepted builds that aren't made yet. */
  readonly onTickets: number
  /** In pan minus on tickets; below zero where builds are short. */
  readonly remaining: number
  /** Whole portions left to sell, never below zero. */
  readonly portionsLeft: number
}

/** What one component's pans hold, owe and have left. */
export const levelOf = (state: RunningState, component: string): Level => {
  const portion = state.portions[component]
  let inPan = 0
  for (const pan of pansOf(state.station))
    if (pan.component === component) inPan += state.pans[pan.id]?.amount ?? 0
  const onTickets = state.accounts[component]?.onTickets ?? 0
  const remaining = inPan - onTickets
  return {
    unit: portion?.unit ?? 'mg',
    inPan,
    onTickets,
    remaining,
    portionsLeft: portion ? Math.max(0, Math.floor(remaining / portion.amount)) : 0,
  }
}

export const levelsOf = (state: RunningState): Record<string, Level> =>
  Object.fromEntries(state.station.components.map((one) => [one.id, levelOf(state, one.id)]))

/** Whole portions that can be sold: none where selling was stopped. */
export const sellable = (
  state: RunningState,
  levels: Readonly<Record<string, Level>>,
  component: string,
): number =>
  state.notSelling.component[component] === undefined ? (levels[component]?.portionsLeft ?? 0) : 0

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
        sellable(state, levels, part.component) === 0,
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
      item.base.choices.reduce((sum, choice) => sum + sellable(state, levels, choice), 0),
      'base',
    )
  for (const part of item.parts)
    if (part.required || part.component === item.heart)
      limit(sellable(state, levels, part.component), part.component)
  return { remaining, limitedBy, gone }
}

/** The first component of which less is left than wanted; null where the pans can fill it all. */
export const lacking = (state: RunningState, wanted: Amounts): string | null => {
  for (const [component, amount] of Object.entries(wanted))
    if (amount > 0 && levelOf(state, component).remaining < amount) return component
  return null
}
