/** Loads of all components together that cost least over a row of days. */
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import { type Change, weighing } from '#lib/estimate/par/weighing.ts'
import type { WholeMenu } from '#lib/estimate/par/whole-builds.ts'

interface LoadsAsked {
  /** Portions of one load of each component. */
  readonly size: readonly number[]
  /** Portions that are there already. */
  readonly there: readonly number[]
  /** Not of these: nothing on sale takes them. */
  readonly isWanted: readonly boolean[]
}

interface WholeLoads {
  readonly loads: readonly number[]
  /** How often a day was played from its first build to its last: the work that it took. */
  readonly daysPlayed: number
}

/** Shares of days for which all are made enough, of which the best one begins the search. */
const BEGINNINGS = [0.86, 0.8, 0.92, 0.7, 0.96, 0.6, 0.99, 0.5, 0.3]
const STEPS = [1, -1, 2, -2]
const SIGNS = [1, -1]
const ROUNDS = 16
/** Cents a day that a change has to save. */
const LEAST_SAVED = 1e-6
const MOST_LOADS = 40

/** The portions at which a share of days have enough, 0 to 1; days with the fewest first. */
export const enoughFor = (sorted: ArrayLike<number>, share: number): number => {
  const at = Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))
  return sorted[at] ?? 0
}

/** Portions of one component that days want, the fewest first. */
const sortedWanted = (days: readonly DrawnDay[], place: number): Float64Array =>
  Float64Array.from(days, ({ wanted }) => wanted[place] ?? 0).sort()

/** Loads by which a component changes. */
interface Step {
  readonly place: number
  readonly loads: number
}

/** One component by a load or two; two of them by one each, since a build may need more of both. */
const movesOf = (places: readonly number[]) => ({
  one: places.flatMap((place) => STEPS.map((loads): readonly Step[] => [{ place, loads }])),
  two: places.flatMap((place, index) =>
    places.slice(index + 1).flatMap((other) =>
      SIGNS.flatMap((loads) =>
        SIGNS.map((also): readonly Step[] => [
          { place, loads },
          { place: other, loads: also },
        ]),
      ),
    ),
  ),
})

/**
 * Loads of each component that cost least over the days: from the best of several beginnings, each
 * enough on as many days for all of them, one component or two at a time as long as that saves
 * anything. No load more or less of one, and of no two, costs less.
 */
export const wholeLoads = (
  menu: WholeMenu,
  days: readonly DrawnDay[],
  { size, there, isWanted }: LoadsAsked,
): WholeLoads => {
  const scale = weighing(menu, days)
  const portionsOf = (loads: readonly number[]) =>
    loads.map((count, place) => (there[place] ?? 0) + count * (size[place] ?? 1))
  const wanted = size.map((_, place) => sortedWanted(days, place))
  const beginnings = BEGINNINGS.map((share) =>
    size.map((one, place) => {
      if (!isWanted[place]) return 0
      const lacks = enoughFor(wanted[place] ?? [], share) - (there[place] ?? 0)
      return Math.min(MOST_LOADS, Math.max(0, Math.ceil(lacks / one)))
    }),
  )
  let best: readonly number[] = size.map(() => 0)
  let least = Number.POSITIVE_INFINITY
  for (const loads of [...beginnings, best]) {
    const cost = scale.begin(portionsOf(loads), least - LEAST_SAVED)
    if (cost >= least - LEAST_SAVED) continue
    best = loads
    least = cost
  }
  least = scale.begin(portionsOf(best), Number.POSITIVE_INFINITY)
  const improves = (move: readonly Step[]): boolean => {
    const isPossible = move.every(({ place, loads }) => {
      const count = (best[place] ?? 0) + loads
      return count >= 0 && count <= MOST_LOADS
    })
    if (!isPossible) return false
    const changes = move.map(
      ({ place, loads }): Change => ({ place, by: loads * (size[place] ?? 1) }),
    )
    const cost = scale.changed(changes, least - LEAST_SAVED)
    if (cost >= least - LEAST_SAVED) return false
    scale.accept()
    best = best.map(
      (count, place) => count + (move.find((step) => step.place === place)?.loads ?? 0),
    )
    least = cost
    return true
  }
  const { one, two } = movesOf([...size.keys()].filter((place) => isWanted[place]))
  const anyOf = (moves: readonly (readonly Step[])[]): boolean =>
    moves.reduce((any, move) => improves(move) || any, false)
  for (let round = 0; round < ROUNDS; round += 1) if (!anyOf(one) && !anyOf(two)) break
  return { loads: best, daysPlayed: scale.count() }
}
