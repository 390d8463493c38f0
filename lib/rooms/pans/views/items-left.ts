/** How many of each item can still be sold, and what it means for them that a component isn't. */

import { itemLeft, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import type { RunningState } from '#lib/service/state.ts'
import { itemOf } from '#lib/station/find.ts'

export interface StopEffect {
  /** Items that can't be sold without it. */
  readonly cannot: readonly string[]
  /** Items that are sold without it. */
  readonly without: readonly string[]
  /** Items that are sold in another base. */
  readonly otherBase: readonly string[]
}

/** What it means for the items that none of a component is sold: by choice, or since it is gone. */
export const effectOfStopping = (state: RunningState, component: string): StopEffect => {
  const levels = levelsOf(state)
  const selling = state.station.items.filter((item) => state.notSelling.item[item.id] === undefined)
  const of = (wanted: keyof StopEffect): readonly string[] =>
    selling
      .filter((item) => {
        const part = item.parts.find((one) => one.component === component)
        if (part?.required || item.heart === component) return wanted === 'cannot'
        if (item.base?.choices.includes(component)) {
          const others = item.base.choices.filter((one) => one !== component)
          const isLeft = others.some((one) => sellable(state, levels, one) > 0)
          return wanted === (isLeft ? 'otherBase' : 'cannot')
        }
        return wanted === 'without' && part !== undefined && part.usual !== 'no'
      })
      .map((item) => item.id)
  return { cannot: of('cannot'), without: of('without'), otherBase: of('otherBase') }
}

export interface ItemPicture {
  readonly id: string
  readonly remaining: number
  readonly selling: boolean
  /** Component, `base` or the item itself. */
  readonly limitedBy: string | null
  /** Components that it is sold without. */
  readonly gone: readonly string[]
}

/** Every item of the menu with how many can still be sold. */
export const itemPictures = (state: RunningState): readonly ItemPicture[] => {
  const levels = levelsOf(state)
  return state.station.items.map(({ id }) => {
    const { remaining, limitedBy, gone } = itemLeft(state, levels, id)
    return { id, remaining, limitedBy, gone, selling: state.notSelling.item[id] === undefined }
  })
}

export type WhyNone = 'not-served' | 'short' | 'not-loaded' | 'sold-out'

/** Why none of a component can be sold: nothing was put in yet, its food waits for a decision, builds lack it, or it is gone. */
export const whyNone = (state: RunningState, component: string): WhyNone => {
  const pans = Object.values(panPictures(state)).filter((one) => one.component === component)
  if (pans.some(({ trouble }) => trouble === 'off-sale' || trouble === 'throw-out'))
    return 'not-served'
  if (pans.some(({ standing }) => standing === 'short')) return 'short'
  return pans.every(({ standing }) => standing === 'not-loaded') ? 'not-loaded' : 'sold-out'
}

/** Whether nothing was put into any pan of an item's bases yet. */
export const isBaseUnloaded = (state: RunningState, item: string): boolean =>
  itemOf(state.station, item).base?.choices.every((one) => whyNone(state, one) === 'not-loaded') ??
  false
