import { civilDate } from '#lib/measure/civil.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import { lastDayOf, type ToldDates } from '#lib/safety/told-dates.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

/** The mark of food whose days are told, null where none is; refused where they can't be. */
export const toldMark = (
  { station }: RunningState,
  { preparedOn, useBy, freezing }: ToldDates,
  now: number,
): { readonly mark: DateStamp | null } | { readonly refusal: Refusal } => {
  const { timeZone } = station
  const today = civilDate(now, timeZone)
  const last = lastDayOf({ preparedOn, useBy, freezing }, today, limitsOf(station))
  if ('problem' in last) return { refusal: { code: 'wrong-date', problem: last.problem } }
  if (last.lastDay === null) return { mark: null }
  const makers = useBy === undefined ? {} : { useBy }
  const thawed = freezing === undefined ? {} : { thawedOn: freezing.thawedOn }
  return { mark: { ...stampOf(last.lastDay, timeZone), ...makers, ...thawed } }
}

/**
 * Day 1 of a batch: the day that is told, never later than the one on which it was started; else
 * that one, where it was an earlier one than now, or something else is told of its days.
 */
export const firstDayOf = (
  { station }: RunningState,
  { startedAt }: Pick<BatchState, 'startedAt'>,
  { preparedOn, useBy, freezing }: ToldDates,
  now: number,
): string | undefined => {
  const started = civilDate(startedAt, station.timeZone)
  const today = civilDate(now, station.timeZone)
  if (preparedOn !== undefined)
    return preparedOn > started && preparedOn <= today ? started : preparedOn
  const isTold = useBy !== undefined || freezing !== undefined
  return isTold || started < today ? started : undefined
}
