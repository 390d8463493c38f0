/** What is typed of a plan: its day and its guests; who is there is in crew-entry. */
import { civilDate, dayBefore, startOfNextDay } from '#lib/measure/civil.ts'
import {
  asRows,
  asSaid,
  type CrewEntry,
  crewOf,
  isSaidTwice,
} from '#lib/rooms/prep/views/crew-entry.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface GroupEntry {
  readonly label: string
  readonly guests: string
  readonly at: string
}

export interface PlanEntry {
  readonly kind: 'real' | 'practice'
  readonly on: string
  readonly doorsOpen: string
  readonly doorsClose: string
  readonly bells: string | null
  readonly walkIn: string
  readonly groups: readonly GroupEntry[]
  /** null: all of them. */
  readonly items: readonly string[] | null
  readonly crew: readonly CrewEntry[]
}

/** Tomorrow, with the document's doors, its first bells, and who is there by them. */
export const firstEntry = (station: StationDocument, now: number): PlanEntry => {
  const { day, timeZone } = station
  const on = civilDate(startOfNextDay(now, timeZone), timeZone)
  const bells = day.bells?.[0]?.id ?? null
  return {
    kind: 'real',
    on,
    doorsOpen: day.doors?.open ?? '11:20',
    doorsClose: day.doors?.close ?? day.closes ?? '13:00',
    bells,
    walkIn: '',
    groups: [],
    items: null,
    crew: asRows(crewOf(station, bells, on)),
  }
}

/** Initials by the id of each entry of a plan's crew, as GET /services/crew tells them; whose are gone isn't in it. */
type Told = Readonly<Record<string, string>>

/**
 * How each entry of the crew is called, on every screen and on paper: by the initials that are told; whose
 * are gone as an adult, or a student by their number at a time. `c1` is said nowhere.
 */
export const crewNames = (
  crew: ServicePlan['crew'],
  told: Told,
  person: (isAdult: boolean, number: number) => string,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    crew.map((one, index) => {
      const same = crew
        .slice(0, index)
        .filter(({ adult, on, from }) => adult === one.adult && on === one.on && from === one.from)
      return [one.id, told[one.id] ?? person(one.adult, same.length + 1)]
    }),
  )

/** A plan as its fields show it; whose initials are gone has to be said anew. */
export const entryOf = (plan: ServicePlan, told: Told): PlanEntry => {
  const { kind, on, doorsOpen, doorsClose, bells, guests, items } = plan
  return {
    ...{ kind, on, doorsOpen, doorsClose, bells, items },
    walkIn: guests.walkIn === null ? '' : String(guests.walkIn),
    groups: guests.groups.map(({ label, guests: count, at }) => ({
      ...{ label, guests: String(count), at: at ?? '' },
    })),
    crew: asRows(
      plan.crew.map(({ id, adult, on: day, from, to }) => ({
        ...{ initials: told[id] ?? '', adult, on: day, from, to },
      })),
    ),
  }
}

const whole = (text: string): number | null => (/^\d{1,5}$/.test(text.trim()) ? Number(text) : null)

export type PlanLack =
  | 'day'
  | 'doors'
  | 'guests'
  | 'group'
  | 'crew'
  | 'initials'
  | 'twice'
  | 'items'

/** The first that keeps it from being sent; null where nothing does. The server says what else is wrong. */
export const lackOf = (entry: PlanEntry): PlanLack | null => {
  if (entry.on === '') return 'day'
  if (entry.doorsOpen === '' || entry.doorsClose === '') return 'doors'
  if (entry.walkIn.trim() !== '' && whole(entry.walkIn) === null) return 'guests'
  if (entry.groups.some(({ label, guests }) => label.trim() === '' || whole(guests) === null))
    return 'group'
  if (entry.items?.length === 0) return 'items'
  if (entry.crew.some(({ initials }) => initials.trim() === '')) return 'initials'
  if (isSaidTwice(entry.crew)) return 'twice'
  if (entry.crew.some(({ from, to }) => from === '' || to === '')) return 'crew'
  return null
}

export const guestsOf = ({
  walkIn,
  groups,
}: Pick<PlanEntry, 'walkIn' | 'groups'>): number | null => {
  const counts = [whole(walkIn), ...groups.map(({ guests }) => whole(guests))]
  const said = counts.filter((one) => one !== null)
  return said.length === 0 ? null : said.reduce((sum, one) => sum + one, 0)
}

/** As the command takes it. */
export const planCommandOf = (entry: PlanEntry, station: string) => ({
  type: 'plan' as const,
  station,
  kind: entry.kind,
  on: entry.on,
  doorsOpen: entry.doorsOpen,
  doorsClose: entry.doorsClose,
  bells: entry.bells,
  guests: {
    walkIn: whole(entry.walkIn),
    groups: entry.groups.map(({ label, guests, at }) => ({
      ...{ label: label.trim(), guests: whole(guests) ?? 0 },
      ...(at === '' ? {} : { at }),
    })),
  },
  items: entry.items,
  crew: asSaid(entry.crew),
})

/** Another day of service: who was said for the one before it moves along. */
export const onDay = (entry: PlanEntry, on: string): PlanEntry => {
  if (on === '') return { ...entry, on }
  const before = entry.on === '' ? '' : dayBefore(entry.on)
  const moved = (one: CrewEntry): CrewEntry => {
    if (one.on === entry.on) return { ...one, on }
    return one.on === before ? { ...one, on: dayBefore(on) } : one
  }
  return { ...entry, on, crew: entry.crew.map(moved) }
}
