/** Ways of deciding the loads of a day: par, two rules that kitchens know, and a planner who knows. */
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import { wholeMenu } from '#lib/estimate/par/par.ts'
import { wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import { portionCents } from '#lib/rooms/advice/facts/stakes.ts'
import { pastDays } from '#lib/rooms/day/facts/past-days.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { carriedFor, parFor } from '#lib/rooms/prep/facts/par-for.ts'
import { chanceOf } from '#tests/simulate/chance.ts'
import type { Known, Loads, Way } from '#tests/simulate/days/play.ts'
import {
  DAYS_A_WEEK,
  daysStation,
  guestsOf,
  sizeOf,
  strayTold,
} from '#tests/simulate/days/truth.ts'
import { layDay } from '#tests/support/par-days.ts'

const station = daysStation
/** Builds of a day where nobody says guests and nothing was recorded. */
const FIRST_BUILDS = 60

export const parKnown = ({ on, expected, there, records, ahead }: Known, learns = true) =>
  parFor(station, {
    ahead: { on, expected, firstBuilds: FIRST_BUILDS },
    past: learns ? pastDays(records, station, 'real') : [],
    items: ahead.items.map(({ id }) => id),
    there,
  })

const loadsOf = (par: ReturnType<typeof parFor>): Loads =>
  Object.fromEntries(Object.entries(par).map(([id, { loads }]) => [id, loads]))

const saidBefore = new WeakMap<Known, ReturnType<typeof parKnown>>()

/** What par said as the loads of a day were decided. */
export const parSaid = (known: Known): ReturnType<typeof parKnown> => {
  const said = saidBefore.get(known) ?? parKnown(known)
  saidBefore.set(known, said)
  return said
}

export const byPar: Way = (known) => loadsOf(parSaid(known))

/** Before anything was recorded: the plan's own guess, in the first weeks of all ways. */
export const byGuess: Way = (known) => loadsOf(parKnown(known, false))

const isTaken = (known: Known, component: string): boolean =>
  known.ahead.items.some(
    ({ parts, base }) =>
      parts.some((part) => part.component === component) || base?.choices.includes(component),
  )

/** Enough loads for so many portions, what is at hand taken off. */
const loadsFor = (known: Known, portions: (component: string) => number): Loads =>
  Object.fromEntries(
    station.components.map((component) => {
      const { id } = component
      const lacks = portions(id) - (known.there[id] ?? 0)
      const loads = Math.ceil(lacks / loadSize(station, component))
      return [id, isTaken(known, id) ? Math.max(0, loads) : 0]
    }),
  )

const usedOf = ({ components }: ServiceRecord, component: string): number => {
  const one = components[component]
  return one ? one.used / one.portion.amount : 0
}

const realOf = ({ records }: Known): readonly ServiceRecord[] =>
  records.filter(({ kind, cutShort }) => kind === 'real' && !cutShort)

/** As much as was sold on the same weekday a week before; where it wasn't sold then, on the last day. */
export const byLastWeek: Way = (known) => {
  const real = realOf(known)
  return loadsFor(known, (component) => {
    const then = real.at(-DAYS_A_WEEK)
    const used = then ? usedOf(then, component) : 0
    if (used > 0) return used
    return real.map((one) => usedOf(one, component)).findLast((one) => one > 0) ?? FIRST_BUILDS / 3
  })
}

/** A fixed par stands so much above the mean of the first weeks: the cheapest by tenths on seeds 1 to 3. */
const FIXED_MARGIN = 1.6

export const byFixed =
  (weeks: number, margin = FIXED_MARGIN): Way =>
  (known) => {
    const first = realOf(known).slice(0, weeks * DAYS_A_WEEK)
    return loadsFor(known, (component) => {
      const used = first.map((one) => usedOf(one, component)).filter((one) => one > 0)
      const mean = used.reduce((sum, one) => sum + one, 0) / Math.max(1, used.length)
      return mean > 0 ? margin * mean : FIRST_BUILDS / 3
    })
  }

const PLANNED = 300

/** Draws of the true day, as far as anybody could know it before. */
const trueDays = (known: Known): readonly DrawnDay[] => {
  const { truth, ahead } = known
  const places = new Map(station.components.map(({ id }, index) => [id, index]))
  const place = (id: string) => places.get(id) ?? 0
  return Array.from({ length: PLANNED }, (_, index): DrawnDay => {
    const chance = chanceOf(truth.seed, `planner ${ahead.week} ${ahead.weekday} ${index}`)
    const stray = strayTold(truth, sizeOf(truth, ahead), chance)
    const builds = guestsOf(truth, ahead, stray, chance).map(({ item, base, parts }) => ({
      item: ahead.items.findIndex(({ id }) => id === item.id),
      components: Object.keys(parts).map(place),
      portions: Object.values(parts),
      bases:
        base === null
          ? []
          : [base, ...(item.base?.choices ?? []).filter((one) => one !== base)].map(place),
    }))
    return layDay(builds, station.components.length)
  })
}

export const byKnowing: Way = (known) => {
  const days = trueDays(known)
  const means = station.components.map(
    (_, place) => days.reduce((sum, day) => sum + (day.wanted[place] ?? 0), 0) / days.length,
  )
  const past = pastDays(known.records, station, 'real')
  const ahead = { on: known.on, expected: null, firstBuilds: FIRST_BUILDS }
  const menu = wholeMenu(
    { components: station.components, items: [...known.ahead.items] },
    Object.fromEntries(
      station.components.map((component) => [
        component.id,
        {
          costCents: portionCents(station, component.id),
          carriedFor: carriedFor(component, station, { past, ahead }),
        },
      ]),
    ),
    means,
  )
  const { loads } = wholeLoads(menu, days, {
    size: station.components.map((component) => loadSize(station, component)),
    there: station.components.map(({ id }) => known.there[id] ?? 0),
    isWanted: means.map((mean) => mean > 0),
  })
  return Object.fromEntries(station.components.map(({ id }, place) => [id, loads[place] ?? 0]))
}
