/** Days of builds that a test says, and what they lose, each played from its first build on. */
import { type DrawnDay, laying } from '#lib/estimate/par/laid-day.ts'
import {
  centsOf,
  marginsOf,
  noOutcomes,
  played,
  type WholeMenu,
} from '#lib/estimate/par/whole-builds.ts'

/** One build of a day, or several that are alike. */
export interface DrawnBuild {
  /** Place of its item in the menu. */
  readonly item: number
  /** Places of the components that it has, with the portions of each; its base is apart. */
  readonly components: readonly number[]
  readonly portions: readonly number[]
  /** Places of its bases, the one it wants first; none where its item has no base. */
  readonly bases: readonly number[]
}

/** A day of such builds, among so many components. */
export const layDay = (builds: readonly DrawnBuild[], components: number, each = 1): DrawnDay => {
  const row = laying(components)
  for (const { item, components: places, portions, bases } of builds) {
    for (const [index, place] of places.entries()) row.add(place, portions[index] ?? 0)
    for (const base of bases) row.addBase(base)
    row.end(item)
  }
  return row.day(each)
}

/** The mean cents that days lose with so many portions of each component. */
export const weighed = (
  menu: WholeMenu,
  days: readonly DrawnDay[],
  portions: readonly number[],
): number => {
  const places = menu.costCents.length
  const outcomes = noOutcomes(days.length, places)
  let sum = 0
  for (const [index, day] of days.entries()) {
    outcomes.left.set(portions, index * places)
    played(day, marginsOf(menu, day), outcomes, index, index * places)
    sum += centsOf(menu, outcomes, index)
  }
  return sum / Math.max(1, days.length)
}
