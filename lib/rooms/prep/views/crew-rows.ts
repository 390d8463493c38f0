/** A row for each person who is there, with the periods of two days, as it is tapped. */
import { dayBefore } from '#lib/measure/civil.ts'
import {
  type CrewEntry,
  type CrewTime,
  type CrewTyped,
  joined,
  type Period,
} from '#lib/rooms/prep/views/crew-entry.ts'

/** Whether somebody is there for a whole period; times are compared as they are written. */
const isFor = ({ from, to }: CrewTime, period: Period): boolean =>
  from !== '' && from <= period.from && to >= period.to

/** Whether a time is of whole periods, from a bell to a bell. */
const isOfPeriods = (one: CrewTime, periods: readonly Period[]): boolean =>
  one.from < one.to &&
  periods.some(({ from }) => from === one.from) &&
  periods.some(({ to }) => to === one.to)

/** Whether nothing of a time is said yet. */
const isBlank = ({ from, to }: CrewTime): boolean => from === '' && to === ''

/** The two days on which a service is prepared: the one before it, and its own. */
export const daysFor = (on: string): readonly string[] => (on === '' ? [] : [dayBefore(on), on])

export interface CrewRow {
  readonly person: string
  readonly initials: string
  readonly adult: boolean
  /** Of the day before and of the day, by period; none where there are no bells. */
  readonly days: readonly {
    readonly on: string
    readonly cells: readonly { readonly period: Period; readonly isThere: boolean }[]
  }[]
  /** What isn't from bell to bell, by its place among all entries. */
  readonly times: readonly { readonly at: number; readonly entry: CrewEntry }[]
}

/** A row for each person, in the order in which they were said. */
export const crewRows = (
  { on, crew }: CrewTyped,
  periods: readonly Period[],
): readonly CrewRow[] => {
  const days = periods.length === 0 ? [] : daysFor(on)
  const isCell = (one: CrewEntry) => days.includes(one.on) && isOfPeriods(one, periods)
  const people = new Set(crew.map(({ person }) => person))
  return [...people].map((person): CrewRow => {
    const own = crew.filter((one) => one.person === person)
    const whole = own.filter(isCell)
    return {
      person,
      initials: own[0]?.initials ?? '',
      adult: own[0]?.adult ?? false,
      days: days.map((day) => ({
        on: day,
        cells: periods.map((period) => ({
          period,
          isThere: whole.some((one) => one.on === day && isFor(one, period)),
        })),
      })),
      times: crew.flatMap((entry, at) =>
        entry.person === person && !isCell(entry) && (days.length === 0 || !isBlank(entry))
          ? [{ at, entry }]
          : [],
      ),
    }
  })
}

/** One person's entries instead of what they were, at their place. */
const placed = <Entry extends CrewTyped>(
  entry: Entry,
  person: string,
  own: readonly CrewEntry[],
): Entry => {
  const first = entry.crew.findIndex((one) => one.person === person)
  const others = entry.crew.filter((one) => one.person !== person)
  const before = entry.crew.slice(0, first).filter((one) => one.person !== person).length
  return { ...entry, crew: [...others.slice(0, before), ...own, ...others.slice(before)] }
}

/** Times of a row's periods, and its other times; `own`: what its entries were. */
const timesOf = (row: CrewRow, own: readonly CrewEntry[]): readonly CrewEntry[] => {
  const { person, initials, adult } = row
  const periods = row.days[0]?.cells.map(({ period }) => period) ?? []
  const whole = row.days.flatMap(({ on, cells }) =>
    cells
      .filter(({ isThere }) => isThere)
      .map(({ period: { from, to } }) => ({ initials, adult, on, from, to })),
  )
  return [
    ...joined(whole, periods, own).map((one) => ({ ...one, person })),
    ...row.times.map(({ entry }) => ({ ...entry, initials, adult })),
  ]
}

/** With a row as it is now; one of whom no time is said is there still, and lacks it. */
export const withRow = <Entry extends CrewTyped>(entry: Entry, row: CrewRow): Entry => {
  const { person, initials, adult } = row
  const own = timesOf(
    row,
    entry.crew.filter((one) => one.person === person),
  )
  const blank = { person, initials, adult, on: entry.on, from: '', to: '' }
  return placed(entry, person, own.length > 0 ? own : [blank])
}

export const withoutPerson = <Entry extends CrewTyped>(entry: Entry, person: string): Entry =>
  placed(entry, person, [])

/** A row with one of its periods the other way. */
export const toggled = (row: CrewRow, on: string, period: string): CrewRow => ({
  ...row,
  days: row.days.map((day) =>
    day.on === on
      ? {
          on,
          cells: day.cells.map((cell) =>
            cell.period.id === period ? { ...cell, isThere: !cell.isThere } : cell,
          ),
        }
      : day,
  ),
})
