/**
 * Days ready to be weighed again and again, each time with a little more or less of one component or
 * two. A day on which nobody was refused for a component comes out the same with more of it, and with
 * so much less as was left over, but for what is left over; only the others are played anew.
 */
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'
import {
  centsOf,
  marginsOf,
  noOutcomes,
  type Outcomes,
  played,
  type WholeMenu,
} from '#lib/estimate/par/whole-builds.ts'

/** So many portions more, or fewer, of one component. */
export interface Change {
  readonly place: number
  readonly by: number
}

interface Weighing {
  /**
   * Begins anew from so many portions of each component; the mean cents that the days lose, Infinity
   * where it is `most` or dearer, from where nothing goes on.
   */
  readonly begin: (portions: readonly number[], most: number) => number
  /** With one change, or two of two components; Infinity where it is `most` or dearer. */
  readonly changed: (changes: readonly Change[], most: number) => number
  /** Goes on from what was weighed last and cost less than `most`. */
  readonly accept: () => void
  /** How many days were played. */
  readonly count: () => number
}

/** Outcomes of one change, the days of it that were worked out, and from which beginning. */
interface Known {
  readonly outcomes: Outcomes
  readonly is: Uint8Array
}

export const weighing = (menu: WholeMenu, days: readonly DrawnDay[]): Weighing => {
  const places = menu.costCents.length
  const margins = days.map((day) => marginsOf(menu, day))
  let count = 0
  let own = noOutcomes(days.length, places)
  let next = noOutcomes(days.length, places)
  let there: readonly number[] = []
  let pending: readonly Change[] = []
  let singles = new Map<string, Known>()

  const play = (portions: readonly number[], into: Outcomes, day: number) => {
    const from = day * places
    for (let place = 0; place < places; place += 1) {
      into.left[from + place] = portions[place] ?? 0
      into.lacked[from + place] = 0
    }
    const one = days[day]
    const lost = margins[day]
    if (one && lost) played(one, lost, into, day, from)
    count += 1
  }
  const comesOutTheSame = ({ left, lacked }: Outcomes, { place, by }: Change, day: number) => {
    const at = day * places + place
    return by >= 0 ? lacked[at] === 0 : (left[at] ?? 0) >= -by
  }
  const shift = (from: Outcomes, into: Outcomes, { place, by }: Change, day: number) => {
    const [start, end] = [day * places, (day + 1) * places]
    if (from !== into) {
      for (let at = start; at < end; at += 1) {
        into.left[at] = from.left[at] ?? 0
        into.lacked[at] = from.lacked[at] ?? 0
      }
      into.lost[day] = from.lost[day] ?? 0
    }
    into.left[start + place] = (into.left[start + place] ?? 0) + by
  }
  const withChanges = (changes: readonly Change[]): readonly number[] => {
    const portions = [...there]
    for (const { place, by } of changes) portions[place] = (portions[place] ?? 0) + by
    return portions
  }
  const single = (change: Change): Known => {
    const key = `${change.place} ${change.by}`
    const found = singles.get(key)
    if (found) return found
    const made = { outcomes: noOutcomes(days.length, places), is: new Uint8Array(days.length) }
    singles.set(key, made)
    return made
  }
  /** How a day comes out with one change, worked out once. */
  const withOne = (change: Change, known: Known, day: number): Outcomes => {
    if (known.is[day] !== 1) {
      known.is[day] = 1
      if (comesOutTheSame(own, change, day)) shift(own, known.outcomes, change, day)
      else play(withChanges([change]), known.outcomes, day)
    }
    return known.outcomes
  }
  const outcomeOf = (changes: readonly Change[]) => {
    const [one, other] = changes
    if (!one) return (day: number) => void shift(own, next, { place: 0, by: 0 }, day)
    const known = single(one)
    const still: Change = { place: one.place, by: 0 }
    if (!other) return (day: number) => shift(withOne(one, known, day), next, still, day)
    const otherKnown = single(other)
    const both = withChanges(changes)
    return (day: number) => {
      const first = withOne(one, known, day)
      if (comesOutTheSame(first, other, day)) return shift(first, next, other, day)
      const second = withOne(other, otherKnown, day)
      if (comesOutTheSame(second, one, day)) return shift(second, next, one, day)
      return play(both, next, day)
    }
  }
  return {
    begin: (portions, most) => {
      there = portions
      singles = new Map()
      const bound = most * days.length
      let sum = 0
      for (let day = 0; day < days.length; day += 1) {
        play(portions, own, day)
        sum += centsOf(menu, own, day)
        if (sum >= bound) return Number.POSITIVE_INFINITY
      }
      return sum / Math.max(1, days.length)
    },
    changed: (changes, most) => {
      pending = changes
      const workOut = outcomeOf(changes)
      const bound = most * days.length
      let sum = 0
      for (let day = 0; day < days.length; day += 1) {
        workOut(day)
        sum += centsOf(menu, next, day)
        if (sum >= bound) return Number.POSITIVE_INFINITY
      }
      return sum / Math.max(1, days.length)
    },
    accept: () => {
      there = withChanges(pending)
      singles = new Map()
      ;[own, next] = [next, own]
    },
    count: () => count,
  }
}
