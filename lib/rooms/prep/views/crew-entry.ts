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

/**
 * An adult's times that follow on each other are one: where the bells have no period between them, and
 * the break is short or was said before as one time. `before`: what was said before.
 */
export const joined = (
  times: readonly CrewTime[],
  periods: readonly Period[],
  before: readonly CrewTime[] = [],
): readonly CrewTime[] => {
  const isOne = (last: CrewTime, one: CrewTime): boolean => {
    if (last.initials !== one.initials || last.on !== one.on || !one.adult) return false
    if (periods.some(({ from, to }) => from >= last.to && to <= one.from)) return false
    const wasThere = before.some(
      ({ on, from, to }) => on === one.on && from <= last.to && to >= one.from,
    )
    return wasThere || minutes(one.from) - minutes(last.to) <= MOST_BETWEEN_BELLS
  }
  const all: CrewTime[] = []
  for (const one of times) {
    const last = all.at(-1)
    if (last && isOne(last, one)) all[all.length - 1] = { ...last, to: one.to }
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
    periods,
  )
}

/** A row for each of them, by initials and what they are. */
export const asRows = (times: readonly CrewTime[]): readonly CrewEntry[] =>
  times.map((one) => ({ ...one, person: `${one.initials}, ${one.adult ? 'adult' : 'student'}` }))

/** The same people at the same times on the day before, where they aren't said for it already. */
export const alsoTheDayBefore = <Entry extends CrewTyped>(entry: Entry): Entry => {
  const on = dayBefore(entry.on)
  const isSame = (one: CrewEntry, other: CrewEntry) =>
    one.initials === other.initials &&
    one.on === other.on &&
    one.from === other.from &&
    one.to === other.to
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

/** The last moment of a day: a time ends on the day on which it begins. */
const MIDNIGHT = '23:59'

/** Moments as times of one day each, in two where midnight is between them. */
const timesBetween = (
  { from, to }: { readonly from: number; readonly to: number },
  timeZone: string,
): readonly Pick<CrewTime, 'on' | 'from' | 'to'>[] => {
  const [first, last] = [civilDate(from, timeZone), civilDate(to, timeZone)]
  const [begins, ends] = [clockIn(from, timeZone), clockIn(to, timeZone)]
  if (first === last) return [{ on: first, from: begins, to: ends }]
  return [
    { on: first, from: begins, to: MIDNIGHT },
    { on: last, from: '00:00', to: ends },
  ].filter((one) => one.from < one.to)
}

/** With a row for a certified adult who is there from one moment to another; who that is, is left open. */
export const withReader = <Entry extends CrewTyped>(
  entry: Entry,
  { from, to }: { readonly from: number; readonly to: number },
  timeZone: string,
): Entry => {
  const comes = from === to ? from - COMES_BEFORE_MS : from
  const reader = { person: freePerson(entry), initials: '', adult: true }
  const times = timesBetween({ from: comes, to }, timeZone).map((one) => ({ ...reader, ...one }))
  return { ...entry, crew: [...entry.crew, ...times] }
}

/** Times as they are sent: what overlaps of one and the same is once, or two hands would be counted of them. */
export const asSaid = (crew: readonly CrewEntry[]): readonly CrewTime[] => {
  const all: CrewTime[] = []
  for (const { person: _, ...typed } of crew) {
    const one = { ...typed, initials: typed.initials.trim() }
    const overlaps = (other: CrewTime): boolean =>
      other.initials === one.initials &&
      other.adult === one.adult &&
      other.on === one.on &&
      other.from < one.to &&
      one.from < other.to
    const same = all.filter(overlaps)
    if (same.length === 0) {
      all.push(one)
      continue
    }
    const [first] = same
    const from = [one, ...same].map((time) => time.from).sort()[0] ?? one.from
    const to =
      [one, ...same]
        .map((time) => time.to)
        .sort()
        .at(-1) ?? one.to
    const rest = all.filter((other) => !same.includes(other) || other === first)
    all.splice(
      0,
      all.length,
      ...rest.map((other) => (other === first ? { ...one, from, to } : other)),
    )
  }
  return all
}

/** Whether initials are said of an adult and of a student: one of them is somebody else. */
export const isSaidTwice = (crew: readonly CrewEntry[]): boolean =>
  crew.some(({ initials, adult }) =>
    crew.some((other) => other.initials.trim() === initials.trim() && other.adult !== adult),
  )
