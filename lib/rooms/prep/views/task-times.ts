/** Tasks on the clock: days side by side, periods behind, each task in a lane of its own. */

import { civilDate } from '#lib/measure/civil.ts'
import type { Here, Period, Task, Unready } from '#lib/prep/prep-plan.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'

/** Of the width, what the day of the service has at least. */
const LAST_DAY = 0.6

interface Stretch {
  readonly from: number
  readonly to: number
}

export interface DayDrawn extends Stretch {
  readonly on: string
  /** Of the whole width, 0 to 1. */
  readonly left: number
  readonly width: number
}

export interface TaskDrawn {
  readonly task: Task
  readonly left: number
  readonly width: number
  readonly lane: number
  readonly isUnready: boolean
}

export interface TimesDrawn {
  readonly days: readonly DayDrawn[]
  readonly periods: readonly (Period & { readonly left: number; readonly width: number })[]
  readonly tasks: readonly TaskDrawn[]
  readonly lanes: number
}

/** A day on which little is done keeps room for its words. */
const LEAST_DAY_MS = 3 * HOUR_MS

const daysOf = (moments: readonly Stretch[], timeZone: string): readonly DayDrawn[] => {
  const byDay = new Map<string, Stretch>()
  for (const { from, to } of moments) {
    const on = civilDate(from, timeZone)
    const before = byDay.get(on)
    byDay.set(on, {
      from: Math.min(before?.from ?? from, from),
      to: Math.max(before?.to ?? to, to),
    })
  }
  const days = [...byDay].sort(([one], [other]) => (one < other ? -1 : 1))
  const long = ({ from, to }: Stretch) => Math.max(LEAST_DAY_MS, to - from)
  const all = days.reduce((sum, [, day]) => sum + long(day), 0)
  const last = days.at(-1)?.[1]
  const share = last ? long(last) / Math.max(1, all) : 1
  // The day of the service has the most to say.
  const kept = days.length > 1 ? Math.max(LAST_DAY, share) : 1
  let left = 0
  return days.map(([on, day]) => {
    const width =
      day === last ? kept : (long(day) / Math.max(1, all - (last ? long(last) : 0))) * (1 - kept)
    const drawn = { on, ...day, to: day.from + long(day), left, width }
    left += width
    return drawn
  })
}

const within = (days: readonly DayDrawn[], at: number): number => {
  const day = days.findLast((one) => one.from <= at) ?? days[0]
  if (!day) return 0
  const share = (Math.min(at, day.to) - day.from) / Math.max(1, day.to - day.from)
  return day.left + Math.max(0, share) * day.width
}

/**
 * @param least the width that a task's words need, of the whole, 0 to 1
 */
export const drawTimes = (
  { tasks, unready }: { readonly tasks: readonly Task[]; readonly unready: readonly Unready[] },
  { crew, periods }: { readonly crew: readonly Here[]; readonly periods: readonly Period[] },
  { timeZone, least }: { readonly timeZone: string; readonly least: number },
): TimesDrawn => {
  const lacking = new Set(unready.map(({ task }) => task))
  const shown = tasks.filter(({ kind }) => kind !== 'serve')
  const served = tasks.find(({ kind }) => kind === 'serve')
  const doors = served?.from ?? Number.POSITIVE_INFINITY
  const there = crew
    .map(({ from, to }) => ({ from, to: Math.min(to, doors) }))
    .filter(({ from, to }) => from < to)
  const days = daysOf([...shown, ...there], timeZone)
  const ends: number[] = []
  const drawn = shown.map((task): TaskDrawn => {
    const start = within(days, task.from)
    const width = Math.max(least, within(days, task.to) - start)
    const day = days.findLast((one) => one.from <= task.from) ?? days[0]
    const end = day ? day.left + day.width : 1
    const left = Math.max(0, Math.min(start, Math.max(day?.left ?? 0, end - width), 1 - width))
    const free = ends.findIndex((until) => until <= left + 1e-9)
    const lane = free === -1 ? ends.length : free
    ends[lane] = left + width
    return { task, left, width, lane, isUnready: lacking.has(task.id) }
  })
  return {
    days,
    periods: periods
      .filter(({ from, to }) => days.some((day) => from < day.to && day.from < to))
      .map((period) => {
        const left = within(days, period.from)
        return { ...period, left, width: within(days, Math.min(period.to, doors)) - left }
      })
      .filter(({ width }) => width > 0),
    tasks: drawn,
    lanes: ends.length,
  }
}
