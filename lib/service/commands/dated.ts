/** The day on which food was prepared or opened, as it is told. */
import { dateMark, stampOf } from '#lib/safety/date-marks.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'
import { civilDate, timeOnDayOf } from '#lib/time/civil.ts'

/** The mark of food whose civil day 1 is told; refused where that day is still to come. */
export const toldMark = (
  { station }: RunningState,
  preparedOn: string | undefined,
  now: number,
): { readonly mark: DateStamp | null } | { readonly refusal: Refusal } => {
  if (preparedOn === undefined) return { mark: null }
  const { timeZone } = station
  if (preparedOn > civilDate(now, timeZone)) {
    const byMs = timeOnDayOf(Date.parse(`${preparedOn}T12:00Z`), '00:00', timeZone) - now
    return { refusal: { code: 'wrong-moment', problem: { code: 'in-the-future', byMs } } }
  }
  const mark = dateMark({ preparedOn, freezings: [], useBy: null }, limitsOf(station))
  return { mark: mark.mark === 'last-day' ? stampOf(mark.lastDay, timeZone) : null }
}

/** What was started on an earlier day was prepared on that one, unless somebody says another. */
export const earlierDay = (
  { station }: RunningState,
  { startedAt }: Pick<BatchState, 'startedAt'>,
  now: number,
): string | undefined => {
  const day = civilDate(startedAt, station.timeZone)
  return day < civilDate(now, station.timeZone) ? day : undefined
}
