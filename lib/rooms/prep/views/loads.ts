/** The loads of a plan: what one begins with, and another number of them. */
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { loadSize, type Yields } from '#lib/rooms/prep/facts/load-size.ts'
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const MOST_LOADS = 40

/** Whether anything on sale takes a component; `items` null: all of them are. */
export const isOnSale = (
  station: StationDocument,
  component: string,
  items: readonly string[] | null,
): boolean =>
  station.items.some(
    ({ id, base, parts }) =>
      (items === null || items.includes(id)) &&
      (parts.some((part) => part.component === component) ||
        base?.choices.includes(component) === true),
  )

/** What to begin with: of each component that something on sale takes, par; none where enough is at hand. */
export const firstChoices = (
  station: StationDocument,
  wanted: Readonly<Record<string, Pick<ParTold, 'loads'>>>,
  minutes: Readonly<Record<string, number>>,
  items: readonly string[] | null,
  yields: Yields = {},
): readonly PrepChoice[] =>
  station.components.flatMap((component): readonly PrepChoice[] => {
    const { id } = component
    const loads = wanted[id]?.loads ?? 0
    if (loads === 0 || !isOnSale(station, id, items)) return []
    const measured = minutes[id]
    return [
      {
        ...{ component: id, loads, portions: loads * loadSize(station, component, yields) },
        ...(measured === undefined ? {} : { minutes: measured }),
      },
    ]
  })

/** The same food with another number of loads. */
export const withLoads = (choice: PrepChoice, loads: number, size: number): PrepChoice => {
  const most = Math.max(1, Math.min(MOST_LOADS, loads))
  return { ...choice, loads: most, portions: most * size }
}
