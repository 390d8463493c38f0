/** A civil date in the station's time zone, 2026-11-25. Written so, the order is that of text. */
export type CivilDate = string

/** A date mark as it goes with food: the last day, and the instant that ends it, epoch ms. */
export interface DateStamp {
  readonly lastDay: CivilDate
  readonly endsAt: number
  /** The maker's date as it was told, which no freezing moves; left away where none was. */
  readonly useBy?: CivilDate
  /** The day of thawing, from which on its days pass again; left away of what wasn't frozen. */
  readonly thawedOn?: CivilDate
}

/** The earlier of what was told of a maker's date; undefined where nothing was. */
export const earlierUseBy = (
  one: CivilDate | null | undefined,
  other: CivilDate | null | undefined,
): CivilDate | undefined => [one, other].filter((date) => date != null).sort()[0]

const laterDay = (one?: CivilDate, other?: CivilDate): CivilDate | undefined =>
  [one, other]
    .filter((date) => date !== undefined)
    .sort()
    .at(-1)

/** The earlier of two marks governs, and so does the earlier maker's date; null where neither food has one. */
export const earlierStamp = (one: DateStamp | null, other: DateStamp | null): DateStamp | null => {
  if (one === null || other === null) return one ?? other
  const first = one.endsAt <= other.endsAt ? one : other
  const useBy = earlierUseBy(one.useBy, other.useBy)
  // Of two that end together the one that was thawed later has fewer days left, should both be frozen.
  const thawedOn =
    one.endsAt === other.endsAt ? laterDay(one.thawedOn, other.thawedOn) : first.thawedOn
  if (useBy === first.useBy && thawedOn === first.thawedOn) return first
  return {
    ...first,
    ...(useBy === undefined ? {} : { useBy }),
    ...(thawedOn === undefined ? {} : { thawedOn }),
  }
}

/** Whether food is past its mark: from the midnight that ends its last day on. */
export const pastStamp = (stamp: DateStamp, now: number): boolean => now >= stamp.endsAt
