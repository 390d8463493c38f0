/** A civil date in the station's time zone, 2026-11-25. Written so, the order is that of text. */
export type CivilDate = string

/** A date mark as it goes with food: the last day, and the instant that ends it, epoch ms. */
export interface DateStamp {
  readonly lastDay: CivilDate
  readonly endsAt: number
  /** The maker's date as it was told, which no freezing moves; left away where none was. */
  readonly useBy?: CivilDate
}

/** The earlier of what was told of a maker's date; undefined where nothing was. */
export const earlierUseBy = (
  one: CivilDate | null | undefined,
  other: CivilDate | null | undefined,
): CivilDate | undefined => [one, other].filter((date) => date != null).sort()[0]

/** The earlier of two marks governs, and so does the earlier maker's date; null where neither food has one. */
export const earlierStamp = (one: DateStamp | null, other: DateStamp | null): DateStamp | null => {
  if (one === null || other === null) return one ?? other
  const first = one.endsAt <= other.endsAt ? one : other
  const useBy = earlierUseBy(one.useBy, other.useBy)
  return useBy === undefined || useBy === first.useBy ? first : { ...first, useBy }
}

/** Whether food is past its mark: from the midnight that ends its last day on. */
export const pastStamp = (stamp: DateStamp, now: number): boolean => now >= stamp.endsAt
