/** A past service as par reads it: what was wanted in all, and what ran out before its end. */
import type { Item, StationDocument } from '#lib/station/station-document.ts'

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

const takes = (item: Item, component: string): boolean =>
  item.heart === component || item.parts.some((part) => part.component === component)

/**
 * Builds of an item that were wanted on a day, as far as it tells: those sold, and those that somebody
 * tapped as wanted and gone, which counts the heart and no build.
 */
export const wantedOfItem = (
  { items }: Pick<StationDocument, 'items'>,
  item: Item,
  day: PastDay,
): number => {
  const sold = Math.max(0, day.items[item.id] ?? 0)
  const others = items.filter((one) => takes(one, item.heart))
  if (others.some(({ heart }) => heart !== item.heart)) return sold
  const all = others.reduce((sum, { id }) => sum + Math.max(0, day.items[id] ?? 0), 0)
  const tapped = Math.max(0, (day.takings[item.heart] ?? 0) - all)
  return sold + (all > 0 ? (tapped * sold) / all : tapped / others.length)
}
