/** Whether, and by when, a component runs out: chances from what is there and what will be wanted. */
import type { Horizon } from '#lib/estimate/arrivals.ts'
import { normalUpTo, portionChances } from '#lib/estimate/count-chances.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'

/** Portions that will be put on the line at a minute of the day. */
export interface Arriving {
  readonly at: number
  readonly portions: number
}

/** What can still be sold of a component: portions as this station scoops them, tickets apart. */
export interface Supply {
  readonly mean: number
  readonly sd: number
  readonly arriving: readonly Arriving[]
  /** Of `mean`, what is thrown out at a minute of the day. */
  readonly ending?: readonly Arriving[]
}

const arrivedBy = (supply: Supply, minute: number, isBefore: boolean): number => {
  let sum = 0
  for (const { at, portions } of supply.arriving)
    if (isBefore ? at < minute : at <= minute) sum += portions
  return sum
}

/** Chance that more is wanted by a minute than was there and came until then. */
const chanceMissing = (
  demand: ComponentDemand,
  supply: Supply,
  minute: number,
  isBefore: boolean,
): number => {
  const amount = supply.mean + arrivedBy(supply, minute, isBefore)
  const takings = demand.until(minute)
  if (takings.mean <= 0) return amount + 2 * supply.sd < 1e-9 ? 1 : 0
  const most = Math.max(0, Math.ceil(amount + 4 * supply.sd))
  const chances = portionChances(takings, demand.perTaking, most)
  let enough = 0
  for (let k = 0; k <= most; k += 1) {
    const lasts =
      supply.sd > 1e-6 ? normalUpTo((amount - k) / supply.sd) : amount + 1e-9 >= k ? 1 : 0
    enough += (chances[k] ?? 0) * lasts
  }
  return Math.min(1, Math.max(0, 1 - enough))
}

/** Chance that what is wanted after a throw-out is more than what isn't thrown out by then. */
const chanceAfter = (
  demand: ComponentDemand,
  supply: Supply,
  end: number,
  minute: number,
): number => {
  const before = demand.until(end)
  const all = demand.until(minute)
  if (all.mean - before.mean <= 1e-9) return 0
  const rest: ComponentDemand = {
    perTaking: demand.perTaking,
    until: () => ({
      mean: all.mean - before.mean,
      variance: Math.max(all.mean - before.mean, all.variance - before.variance),
    }),
  }
  const ended = (supply.ending ?? []).reduce(
    (sum, { at, portions }) => (at <= end ? sum + portions : sum),
    0,
  )
  const mean = Math.max(0, supply.mean - ended)
  const sd = supply.mean > 0 ? (supply.sd * mean) / supply.mean : 0
  return chanceMissing(rest, { ...supply, mean, sd }, minute, false)
}

/**
 * Chance that somebody wants the component by a minute of the day and there is none, now or for a
 * while: before each batch that arrives, after what is thrown out, and at the end. Nothing more is
 * started.
 */
export const chanceOfGap = (demand: ComponentDemand, supply: Supply, minute: number): number => {
  let chance = chanceMissing(demand, supply, minute, false)
  for (const { at } of supply.arriving)
    if (at <= minute) chance = Math.max(chance, chanceMissing(demand, supply, at, true))
  for (const { at } of supply.ending ?? [])
    if (at < minute) chance = Math.max(chance, chanceAfter(demand, supply, at, minute))
  return chance
}

export type Lasting = 'enough' | 'tight' | 'wont-last'

/** Up to this chance of running out it is enough; from the other on it won't last. */
const TIGHT_FROM = 0.1
const WONT_LAST_FROM = 0.5

export const lastingOf = (chance: number): Lasting =>
  chance < TIGHT_FROM ? 'enough' : chance < WONT_LAST_FROM ? 'tight' : 'wont-last'

export interface RunOut {
  /** Chance of running out before close, 0 to 1. */
  readonly chance: number
  /** Chance before a batch started now could be ready; null where none can be made. */
  readonly beforeNextBatch: number | null
  readonly lasting: Lasting
  /**
   * Minutes of the day by which it has run out with a chance of 10, 50 and 90 percent.
   * Each is null where it lasts until close at that chance.
   */
  readonly by: {
    readonly early: number | null
    readonly likely: number | null
    readonly late: number | null
  }
}

export const runOutOf = (
  demand: ComponentDemand,
  supply: Supply,
  horizons: readonly Horizon[],
  nextBatchAt: number | null,
): RunOut => {
  const last = horizons.length - 1
  const minuteAt = (index: number): number => horizons[index]?.until ?? 0
  const known = new Map<number, number>()
  const chanceAt = (index: number): number => {
    const before = known.get(index)
    if (before !== undefined) return before
    const chance = chanceOfGap(demand, supply, minuteAt(index))
    known.set(index, chance)
    return chance
  }
  const chance = chanceAt(last)
  const when = (wanted: number): number | null => {
    if (chance < wanted) return null
    let low = -1
    let high = last
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2)
      if (chanceAt(middle) >= wanted) high = middle
      else low = middle
    }
    if (low < 0) return minuteAt(0)
    const from = chanceAt(low)
    const rise = chanceAt(high) - from
    const share = rise > 0 ? (wanted - from) / rise : 1
    return minuteAt(low) + share * (minuteAt(high) - minuteAt(low))
  }
  return {
    chance,
    beforeNextBatch: nextBatchAt === null ? null : chanceOfGap(demand, supply, nextBatchAt),
    lasting: lastingOf(chance),
    by: { early: when(0.1), likely: when(0.5), late: when(0.9) },
  }
}

/** Points of time at which a curve of running out is reckoned; between them it is drawn straight. */
const CURVE_POINTS = 7

/** Chance of having run out by the end of each horizon. */
export const goneCurve = (
  demand: ComponentDemand,
  supply: Supply,
  horizons: readonly Horizon[],
): readonly number[] => {
  const last = horizons.length - 1
  const atClose = chanceOfGap(demand, supply, horizons[last]?.until ?? 0)
  if (last < 1 || atClose < 0.02) return horizons.map(() => atClose)
  const curve: number[] = []
  let from = 0
  let low = chanceOfGap(demand, supply, horizons[0]?.until ?? 0)
  for (let point = 1; point <= CURVE_POINTS; point += 1) {
    const to = Math.round((last * point) / CURVE_POINTS)
    if (to === from) continue
    const high =
      point === CURVE_POINTS ? atClose : chanceOfGap(demand, supply, horizons[to]?.until ?? 0)
    for (let index = from; index < to; index += 1)
      curve[index] = low + ((high - low) * (index - from)) / (to - from)
    from = to
    low = high
  }
  curve[last] = atClose
  return curve
}
