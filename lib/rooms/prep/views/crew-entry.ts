/** Who is there when, as it is typed: people, and the periods and times at which each is there. */
import { civilDate, dayBefore } from '#lib/measure/civil.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A time at which somebody is there, by civil date and times of day, "HH:MM". */
export interface CrewTime {
  readonly initials: string
  readonly adult: boolean
  readonly on: string
  readonly from: string
  readonly to: string
}

export interface CrewEntry extends CrewTime {
  /** Whose row it is in, whatever initials are being typed there. */
  readonly person: string
}

/** What is typed of people, and the day that they are there for. */
export interface CrewTyped {
  readonly on: string
  readonly crew: readonly CrewEntry[]
}

export interface Period {
  readonly id: string
  readonly name: string
  readonly from: string
  readonly to: string
}

const minutes = (time: string): number => {
  const [hours = 0, rest = 0] = time.split(':').map(Number)
  return hours * 60 + rest
}

/** Minutes. An adult stays from one period to the next; students go to other rooms. */
const MOST_BETWEEN_BELLS = 15

/** An adult's times that follow on each other are one. */
const joined = (times: readonly CrewTime[]): readonly CrewTime[] => {
  const all: CrewTime[] = []
  for (const one of times) {
    const last = all.at(-1)
    const stays =
      last?.initials === one.initials &&
      last.on === one.on &&
      one.adult &&
      minutes(one.from) - minutes(last.to) <= MOST_BETWEEN_BELLS
    if (last && stays) all[all.length - 1] = { ...last, to: one.to }
    else all.push(one)
  }
  return all
}

type Belled = Pick<StationDocument, 'day'>

/** Periods of bells, the earliest first; none without bells. */
export const periodsOf = ({ day }: Belled, bells: string | null): readonly Period[] =>
  [...(day.bells?.find(({ id }) => id === bells)?.periods ?? [])].sort(
    (a, b) => minutes(a.from) - minutes(b.from),
  )

/** Who is there by the document's periods, on a civil date. */
export const crewOf = (station: Belled, bells: string | null, on: string): readonly CrewTime[] => {
  const periods = periodsOf(station, bells)
  const there = (station.day.crew ?? []).flatMap(({ bell, period, initials, certified }) => {
    const at = bell === bells ? periods.find(({ id }) => id === period) : undefined
    return at ? [{ initials, adult: certified, on, from: at.from, to: at.to }] : []
  })
  return joined(
    there.sort(
      (a, b) =>
        (a.initials < b.initials ? -1 : Number(a.initials > b.initials)) ||
        minutes(a.from) - minutes(b.from),
    ),
  )
}

/** A row for each of them, by initials and what they are. */
export const asRows = (times: readonly CrewTime[]): readonly CrewEntry[] =>
  times.map((one) => ({ ...one, person: `${one.initials}, ${one.adult ? 'adult' : 'student'}` }))

/** The same people at the same times on the day before, where they aren't said for it already. */
export const alsoTheDayBefore = <Entry extends CrewTyped>(entry: Entry): Entry => {
  const on = dayBefore(entry.on)
  const isSame = (one: CrewEntry, other: CrewEntry) =>
    one.initials === other.initials && one.on === other.on && one.from === other.from
  const more = entry.crew
    .filter((one) => one.on === entry.on)
    .map((one) => ({ ...one, on }))
    .filter((one) => !entry.crew.some((other) => isSame(one, other)))
  return { ...entry, crew: [...more, ...entry.crew] }
}

const freePerson = ({ crew }: CrewTyped): string => {
  const taken = new Set(crew.map(({ person }) => person))
  let number = 1
  while (taken.has(`new ${number}`)) number += 1
  return `new ${number}`
}

/** With a row for one more, of whom nothing is said yet. */
export const withPerson = <Entry extends CrewTyped>(entry: Entry): Entry => {
  const nobody = { person: freePerson(entry), initials: '', adult: false }
  return { ...entry, crew: [...entry.crew, { ...nobody, on: entry.on, from: '', to: '' }] }
}

const clockIn = (at: number, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone }).format(at)

/** Whoever reads at a moment comes a little before. */
const COMES_BEFORE_MS = 15 * 60_000

/** With a row for a certified adult who is there from one moment to another; who that is, is left open. */
export const withReader = <Entry extends CrewTyped>(
  entry: Entry,
  { from, to }: { readonly from: number; readonly to: number },
  timeZone: string,
): Entry => {
  const comes = from === to ? from - COMES_BEFORE_MS : from
  const on = civilDate(from, timeZone)
  const reader = { person: freePerson(entry), initials: '', adult: true, on }
  const times = { from: clockIn(comes, timeZone), to: clockIn(to, timeZone) }
  return { ...entry, crew: [...entry.crew, { ...reader, ...times }] }
}

/** Whether somebody is there for a whole period; times are compared as they are written. */
const isFor = ({ from, to }: CrewTime, period: Period): boolean =>
  from !== '' && from <= period.from && to >= period.to

/** Whether a time is of whole periods, from a bell to a bell. */
const isOfPeriods = (one: CrewTime, periods: readonly Period[]): boolean =>
  periods.some(({ from }) => from === one.from) && periods.some(({ to }) => to === one.to)

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

const timesOf = (row: CrewRow): readonly CrewEntry[] => {
  const { person, initials, adult } = row
  const whole = row.days.flatMap(({ on, cells }) =>
    cells
      .filter(({ isThere }) => isThere)
      .map(({ period: { from, to } }) => ({ initials, adult, on, from, to })),
  )
  return [
    ...joined(whole).map((one) => ({ ...one, person })),
    ...row.times.map(({ entry }) => ({ ...entry, initials, adult })),
  ]
}

/** With a row as it is now; one of whom no time is said is there still, and lacks it. */
export const withRow = <Entry extends CrewTyped>(entry: Entry, row: CrewRow): Entry => {
  const own = timesOf(row)
  const { person, initials, adult } = row
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
