/** Tasks below the pans that they are for: a row for each class period, or hour, in which one starts. */
import { civilDate, instantOn, minuteOfDay } from '#lib/measure/civil.ts'
import type { Period, Task } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface TaskRow {
  /** Civil date. */
  readonly on: string
  /** Whether no row before it is of its day. */
  readonly isFirst: boolean
  /** The class period; null for the hour that begins at `from`. */
  readonly period: string | null
  /** Epoch milliseconds. */
  readonly from: number
  /** By pan, each in the order of its start. */
  readonly byPan: Readonly<Record<string, readonly Task[]>>
  /** Of no pan of the line: labels, tools, the line's own loading. */
  readonly beside: readonly Task[]
}

interface Begun {
  readonly period: string | null
  readonly from: number
  readonly tasks: Task[]
}

/** An adult who stays from one period to the next begins its work before the bell. */
const BETWEEN_BELLS_MS = 15 * MINUTE_MS

/** A reading is within the period that ends with it; work that runs into a period is of that one. */
const periodAt = (periods: readonly Period[], { from, to }: Task): Period | undefined =>
  periods.findLast(
    (one) => one.from <= from && (from < one.to || (from === to && from === one.to)),
  ) ??
  periods.find((one) => from < one.from && one.from < to && one.from - from <= BETWEEN_BELLS_MS)

const HOUR_MINUTES = 60

/** The hour's beginning on the clock; where clocks are set forward over it, the task's own. */
const hourOf = (at: number, timeZone: string): number => {
  const hour = Math.floor(minuteOfDay(at, timeZone) / HOUR_MINUTES)
  const clock = `${String(hour).padStart(2, '0')}:00`
  const from = instantOn(civilDate(at, timeZone), clock, timeZone)
  return from === null || from > at ? at : from
}

/** In the order of time; what is served isn't prepared, and stands in none. */
export const taskRows = (
  station: StationDocument,
  tasks: readonly Task[],
  periods: readonly Period[],
): readonly TaskRow[] => {
  const { timeZone } = station
  const panOf = new Map(
    [...pansOf(station)].reverse().map(({ id, component }) => [component, id] as const),
  )
  const rows = new Map<string, Begun>()
  const prepared = tasks.filter(({ kind }) => kind !== 'serve')
  for (const task of [...prepared].sort((one, other) => one.from - other.from)) {
    const period = periodAt(periods, task)
    const from = period?.from ?? hourOf(task.from, timeZone)
    // An hour that a period cuts in two is two rows.
    const before = periods.findLastIndex((one) => one.from <= task.from)
    const key = period ? `period ${from}` : `${from} ${before}`
    const row = rows.get(key) ?? { period: period?.name ?? null, from, tasks: [] }
    row.tasks.push(task)
    rows.set(key, row)
  }
  let last = ''
  return [...rows.values()].map(({ period, from, tasks: all }) => {
    const on = civilDate(from, timeZone)
    const isFirst = on !== last
    last = on
    const byPan: Record<string, Task[]> = {}
    const beside: Task[] = []
    for (const task of all) {
      const pan = task.component === null ? undefined : panOf.get(task.component)
      if (pan === undefined) beside.push(task)
      else byPan[pan] = [...(byPan[pan] ?? []), task]
    }
    return { on, isFirst, period, from, byPan, beside }
  })
}
