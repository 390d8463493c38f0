/** The demo station with its invented scenario: when guests come, and what stands ready behind the line. */
import demo from '#fixtures/stations/alder-hall-scenario.json' with { type: 'json' }
import type { Remake } from '#lib/estimate/batch-timing.ts'
import type { Stakes } from '#lib/estimate/newsvendor.ts'
import { stakesOf } from '#lib/rooms/advice/facts/stakes.ts'
import { componentOf, findItem, pansOf } from '#lib/station/find.ts'
import { portionsOf } from '#lib/station/portion.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

export interface ComponentFacts {
  readonly id: string
  readonly pan: string
  readonly usualPortions: number
  readonly tareMg: number | null
  /** Portions that stand behind the line at opening. */
  readonly backUp: number
  readonly remake: Remake | null
  readonly stakes: Stakes
  /** Milligrams or pieces of one portion. */
  readonly portion: number
  readonly isCounted: boolean
}

const minuteOf = (clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number)
  return hours * 60 + minutes
}

const facts: Readonly<Record<string, { readonly backUp: number }>> = demo.components
const portions = portionsOf(demoStation)

export const components: readonly ComponentFacts[] = pansOf(demoStation).map((pan) => {
  const id = pan.component
  const portion = portions[id]
  const own = facts[id]
  if (!portion || !own) throw new Error(`the scenario doesn't know ${id}`)
  return {
    id,
    pan: pan.id,
    usualPortions: pan.usualPortions,
    tareMg: pan.tareMg,
    backUp: own.backUp,
    remake: componentOf(demoStation, id).remake,
    stakes: stakesOf(demoStation, id),
    portion: portion.amount,
    isCounted: portion.unit === 'piece',
  }
})

export const scenario = {
  opens: minuteOf(demo.opens),
  closes: minuteOf(demo.closes),
  bells: demo.bells.map(minuteOf),
  builds: demo.builds,
  assemblers: demo.assemblers,
}

/**
 * `plain`: the service opens as the first guest may come, and nothing but real days is known. `doors`:
 * it opens an hour before the doors, and practice and services that were cut short lie among the records.
 */
export type World = 'plain' | 'doors'

/** So long before the doors a service is opened in that world, minutes. */
export const BEFORE_DOORS = 60

const withDoors: StationDocument = {
  ...demoStation,
  day: { ...demoStation.day, doors: { open: demo.opens, close: demo.closes }, closes: demo.closes },
}

export const stationIn = (world: World): StationDocument =>
  world === 'doors' ? withDoors : demoStation

export const opensIn = (world: World): number =>
  scenario.opens - (world === 'doors' ? BEFORE_DOORS : 0)

export const itemCalled = (id: string): Item => {
  const item = findItem(demoStation, id)
  if (!item) throw new Error(`the station has no item ${id}`)
  return item
}
