/**
 * Which item a build is: weights fitted against the items that were sold beside (R. D. Luce's choice
 * rule by the MM steps of D. R. Hunter, "MM algorithms for generalized Bradley-Terry models", 2004;
 * from memory), so that a day with another menu teaches too, and how far the items of a day stray.
 */
import { type PastDay, ranOut, wantedOfItem } from '#lib/estimate/par/past-day.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface ItemWeights {
  /** Against each other; an item that was never sold has that of a middling one. */
  readonly weights: Readonly<Record<string, number>>
  /** Builds that the weights of a day weigh as much as: the fewer, the more a day strays. */
  readonly steady: number
}

/** Builds as which the first guess weighs, that all items are liked alike. Common practice, no source. */
const FIRST_BUILDS = 8
const FIRST_DAYS = 4
const FIRST_STEADY = 30
const MOST_STEADY = 2_000
const LEAST_STEADY = 4
const STEPS = 12
/** A day of fewer builds says nothing of how far it strays. */
const LEAST_BUILDS = 10

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

/** By item that was sold: builds that the day wanted of it. */
type Wanted = Readonly<Record<string, number>>

const steadyOf = (days: readonly Wanted[], weights: ItemWeights['weights']): number => {
  let sum = FIRST_DAYS / (FIRST_STEADY + 1)
  let count = FIRST_DAYS
  for (const wanted of days) {
    const ids = Object.keys(wanted)
    const all = sumOf(Object.values(wanted))
    if (ids.length < 2 || all < LEAST_BUILDS) continue
    const whole = sumOf(ids.map((id) => weights[id] ?? 0))
    const pearson = sumOf(
      ids.map((id) => {
        const usual = (all * (weights[id] ?? 0)) / whole
        return ((wanted[id] ?? 0) - usual) ** 2 / usual
      }),
    )
    sum += (pearson / (ids.length - 1) - 1) / (all - 1)
    count += 1
  }
  return Math.min(MOST_STEADY, Math.max(LEAST_STEADY, count / Math.max(1e-9, sum) - 1))
}

/**
 * `builds`: how many each day is taken to have wanted in all. Of an item that ran out a day says "at
 * least": as many are taken as its weight says, where that is more.
 */
export const itemWeights = (
  station: Pick<StationDocument, 'items'>,
  days: readonly PastDay[],
  builds: readonly number[],
): ItemWeights => {
  const { items } = station
  const told = days.map((day) => ({
    ran: items.filter((item) => ranOut(item, day.soldOut)).map(({ id }) => id),
    least: Object.fromEntries(
      items.flatMap((item): [string, number][] => {
        const wanted = wantedOfItem(station, item, day)
        return wanted > 0 ? [[item.id, wanted]] : []
      }),
    ),
  }))
  const likely = (weights: ItemWeights['weights']): Wanted[] =>
    told.map(({ ran, least }, index) => {
      const whole = sumOf(Object.keys(least).map((id) => weights[id] ?? 0))
      return Object.fromEntries(
        Object.entries(least).map(([id, sold]) => {
          const usual = ((builds[index] ?? 0) * (weights[id] ?? 0)) / whole
          return [id, ran.includes(id) ? Math.max(sold, usual) : sold]
        }),
      )
    })
  let weights: Record<string, number> = Object.fromEntries(items.map(({ id }) => [id, 1]))
  for (let step = 0; step < STEPS; step += 1) {
    const wanted = likely(weights)
    const middling = sumOf(Object.values(weights)) / Math.max(1, items.length)
    weights = Object.fromEntries(
      items.map(({ id }): [string, number] => {
        // As if it had been sold a few times beside one other of middling weight, each as often.
        let counted = FIRST_BUILDS / 2
        let against = FIRST_BUILDS / ((weights[id] ?? 0) + middling)
        for (const day of wanted) {
          const own = day[id]
          if (own === undefined) continue
          counted += own
          against +=
            sumOf(Object.values(day)) / sumOf(Object.keys(day).map((one) => weights[one] ?? 0))
        }
        return [id, counted / against]
      }),
    )
  }
  const whole = likely(weights).filter((_, index) => told[index]?.ran.length === 0)
  return { weights, steady: steadyOf(whole, weights) }
}
