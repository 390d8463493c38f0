/**
 * What amounts of all components cost together: a build needs all that it has, and where one is gone
 * the whole of it is lost, its price less what the rest saves.
 */
import type { DrawnDay } from '#lib/estimate/par/laid-day.ts'

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

/** Cents that each build of a day loses which isn't made: its price less what its portions cost. */
export const marginsOf = ({ costCents, priceCents }: WholeMenu, day: DrawnDay): Float64Array =>
  Float64Array.from(day.items, (item, build) => {
    let margin = priceCents[item] ?? 0
    for (let k = day.starts[build] ?? 0; k < (day.starts[build + 1] ?? 0); k += 1)
      margin -= (costCents[day.places[k] ?? 0] ?? 0) * (day.portions[k] ?? 0)
    const first = day.baseStarts[build] ?? 0
    if (first < (day.baseStarts[build + 1] ?? 0)) margin -= costCents[day.bases[first] ?? 0] ?? 0
    return Math.max(0, margin)
  })

/** Cents that so many portions cost which are left over. */
export const leftOverCents = (menu: WholeMenu, place: number, left: number): number => {
  const carried = Math.min(left, menu.mostCarried[place] ?? 0)
  return carried * (menu.carriedCents[place] ?? 0) + (left - carried) * (menu.costCents[place] ?? 0)
}

/** How each of a row of days came out under some amounts. */
export interface Outcomes {
  /** Cents of the builds that weren't made, or weren't as they were wanted, by day. */
  readonly lost: Float64Array
  /** Portions left over, by day and place. */
  readonly left: Float64Array
  /** 1 where a build, or the base that it wanted first, was refused for that, by day and place. */
  readonly lacked: Uint8Array
}

export const noOutcomes = (days: number, places: number): Outcomes => ({
  lost: new Float64Array(days),
  left: new Float64Array(days * places),
  lacked: new Uint8Array(days * places),
})

/** Plays day `index` with the portions that lie at its place in `left`, and says there how it came out. */
export const played = (
  day: DrawnDay,
  margins: Float64Array,
  { lost, left: there, lacked }: Outcomes,
  index: number,
  from: number,
): void => {
  const { each, starts, places, portions, baseStarts, bases } = day
  let cents = 0
  for (let build = 0; build < margins.length; build += 1) {
    const [first, after] = [starts[build] ?? 0, starts[build + 1] ?? 0]
    const [firstBase, afterBases] = [baseStarts[build] ?? 0, baseStarts[build + 1] ?? 0]
    let k = first
    while (k < after && (there[from + (places[k] ?? 0)] ?? 0) >= (portions[k] ?? 0) * each) k += 1
    if (k < after) {
      lacked[from + (places[k] ?? 0)] = 1
      cents += (margins[build] ?? 0) * each
      continue
    }
    let base = firstBase
    while (base < afterBases && (there[from + (bases[base] ?? 0)] ?? 0) < each) {
      lacked[from + (bases[base] ?? 0)] = 1
      base += 1
    }
    if (firstBase < afterBases && base === afterBases) {
      cents += (margins[build] ?? 0) * each
      continue
    }
    for (k = first; k < after; k += 1) {
      const place = from + (places[k] ?? 0)
      there[place] = (there[place] ?? 0) - (portions[k] ?? 0) * each
    }
    if (firstBase === afterBases) continue
    if (base > firstBase) cents += OTHER_BASE * (margins[build] ?? 0) * each
    const place = from + (bases[base] ?? 0)
    there[place] = (there[place] ?? 0) - each
  }
  lost[index] = cents
}

/** Cents that one of a row of days lost, by builds that weren't made and by what is left over. */
export const centsOf = (menu: WholeMenu, outcomes: Outcomes, index: number): number => {
  const places = menu.costCents.length
  let cents = outcomes.lost[index] ?? 0
  for (let place = 0; place < places; place += 1)
    cents += leftOverCents(menu, place, outcomes.left[index * places + place] ?? 0)
  return cents
}
