/** Par: how much of each component to have ready for a day, all of a menu together, and why. */
import { daySize, type SizedDay } from '#lib/estimate/par/day-size.ts'
import { drawnDays } from '#lib/estimate/par/drawn-days.ts'
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import { menuMix } from '#lib/estimate/par/learnt-mix.ts'
import type { MenuMix } from '#lib/estimate/par/menu-mix.ts'
import type { DayAhead, PastDay } from '#lib/estimate/par/past-day.ts'
import { saidDays } from '#lib/estimate/par/said-days.ts'
import { wantedBuilds } from '#lib/estimate/par/wanted-builds.ts'
import { marginsOf, type WholeMenu } from '#lib/estimate/par/whole-builds.ts'
import { enoughFor, wholeLoads } from '#lib/estimate/par/whole-loads.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface ParAsked {
  readonly station: Pick<StationDocument, 'items' | 'components'>
  /** Past services, the oldest first. */
  readonly past: readonly PastDay[]
  readonly ahead: DayAhead
  /** Ids of the items on sale; null: all of them. */
  readonly items: readonly string[] | null
  /** By component. */
  readonly of: Readonly<Record<string, ParOf>>
}

export interface ParOf {
  /** Portions of one load, 1 or more. */
  readonly size: number
  /** Portions at hand that may be sold all day. */
  readonly there: number
  readonly costCents: number
  /** Services to come that may still use what is left over; 0: it is thrown out. */
  readonly carriedFor: number
}

export interface ComponentPar {
  /** Portions wanted on average. */
  readonly mean: number
  /** Portions wanted on ten days, the fewest first: the middles of ten equally likely tenths. */
  readonly days: readonly number[]
  /** Of the builds so many take it, 0 to 1. */
  readonly share: number
  /** Loads to make beside what is at hand. */
  readonly loads: number
  /** Cents that one portion left over loses, carried or thrown out. */
  readonly leftCents: number
  /** Cents that one lacking portion loses, with the build that isn't made for it. */
  readonly lostCents: number
}

/**
 * What is carried loses so much of its cost: the day it may be needed can want less, or something
 * else goes first. Found by simulation.
 */
const CARRIED_SHARE = 0.25
/** Of what the services to come want on average, so much is carried at most. */
const CARRIED_OF_MEAN = 0.7
/** Days that are drawn build by build, over which loads are weighed against each other. */
const WEIGHED = 80
const SAID = 10

/** What is at stake with each component and item, by place; `means`: portions of a day by component. */
export const wholeMenu = (
  { items, components }: ParAsked['station'],
  of: Readonly<Record<string, Pick<ParOf, 'costCents' | 'carriedFor'>>>,
  means: readonly number[],
): WholeMenu => ({
  costCents: components.map(({ id }) => of[id]?.costCents ?? 0),
  carriedCents: components.map(({ id }) => (of[id]?.costCents ?? 0) * CARRIED_SHARE),
  mostCarried: components.map(
    ({ id }, place) => (of[id]?.carriedFor ?? 0) * CARRIED_OF_MEAN * (means[place] ?? 0),
  ),
  priceCents: items.map(({ priceCents }) => priceCents),
})

interface Stake {
  readonly share: number
  readonly lostCents: number
}

/** Of the builds that take each component: how many there are, and what one loses that isn't made. */
const stakes = (menu: WholeMenu, days: readonly DrawnDay[], components: number): Stake[] => {
  const taking: number[] = new Array(components).fill(0)
  const margins: number[] = new Array(components).fill(0)
  let all = 0
  for (const day of days) {
    const { each, items, starts, places, baseStarts, bases } = day
    const own = marginsOf(menu, day)
    const take = (place: number, build: number) => {
      taking[place] = (taking[place] ?? 0) + each
      margins[place] = (margins[place] ?? 0) + each * (own[build] ?? 0)
    }
    for (let build = 0; build < items.length; build += 1) {
      all += each
      for (let k = starts[build] ?? 0; k < (starts[build + 1] ?? 0); k += 1)
        take(places[k] ?? 0, build)
      const first = baseStarts[build] ?? 0
      if (first < (baseStarts[build + 1] ?? 0)) take(bases[first] ?? 0, build)
    }
  }
  return taking.map((count, place) => ({
    share: count / Math.max(1, all),
    lostCents: Math.round((margins[place] ?? 0) / Math.max(1, count)),
  }))
}

interface Learnt {
  readonly past: readonly PastDay[]
  readonly mix: MenuMix
  readonly days: readonly SizedDay[]
}

/** What was learnt last of a menu: only the guests change from one question to the next. */
const learntLast = new WeakMap<StationDocument['items'], Learnt>()

const learnt = (station: ParAsked['station'], past: readonly PastDay[]): Learnt => {
  const last = learntLast.get(station.items)
  if (last?.past.length === past.length && past.every((day, index) => day === last.past[index]))
    return last
  const mix = menuMix(station, past)
  const wanted = wantedBuilds(station, past, mix)
  const days = past.map(({ on, expected }, index): SizedDay => {
    const { builds, unsure, atLeast } = wanted[index] ?? { builds: 0, unsure: 0, atLeast: false }
    return { on, expected, wanted: builds, unsure, atLeast }
  })
  const now = { past, mix, days }
  learntLast.set(station.items, now)
  return now
}

type DayAsked = Pick<ParAsked, 'station' | 'past' | 'ahead' | 'items'>

const dayAhead = ({ station, past, ahead, items }: DayAsked) => {
  const { mix, days } = learnt(station, past)
  const size = daySize(days, ahead)
  const onSale = {
    components: station.components,
    items: station.items.filter(({ id }) => items === null || items.includes(id)),
  }
  return { mix, size, onSale, said: saidDays(onSale, size, mix) }
}

/** Of days like the one ahead all but so many of a hundred want no more. */
const MOST_OF = 0.95

/** By component that something on sale takes: as many portions as the day ahead hardly exceeds. */
export const mostWanted = (asked: DayAsked): Readonly<Record<string, number>> => {
  const { sorted } = dayAhead(asked).said
  return Object.fromEntries(
    asked.station.components.map(({ id }, place) => [
      id,
      Math.ceil(enoughFor(sorted[place] ?? [], MOST_OF)),
    ]),
  )
}

/**
 * Of each component that something on sale takes: what a day like it wants, the loads that cost least
 * over such days, all of the menu together, and what is at stake. Takes some hundredths of a second.
 */
export const parOf = (asked: ParAsked): Readonly<Record<string, ComponentPar>> => {
  const { station, of } = asked
  const { mix, size, onSale, said } = dayAhead(asked)
  const { means, sorted } = said
  const isWanted = means.map((mean) => mean > 0)
  const menu = wholeMenu(onSale, of, means)
  const days = drawnDays(onSale, size, mix, WEIGHED)
  const { loads } = wholeLoads(menu, days, {
    size: station.components.map(({ id }) => Math.max(1, of[id]?.size ?? 1)),
    there: station.components.map(({ id }) => of[id]?.there ?? 0),
    isWanted,
  })
  const atStake = stakes(menu, days, station.components.length)
  return Object.fromEntries(
    station.components.flatMap(({ id }, place): [string, ComponentPar][] => {
      const stake = atStake[place]
      if (!isWanted[place] || !stake) return []
      const wanted = sorted[place] ?? []
      const isCarried = (of[id]?.carriedFor ?? 0) > 0
      return [
        [
          id,
          {
            mean: means[place] ?? 0,
            days: Array.from({ length: SAID }, (_, index) =>
              Math.round(enoughFor(wanted, (index + 0.5) / SAID)),
            ),
            loads: loads[place] ?? 0,
            leftCents: Math.round((of[id]?.costCents ?? 0) * (isCarried ? CARRIED_SHARE : 1)),
            ...stake,
          },
        ],
      ]
    }),
  )
}
