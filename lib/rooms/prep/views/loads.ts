/** The loads of a plan: what one holds, how many are best, and on how many days they are enough. */
import type { Stakes } from '#lib/estimate/newsvendor.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { type CorrectedYield, correctedPortions } from '#lib/recipes/measured-yield.ts'
import { stakesOf } from '#lib/rooms/advice/facts/stakes.ts'
import type { DaysAlike } from '#lib/rooms/prep/facts/days-alike.ts'
import { pansOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What own batches made of their cards, by component. */
export type Yields = Readonly<Record<string, CorrectedYield>>

/**
 * Portions of one load: as it is made again, corrected by what own batches really made, or as its pan
 * is usually loaded.
 */
export const loadSize = (
  station: StationDocument,
  { id, remake }: Component,
  yields: Yields = {},
): number =>
  (remake && correctedPortions(remake.portionsPerLoad, yields[id])) ??
  pansOf(station).find(({ component }) => component === id)?.usualPortions ??
  1

const MOST_LOADS = 40

/** Cents that so many portions cost over ten days like this one: lost sales and what is left over. */
const costOf = (days: readonly number[], portions: number, { lostCents, leftCents }: Stakes) =>
  days.reduce(
    (sum, wanted) =>
      sum + (wanted > portions ? lostCents * (wanted - portions) : leftCents * (portions - wanted)),
    0,
  )

/** As many loads as cost the least; at least one of what anybody wants. */
export const bestLoads = (days: readonly number[], size: number, stakes: Stakes): number => {
  let best = 1
  for (let loads = 2; loads <= MOST_LOADS; loads += 1)
    if (costOf(days, loads * size, stakes) < costOf(days, best * size, stakes)) best = loads
  return best
}

export const isEnough = ({ days }: DaysAlike, portions: number): readonly boolean[] =>
  days.map((wanted) => wanted <= portions)

/** Cents of food that one load more would leave over beside; null where nobody said what a portion costs. */
export const oneMoreWasted = (
  component: Component,
  { days }: DaysAlike,
  portions: number,
  size: number,
): number | null => {
  const left = (amount: number) =>
    days.reduce((sum, wanted) => sum + Math.max(0, amount - wanted), 0) / Math.max(1, days.length)
  return component.costCents === null
    ? null
    : Math.round((left(portions + size) - left(portions)) * component.costCents)
}

const isOnSale = (station: StationDocument, component: string, items: readonly string[] | null) =>
  station.items.some(
    ({ id, base, parts }) =>
      (items === null || items.includes(id)) &&
      (parts.some((part) => part.component === component) ||
        base?.choices.includes(component) === true),
  )

/** What to begin with: of each component that something on sale takes, the loads that cost the least. */
export const firstChoices = (
  station: StationDocument,
  wanted: Readonly<Record<string, DaysAlike>>,
  minutes: Readonly<Record<string, number>>,
  items: readonly string[] | null,
  yields: Yields = {},
): readonly PrepChoice[] =>
  station.components.flatMap((component): readonly PrepChoice[] => {
    const { id } = component
    const alike = wanted[id]
    if (!alike || !isOnSale(station, id, items)) return []
    const size = loadSize(station, component, yields)
    const loads = bestLoads(alike.days, size, stakesOf(station, id))
    const measured = minutes[id]
    return [
      {
        ...{ component: id, loads, portions: loads * size },
        ...(measured === undefined ? {} : { minutes: measured }),
      },
    ]
  })

/** The same food with another number of loads. */
export const withLoads = (choice: PrepChoice, loads: number, size: number): PrepChoice => {
  const most = Math.max(1, Math.min(MOST_LOADS, loads))
  return { ...choice, loads: most, portions: most * size }
}
