/** A past service as par reads it: what was wanted in all, and what ran out before its end. */
import type { Item, StationDocument } from '#lib/station/station-document.ts'

/** Builds that were sold in a part of a day, by item, and those that wanted a component meanwhile. */
export interface Sold {
  readonly items: Readonly<Record<string, number>>
  readonly takings: Readonly<Record<string, number>>
}

export interface PastDay {
  /** Civil date. */
  readonly on: string
  /** Guests expected, as somebody said before; null where nobody did. */
  readonly expected: number | null
  /** Builds sold. */
  readonly builds: number
  /** Of those, by item. */
  readonly items: Readonly<Record<string, number>>
  /** Builds that wanted a component, "wanted it, gone" included, and the portions that those wanted. */
  readonly takings: Readonly<Record<string, number>>
  readonly portions: Readonly<Record<string, number>>
  /** Of those builds: taps of "wanted it, gone", with no build; none are told in older records. */
  readonly taps: Readonly<Record<string, number>>
  /** Components that were gone at its end: of them at least so much was wanted. */
  readonly soldOut: readonly string[]
  /** Of those: what had been sold as one was taken last. */
  readonly until: Readonly<Record<string, Sold>>
}

/** The service that is planned. */
export interface DayAhead {
  /** Civil date. */
  readonly on: string
  readonly expected: number | null
  /** Builds where neither guests nor a past service tell. */
  readonly firstBuilds: number
}

const DAY_MS = 86_400_000

/** Days since 1970 of a civil date. */
export const dayNumber = (on: string): number => Math.round(Date.parse(`${on}T00:00:00Z`) / DAY_MS)

/** 0 to 6, one for each day of the week. */
export const weekdayOf = (on: string): number => (((dayNumber(on) + 4) % 7) + 7) % 7

/** Of an item: without one of these it isn't made. All of its bases together are one. */
const neededOf = ({ heart, base, parts }: Item): readonly (readonly string[])[] => [
  [heart],
  ...parts.filter(({ required }) => required).map(({ component }) => [component]),
  ...(base ? [base.choices] : []),
]

/** Whether an item couldn't be made any more at the end of a day. */
export const ranOut = (item: Item, soldOut: readonly string[]): boolean =>
  neededOf(item).some((any) => any.every((component) => soldOut.includes(component)))

/** Whether an item is never made without a component. */
export const isNeeded = (item: Item, component: string): boolean =>
  neededOf(item).some((any) => any.length === 1 && any[0] === component)

const takes = (item: Item, component: string): boolean =>
  item.heart === component || item.parts.some((part) => part.component === component)

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

/** Builds sold in a part of a day. */
export const soldIn = ({ items }: Pick<Sold, 'items'>): number =>
  sumOf(Object.values(items).map((count) => Math.max(0, count)))

/**
 * How often somebody tapped that an item was wanted and gone: that counts the heart and no build.
 * Items that share a heart share its taps by what was sold of them; none is known where another item
 * has that heart as a part.
 */
export const tappedOfItem = (
  { items }: Pick<StationDocument, 'items'>,
  item: Item,
  day: Sold,
): number => {
  const others = items.filter((one) => takes(one, item.heart))
  if (others.some(({ heart }) => heart !== item.heart)) return 0
  const sold = ({ id }: Pick<Item, 'id'>) => Math.max(0, day.items[id] ?? 0)
  const all = sumOf(others.map(sold))
  const tapped = Math.max(0, (day.takings[item.heart] ?? 0) - all)
  return all > 0 ? (tapped * sold(item)) / all : tapped / others.length
}

/** A stretch of a day in which the same could be had, with the builds sold in it, by item. */
export interface Stretch {
  /** By item on sale: of the guests who want it so many are served, 0 to 1. */
  readonly serves: Readonly<Record<string, number>>
  readonly sold: Readonly<Record<string, number>>
}

/** Of the guests who want an item so many are served where a part is gone that it can do without. */
export type DoWithout = (item: Item, component: string) => number

const servesOf = (item: Item, gone: readonly string[], doWithout: DoWithout): number => {
  if (ranOut(item, gone)) return 0
  return gone.reduce((share, component) => {
    const isPart = item.parts.some((part) => part.component === component)
    return isPart ? share * doWithout(item, component) : share
  }, 1)
}

/**
 * A day as stretches, cut where something ran out: within each all that was wanted of what could be
 * had was seen. An item of which nothing was sold wasn't on sale.
 */
export const stretchesOf = (
  { items }: Pick<StationDocument, 'items'>,
  day: PastDay,
  doWithout: DoWithout,
): readonly Stretch[] => {
  const onSale = items.filter(({ id }) => (day.items[id] ?? 0) > 0)
  const ends = day.soldOut
    .flatMap((component) => {
      const until = day.until[component]
      return until ? [{ component, until }] : []
    })
    .sort((one, other) => soldIn(one.until) - soldIn(other.until))
  const stretches: Stretch[] = []
  const before: Record<string, number> = {}
  const gone: string[] = []
  const cut = (after: Readonly<Record<string, number>>) => {
    const serves = Object.fromEntries(
      onSale.map((item) => [item.id, servesOf(item, gone, doWithout)]),
    )
    const sold: Record<string, number> = {}
    for (const { id } of onSale) {
      const more = Math.max(0, (after[id] ?? 0) - (before[id] ?? 0))
      before[id] = (before[id] ?? 0) + more
      if ((serves[id] ?? 0) > 0) sold[id] = more
    }
    if (soldIn({ items: sold }) > 0) stretches.push({ serves, sold })
  }
  for (const { component, until } of ends) {
    cut(until.items)
    gone.push(component)
  }
  cut(day.items)
  return stretches
}
