/** What is typed of a tasting before it is planned. */
import { civilDate, instantOn, startOfNextDay } from '#lib/measure/civil.ts'
import { findItem } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { PlanTasting } from '#lib/tasting/command.ts'

export interface TastingEntry {
  readonly on: string
  readonly from: string
  readonly to: string
  /** Name of the class period; null where the times were typed. */
  readonly period: string | null
  readonly portions: number
  readonly tasters: number
  readonly components: readonly string[]
}

interface Period {
  readonly name: string
  readonly from: string
  readonly to: string
}

/** Class periods of the first bells; a tasting is held in one of them. */
export const periodsOf = (station: StationDocument): readonly Period[] =>
  station.day.bells?.[0]?.periods ?? []

/** A batch of two is made and tried in less than a class: common practice, no source. */
const USUAL = { from: '10:00', to: '10:45' }

/** For two, in the next period that isn't over; tomorrow's first where all of today's are. */
export const firstTasting = (
  station: StationDocument,
  now: number,
  components: readonly string[],
): TastingEntry => {
  const { timeZone } = station
  const periods = periodsOf(station)
  const today = civilDate(now, timeZone)
  const isToCome = ({ to }: Pick<Period, 'to'>) => (instantOn(today, to, timeZone) ?? 0) > now
  const next = (periods.length > 0 ? periods : [{ name: '', ...USUAL }]).find(isToCome)
  const period = next ?? periods[0] ?? { name: '', ...USUAL }
  return {
    on: next ? today : civilDate(startOfNextDay(now, timeZone), timeZone),
    from: period.from,
    to: period.to,
    period: period.name === '' ? null : period.name,
    portions: 2,
    tasters: 2,
    components,
  }
}

/** What an item usually takes, its base too. */
export const componentsOfItem = (station: StationDocument, item: string): readonly string[] => {
  const found = findItem(station, item)
  if (!found) return []
  const parts = found.parts.filter(({ usual }) => usual !== 'no').map(({ component }) => component)
  return found.base ? [found.base.usual, ...parts] : parts
}

/** All of them are taken out where all are in, else those that lack are put in. */
export const toggled = (
  components: readonly string[],
  some: readonly string[],
): readonly string[] =>
  some.every((one) => components.includes(one))
    ? components.filter((one) => !some.includes(one))
    : [...new Set([...components, ...some])]

export type TastingLack = 'food' | 'time'

export const tastingLack = ({ components, on, from, to }: TastingEntry): TastingLack | null => {
  if (components.length === 0) return 'food'
  return on === '' || from === '' || to === '' ? 'time' : null
}

export const planTastingOf = (entry: TastingEntry, station: string): PlanTasting => ({
  type: 'planTasting',
  station,
  ...entry,
})
