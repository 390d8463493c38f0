/**
 * What amounts of all components cost together: a build needs all that it has, and where one is gone
 * the whole of it is lost, its price less what the rest saves.
 */
import type { DrawnDay } from '#lib/estimate/par/drawn-days.ts'

export interface WholeMenu {
  /** By place of the component, cents of one portion. */
  readonly costCents: readonly number[]
  /** Cents that a portion loses that is left over and carried to another service. */
  readonly carriedCents: readonly number[]
  /** So many portions left over are carried; what is beyond them is thrown out. */
  readonly mostCarried: readonly number[]
  /** By place of the item. */
  readonly priceCents: readonly number[]
}

/** A build on another base than was wanted loses so much of its margin. Common practice, no source. */
const OTHER_BASE = 0.25

/** Cents that a build loses which isn't made: its price less what its portions cost. */
export const marginOf = (
  { costCents, priceCents }: WholeMenu,
  build: DrawnDay['builds'][number],
): number => {
  let margin = priceCents[build.item] ?? 0
  for (let k = 0; k < build.components.length; k += 1)
    margin -= (costCents[build.components[k] ?? 0] ?? 0) * (build.portions[k] ?? 0)
  const base = build.bases[0]
  return Math.max(0, margin - (base === undefined ? 0 : (costCents[base] ?? 0)))
}

/** Cents that so many portions cost which are left over. */
export const leftOverCents = (menu: WholeMenu, place: number, left: number): number => {
  const carried = Math.min(left, menu.mostCarried[place] ?? 0)
  return carried * (menu.carriedCents[place] ?? 0) + (left - carried) * (menu.costCents[place] ?? 0)
}

/** A day laid flat, since it is weighed hundreds of times. */
interface FlatDay {
  readonly each: number
  /** Where the components of each build begin, and those of the one after the last. */
  readonly starts: Int32Array
  readonly places: Int32Array
  readonly amounts: Float64Array
  readonly baseStarts: Int32Array
  readonly bases: Int32Array
  readonly margins: Float64Array
}

const startsOf = (counts: readonly number[]): Int32Array => {
  const starts = new Int32Array(counts.length + 1)
  for (const [index, count] of counts.entries()) starts[index + 1] = (starts[index] ?? 0) + count
  return starts
}

const flat = (menu: WholeMenu, { builds, each }: DrawnDay): FlatDay => ({
  each,
  starts: startsOf(builds.map(({ components }) => components.length)),
  places: Int32Array.from(builds.flatMap(({ components }) => components)),
  amounts: Float64Array.from(builds.flatMap(({ portions }) => portions.map((one) => one * each))),
  baseStarts: startsOf(builds.map(({ bases }) => bases.length)),
  bases: Int32Array.from(builds.flatMap(({ bases }) => bases)),
  margins: Float64Array.from(builds.map((build) => marginOf(menu, build) * each)),
})

const flatCost = (menu: WholeMenu, day: FlatDay, portions: readonly number[]): number => {
  const there = Float64Array.from(portions)
  const { each, starts, places, amounts, baseStarts, bases, margins } = day
  let cost = 0
  for (let build = 0; build < margins.length; build += 1) {
    const [from, to] = [starts[build] ?? 0, starts[build + 1] ?? 0]
    const [first, after] = [baseStarts[build] ?? 0, baseStarts[build + 1] ?? 0]
    let k = from
    while (k < to && (there[places[k] ?? 0] ?? 0) >= (amounts[k] ?? 0)) k += 1
    let base = first
    while (base < after && (there[bases[base] ?? 0] ?? 0) < each) base += 1
    if (k < to || (first < after && base === after)) {
      cost += margins[build] ?? 0
      continue
    }
    for (k = from; k < to; k += 1) {
      const place = places[k] ?? 0
      there[place] = (there[place] ?? 0) - (amounts[k] ?? 0)
    }
    if (first < after) {
      if (base > first) cost += OTHER_BASE * (margins[build] ?? 0)
      const place = bases[base] ?? 0
      there[place] = (there[place] ?? 0) - each
    }
  }
  for (let place = 0; place < there.length; place += 1)
    cost += leftOverCents(menu, place, there[place] ?? 0)
  return cost
}

/** Of days: the mean cents that they lose; `most`: what is dearer isn't counted to its end. */
export type Weighed = (portions: readonly number[], most?: number) => number

/**
 * Days ready to be weighed: the cents that so many portions of each component lose on average, by builds
 * that aren't made and by what is left over.
 */
export const weighed = (menu: WholeMenu, days: readonly DrawnDay[]): Weighed => {
  const laid = days.map((day) => flat(menu, day))
  const count = Math.max(1, days.length)
  return (portions, most = Number.POSITIVE_INFINITY) => {
    let sum = 0
    for (let day = 0; day < laid.length && sum < most * count; day += 1) {
      const one = laid[day]
      if (one) sum += flatCost(menu, one, portions)
    }
    return sum / count
  }
}

export interface WholeLoads {
  /** Portions of one load of each component. */
  readonly size: readonly number[]
  /** Portions that are there already. */
  readonly there: readonly number[]
  /** Not of these: nothing on sale takes them. */
  readonly isWanted: readonly boolean[]
}

/** Shares of days for which all are made enough, of which the best one begins the search. */
const BEGINNINGS = [0.3, 0.5, 0.6, 0.7, 0.8, 0.86, 0.92, 0.96, 0.99]
const STEPS = [1, -1, 2, -2]
const ROUNDS = 16
/** Cents a day that a change has to save. */
const LEAST_SAVED = 1e-6
const MOST_LOADS = 40

/** The portions at which a share of days have enough, 0 to 1. */
export const enoughFor = (wanted: readonly number[], share: number): number => {
  const sorted = [...wanted].sort((a, b) => a - b)
  const at = Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))
  return sorted[at] ?? 0
}

type Move = readonly (readonly [place: number, by: number])[]

const SIGNS = [1, -1] as const

/** One component by a load or two; two of them by one each, since a build may need more of both. */
const movesOf = (places: readonly number[]): { one: readonly Move[]; two: readonly Move[] } => ({
  one: places.flatMap((place) => STEPS.map((by): Move => [[place, by]])),
  two: places.flatMap((place, index) =>
    places.slice(index + 1).flatMap((other) =>
      SIGNS.flatMap((by) =>
        SIGNS.map(
          (also): Move => [
            [place, by],
            [other, also],
          ],
        ),
      ),
    ),
  ),
})

const moved = (loads: readonly number[], move: Move): readonly number[] | null => {
  const next = [...loads]
  for (const [place, by] of move) {
    const count = (next[place] ?? 0) + by
    if (count < 0 || count > MOST_LOADS) return null
    next[place] = count
  }
  return next
}

/**
 * Loads of each component that cost least over the days: from the best of several beginnings, each
 * enough on as many days for all of them, one component or two at a time as long as that saves
 * anything. No load more or less of one, and of no two, costs less.
 */
export const wholeLoads = (
  menu: WholeMenu,
  days: readonly DrawnDay[],
  { size, there, isWanted }: WholeLoads,
): readonly number[] => {
  const costOf = weighed(menu, days)
  const portionsOf = (loads: readonly number[]) =>
    loads.map((count, place) => (there[place] ?? 0) + count * (size[place] ?? 1))
  const wanted = size.map((_, place) => days.map((day) => day.wanted[place] ?? 0))
  const beginnings = BEGINNINGS.map((share) =>
    size.map((one, place) => {
      if (!isWanted[place]) return 0
      const lacks = enoughFor(wanted[place] ?? [], share) - (there[place] ?? 0)
      return Math.min(MOST_LOADS, Math.max(0, Math.ceil(lacks / one)))
    }),
  )
  let best: readonly number[] = size.map(() => 0)
  let least = costOf(portionsOf(best))
  const improves = (loads: readonly number[] | null): boolean => {
    if (loads === null) return false
    const cost = costOf(portionsOf(loads), least)
    if (cost >= least - LEAST_SAVED) return false
    best = loads
    least = cost
    return true
  }
  for (const loads of beginnings) improves(loads)
  const { one, two } = movesOf([...size.keys()].filter((place) => isWanted[place]))
  const anyOf = (moves: readonly Move[]): boolean =>
    moves.reduce((any, move) => improves(moved(best, move)) || any, false)
  for (let round = 0; round < ROUNDS; round += 1) if (!anyOf(one) && !anyOf(two)) break
  return best
}
