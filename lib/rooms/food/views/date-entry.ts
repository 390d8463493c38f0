/** The days of food as they are typed, and what comes of them before they are sent. */

import { civilDate, dayBefore } from '#lib/measure/civil.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import { type DateProblem, lastDayOf, type ToldDates } from '#lib/safety/told-dates.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** As the fields hold it: 2026-11-25, or '' while nothing is said. */
export interface DateEntry {
  readonly preparedOn: string
  readonly useBy: string
  readonly wasFrozen: boolean
  readonly frozenOn: string
  readonly thawedOn: string
}

/** Nothing is answered beforehand, but the day on which a batch was started, which is written down. */
export const noDates = (startedOn: CivilDate | null = null): DateEntry => ({
  preparedOn: startedOn ?? '',
  useBy: '',
  wasFrozen: false,
  frozenOn: '',
  thawedOn: '',
})

export interface JudgedDates {
  /** As a command carries it. */
  readonly told: ToldDates
  /** What is still to be said before it can be sent. */
  readonly lacks: 'preparedOn' | 'frozenOn' | 'thawedOn' | null
  readonly problem: DateProblem | null
  readonly lastDay: CivilDate | null
  /** That day is past. */
  readonly isOver: boolean
  readonly isReady: boolean
}

const lackOf = ({ preparedOn, wasFrozen, frozenOn, thawedOn }: DateEntry): JudgedDates['lacks'] => {
  if (preparedOn === '') return 'preparedOn'
  if (!wasFrozen) return null
  return frozenOn === '' ? 'frozenOn' : thawedOn === '' ? 'thawedOn' : null
}

/** What is typed, judged as the server will judge it; a batch is never younger than its start. */
export const judgeDates = (
  station: StationDocument,
  entry: DateEntry,
  startedOn: CivilDate | null,
  now: number,
): JudgedDates => {
  const today = civilDate(now, station.timeZone)
  const { useBy, wasFrozen, frozenOn, thawedOn } = entry
  const lacks = lackOf(entry)
  const isYounger = startedOn !== null && entry.preparedOn > startedOn && entry.preparedOn <= today
  const preparedOn = isYounger ? startedOn : entry.preparedOn
  const told: ToldDates = {
    ...(preparedOn === '' ? {} : { preparedOn }),
    ...(useBy === '' ? {} : { useBy }),
    ...(wasFrozen && frozenOn !== '' && thawedOn !== ''
      ? { freezing: { frozenOn, thawedOn } }
      : {}),
  }
  const last = lastDayOf(told, today, limitsOf(station))
  const problem = 'problem' in last ? last.problem : null
  const lastDay = 'lastDay' in last && lacks === null ? last.lastDay : null
  const isOver = lastDay !== null && lastDay < today
  const isReady = lacks === null && problem === null && !isOver
  return { told, lacks, problem, lastDay, isOver, isReady }
}

/** The days that are a tap each, in the station's zone. */
export const daysOffered = (
  { timeZone }: StationDocument,
  now: number,
): { readonly today: CivilDate; readonly yesterday: CivilDate } => {
  const today = civilDate(now, timeZone)
  return { today, yesterday: dayBefore(today) }
}

/** The civil day on which a batch was started; null where nothing of it is known. */
export const startedOn = (state: RunningState, batch: string | null): CivilDate | null => {
  const startedAt = batch === null ? undefined : state.batches[batch]?.startedAt
  return startedAt === undefined ? null : civilDate(startedAt, state.station.timeZone)
}
