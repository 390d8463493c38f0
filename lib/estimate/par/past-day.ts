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

/**
 * Builds that were lost for a component that an item can do without: as many of those who found it
 * gone as there were no builds that could have gone without it. Others may have been, nobody knows.
 */
export const tappedOfPart = (day: PastDay, component: string): number => {
  const until = day.until[component]
  if (!until) return 0
  const wanted = (day.takings[component] ?? 0) - (until.takings[component] ?? 0)
  return Math.max(0, wanted - (soldIn(day) - soldIn(until)))
}

/** A stretch of a day in which the same items could be had, with the builds sold in it, by item. */
export interface Stretch {
  /** Ids of the items that could be had. */
  readonly had: readonly string[]
  readonly sold: Readonly<Record<string, number>>
}

/** When an item couldn't be made any more: with the first that it needs, of its bases with the last. */
const untilOf = (item: Item, { soldOut, until }: PastDay): Sold | null => {
  const ends = neededOf(item).flatMap((any) => {
    if (!any.every((component) => soldOut.includes(component))) return []
    const own = any.flatMap((component) => until[component] ?? [])
    return own.length === 0 ? [] : [own.reduce((a, b) => (soldIn(a) >= soldIn(b) ? a : b))]
  })
  return ends.length === 0 ? null : ends.reduce((a, b) => (soldIn(a) <= soldIn(b) ? a : b))
}

/**
 * A day as stretches, cut where an item ran out: within each all that was wanted of what could be had
 * was seen. An item of which nothing was sold wasn't on sale.
 */
export const stretchesOf = (
  { items }: Pick<StationDocument, 'items'>,
  day: PastDay,
): readonly Stretch[] => {
  const onSale = items.filter(({ id }) => (day.items[id] ?? 0) > 0)
  const ends = onSale
    .flatMap((item) => {
      const end = untilOf(item, day)
      return end === null ? [] : [{ id: item.id, end }]
    })
    .sort((one, other) => soldIn(one.end) - soldIn(other.end))
  const stretches: Stretch[] = []
  let before: Readonly<Record<string, number>> = {}
  let gone: readonly string[] = []
  const cut = (after: Readonly<Record<string, number>>) => {
    const had = onSale.flatMap(({ id }) => (gone.includes(id) ? [] : [id]))
    const sold = Object.fromEntries(
      had.map((id) => [id, Math.max(0, (after[id] ?? 0) - (before[id] ?? 0))]),
    )
    if (soldIn({ items: sold }) > 0) stretches.push({ had, sold })
    before = after
  }
  for (const { id, end } of ends) {
    cut(end.items)
    gone = [...gone, id]
  }
  cut(day.items)
  return stretches
}
