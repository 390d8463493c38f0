/** Par of a station for a day ahead, by its document, its past services and what is at hand. */
import { type ComponentPar, mostWanted, parOf } from '#lib/estimate/par/par.ts'
import { type DayAhead, dayNumber, type PastDay } from '#lib/estimate/par/past-day.ts'
import { portionCents } from '#lib/rooms/advice/facts/stakes.ts'
import { loadSize, type Yields } from '#lib/rooms/prep/facts/load-size.ts'
import { limitsWith } from '#lib/safety/limits.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export interface ParAhead {
  readonly ahead: DayAhead
  readonly past: readonly PastDay[]
  /** Ids of the items on sale; null: all of them. */
  readonly items: readonly string[] | null
  /** Portions at hand by component, left away where there is none. */
  readonly there: Readonly<Record<string, number>>
  readonly yields?: Yields
}

/** Weeks that tell how often there is a service. */
const RHYTHM_WEEKS = 4
/** What no date binds is taken to serve so many more. */
const MOST_CARRIED = 3

const servicesAWeek = (past: readonly PastDay[], on: string): number => {
  const from = dayNumber(on) - 7 * RHYTHM_WEEKS
  return past.filter((day) => dayNumber(day.on) >= from).length / RHYTHM_WEEKS
}

/**
 * How many services to come may still use what is left over. What was held hot is counted as thrown
 * out, since nobody has said yet who would read it while it cools; what is cold lasts to its date, made
 * that day (3-501.17(A)).
 */
export const carriedFor = (
  { held }: Pick<Component, 'held'>,
  { safety }: Pick<StationDocument, 'safety'>,
  { past, ahead }: Pick<ParAhead, 'past' | 'ahead'>,
): number => {
  if (held === 'hot') return 0
  const aWeek = servicesAWeek(past, ahead.on)
  if (held === 'dry') return aWeek > 0 ? MOST_CARRIED : 0
  const { days } = limitsWith(safety.limits).dateMark
  return Math.min(MOST_CARRIED, Math.floor((aWeek * (days - 1)) / 7))
}

/** Portions by component that a day ahead wants on all but a few days of a hundred. */
export const mostWantedFor = (
  station: StationDocument,
  { ahead, past, items }: Pick<ParAhead, 'ahead' | 'past' | 'items'>,
): Readonly<Record<string, number>> => mostWanted({ station, past, ahead, items })

export const parFor = (
  station: StationDocument,
  { ahead, past, items, there, yields }: ParAhead,
): Readonly<Record<string, ComponentPar>> =>
  parOf({
    ...{ station, past, ahead, items },
    of: Object.fromEntries(
      station.components.map((component) => [
        component.id,
        {
          size: loadSize(station, component, yields),
          there: there[component.id] ?? 0,
          costCents: portionCents(station, component.id),
          carriedFor: carriedFor(component, station, { past, ahead }),
        },
      ]),
    ),
  })
