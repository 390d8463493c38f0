/**
 * What guests wanted in a service, counted by five minutes: of this service so far, and of past
 * ones as their service records keep it. Times are minutes of the civil day in the station's zone.
 */

export const SLOT_MINUTES = 5

/** Counts of one service. Slot i begins at `opens` + 5·i; each list is as long as it was counted. */
export interface ServiceCounts {
  /** Minute of the day at which guests come in and the first slot begins; who comes earlier is in it. */
  readonly opens: number
  /** That is when the doors opened, as somebody said, and no mere opening of the service. */
  readonly doors?: true
  /** Minute of the day at which the service closes, planned or real. */
  readonly closes: number
  /** Guests expected, as said at opening; null where nobody said. */
  readonly expected: number | null
  /** Builds sold. */
  readonly builds: readonly number[]
  /** Of those, by item. */
  readonly items: Readonly<Record<string, readonly number[]>>
  /** Builds that wanted a component, by component, those that went without since it was gone included. */
  readonly takings: Readonly<Record<string, readonly number[]>>
  /** Portions that those wanted. */
  readonly portions: Readonly<Record<string, readonly number[]>>
  /** Of the takings: "wanted it, gone" with no build. Left away until the first, and in older records. */
  readonly taps?: Readonly<Record<string, readonly number[]>>
}

/** What one build wants: an item, and portions by component, gone or not. */
export interface Wanted {
  /** Null where nothing was sold: a tap on "wanted it, gone" counts as demand, but not as a build. */
  readonly item: string | null
  readonly portions: Readonly<Record<string, number>>
}

export const slotAt = (counts: Pick<ServiceCounts, 'opens'>, minute: number): number =>
  Math.max(0, Math.floor((minute - counts.opens) / SLOT_MINUTES))

export const slotsOf = ({ opens, closes }: Pick<ServiceCounts, 'opens' | 'closes'>): number =>
  Math.max(1, Math.ceil((closes - opens) / SLOT_MINUTES))

export const noCounts = (
  opens: number,
  closes: number,
  expected: number | null,
): ServiceCounts => ({ opens, closes, expected, builds: [], items: {}, takings: {}, portions: {} })

const added = (
  list: readonly number[] | undefined,
  slot: number,
  by: number,
): readonly number[] => {
  const next = [...(list ?? [])]
  while (next.length <= slot) next.push(0)
  next[slot] = (next[slot] ?? 0) + by
  return next
}

/**
 * Counts what a build wants at a minute of the day. `sign` -1 takes back what was counted before,
 * as where an order is changed or cancelled; sums stay right, one slot may fall below zero.
 */
export const countBuild = (
  counts: ServiceCounts,
  minute: number,
  wanted: Wanted,
  sign: 1 | -1 = 1,
): ServiceCounts => {
  const slot = slotAt(counts, minute)
  const takings = { ...counts.takings }
  const portions = { ...counts.portions }
  const taps = { ...counts.taps }
  for (const [component, amount] of Object.entries(wanted.portions)) {
    if (amount <= 0) continue
    takings[component] = added(takings[component], slot, sign)
    portions[component] = added(portions[component], slot, sign * amount)
    if (wanted.item === null) taps[component] = added(taps[component], slot, sign)
  }
  if (wanted.item === null) return { ...counts, takings, portions, taps }
  const items = { ...counts.items, [wanted.item]: added(counts.items[wanted.item], slot, sign) }
  return { ...counts, builds: added(counts.builds, slot, sign), items, takings, portions }
}

export const total = (list: readonly number[] | undefined): number => {
  let sum = 0
  for (const one of list ?? []) sum += one
  return sum
}

/** How far a minute lies into the service, in slots with their fraction, within opening and close. */
export const slotsInto = (
  counts: Pick<ServiceCounts, 'opens' | 'closes'>,
  minute: number,
): number => Math.max(0, Math.min(minute, counts.closes) - counts.opens) / SLOT_MINUTES
