/** A civil date in the station's time zone, 2026-11-25. Written so, the order is that of text. */
export type CivilDate = string

/** A date mark as it goes with food: the last day, and the instant that ends it, epoch ms. */
export interface DateStamp {
  readonly lastDay: CivilDate
  readonly endsAt: number
}

/** The earlier of two marks governs; null where neither food has one. */
export const earlierStamp = (one: DateStamp | null, other: DateStamp | null): DateStamp | null =>
  one === null || other === null ? (one ?? other) : one.endsAt <= other.endsAt ? one : other

/** Whether food is past its mark: from the midnight that ends its last day on. */
export const pastStamp = (stamp: DateStamp, now: number): boolean => now >= stamp.endsAt
