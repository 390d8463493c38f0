/**
 * Which item a build is: weights fitted against the items that were sold beside (R. D. Luce's choice
 * rule by the MM steps of D. R. Hunter, "MM algorithms for generalized Bradley-Terry models", 2004;
 * from memory), so that a day with another menu teaches too, and how far the items of a day stray.
 */
import { type Stretch, soldIn } from '#lib/estimate/par/past-day.ts'
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

const served = ({ serves }: Stretch, weights: ItemWeights['weights']): number =>
  sumOf(Object.entries(serves).map(([id, share]) => share * (weights[id] ?? 0)))

const steadyOf = (stretches: readonly Stretch[], weights: ItemWeights['weights']): number => {
  let sum = FIRST_DAYS / (FIRST_STEADY + 1)
  let count = FIRST_DAYS
  for (const stretch of stretches) {
    const { serves, sold } = stretch
    const had = Object.entries(serves).filter(([, share]) => share > 0)
    const all = soldIn({ items: sold })
    if (had.length < 2 || all < LEAST_BUILDS) continue
    const whole = served(stretch, weights)
    const pearson = sumOf(
      had.map(([id, share]) => {
        const usual = (all * share * (weights[id] ?? 0)) / whole
        return ((sold[id] ?? 0) - usual) ** 2 / usual
      }),
    )
    sum += (pearson / (had.length - 1) - 1) / (all - 1)
    count += 1
  }
  return Math.min(MOST_STEADY, Math.max(LEAST_STEADY, count / Math.max(1e-9, sum) - 1))
}

/** By days as stretches in which the same could be had. */
export const itemWeights = (
  { items }: Pick<StationDocument, 'items'>,
  days: readonly (readonly Stretch[])[],
): ItemWeights => {
  const stretches = days.flat()
  let weights: Record<string, number> = Object.fromEntries(items.map(({ id }) => [id, 1]))
  for (let step = 0; step < STEPS; step += 1) {
    const middling = sumOf(Object.values(weights)) / Math.max(1, items.length)
    const rates = stretches.map(
      (stretch) => soldIn({ items: stretch.sold }) / served(stretch, weights),
    )
    weights = Object.fromEntries(
      items.map(({ id }): [string, number] => {
        // As if it had been sold a few times beside one other of middling weight, each as often.
        let counted = FIRST_BUILDS / 2
        let against = FIRST_BUILDS / ((weights[id] ?? 0) + middling)
        for (const [index, { serves, sold }] of stretches.entries()) {
          counted += sold[id] ?? 0
          against += (serves[id] ?? 0) * (rates[index] ?? 0)
        }
        return [id, counted / against]
      }),
    )
  }
  // The longest stretch of a day says how far it strays: the others are the same day again.
  const longest = days.flatMap((one) =>
    one.length === 0
      ? []
      : [one.reduce((a, b) => (soldIn({ items: a.sold }) >= soldIn({ items: b.sold }) ? a : b))],
  )
  return { weights, steady: steadyOf(longest, weights) }
}
