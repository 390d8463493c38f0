/** The days of food as somebody tells them: what its last day is, or why they can't be. */
import { dateMark } from '#lib/safety/date-marks.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { SafetyLimits } from '#lib/safety/limits.ts'

export interface ToldDates {
  /** Day 1: when it was prepared, or its pack was opened. */
  readonly preparedOn?: CivilDate | undefined
  /** The maker's use-by date, of made food the earliest of what went in. */
  readonly useBy?: CivilDate | undefined
  /** Put into the freezer, and taken out to thaw. */
  readonly freezing?: { readonly frozenOn: CivilDate; readonly thawedOn: CivilDate } | undefined
}

export type ToldDay = 'preparedOn' | 'frozenOn' | 'thawedOn'

export type DateProblem =
  | { readonly code: 'day-ahead'; readonly what: ToldDay; readonly on: CivilDate }
  | { readonly code: 'opened-after-use-by'; readonly useBy: CivilDate }
  /** Of frozen food nobody said how many of its days were used before. */
  | { readonly code: 'no-first-day' }
  | { readonly code: 'frozen-before-first-day' }
  | { readonly code: 'thawed-before-frozen' }
  /** Its days or its use-by were over when it went into the freezer. */
  | { readonly code: 'frozen-too-late' }

/** Why what is told can't be; null where it can. Dates as 2026-11-25: their order is that of text. */
const problemOf = (
  { preparedOn, useBy, freezing }: ToldDates,
  today: CivilDate,
): DateProblem | null => {
  const days = { preparedOn, frozenOn: freezing?.frozenOn, thawedOn: freezing?.thawedOn }
  for (const what of ['preparedOn', 'frozenOn', 'thawedOn'] as const) {
    const on = days[what]
    if (on !== undefined && on > today) return { code: 'day-ahead', what, on }
  }
  if (preparedOn !== undefined && useBy !== undefined && preparedOn > useBy)
    return { code: 'opened-after-use-by', useBy }
  if (!freezing) return null
  if (preparedOn === undefined) return { code: 'no-first-day' }
  if (freezing.frozenOn < preparedOn) return { code: 'frozen-before-first-day' }
  return freezing.thawedOn < freezing.frozenOn ? { code: 'thawed-before-frozen' } : null
}

/**
 * The last day of food by what is told of it: of its days (day 1 is the first, those in the freezer
 * don't count) and the maker's use-by, which no freezing moves, the earlier. Null where neither is told.
 * Source: FDA Food Code 2022, 3-501.17. Throws RangeError for no date.
 */
export const lastDayOf = (
  told: ToldDates,
  today: CivilDate,
  limits: SafetyLimits,
): { readonly lastDay: CivilDate | null } | { readonly problem: DateProblem } => {
  const problem = problemOf(told, today)
  if (problem) return { problem }
  const { preparedOn, useBy = null, freezing } = told
  if (preparedOn === undefined) return { lastDay: useBy }
  const mark = dateMark({ preparedOn, freezings: freezing ? [freezing] : [], useBy }, limits)
  return mark.mark === 'last-day'
    ? { lastDay: mark.lastDay }
    : { problem: { code: 'frozen-too-late' } }
}
