/** How long makings of a component took, as past services measured them. */
import { MINUTE_MS } from '#lib/safety/limits.ts'

export interface MeasuredBatch {
  readonly component: string
  readonly startedAt: number
  readonly finishedAt: number | null
}

/** Fewer of them say little. */
const FEWEST = 3
/** Older ones were made by other hands. */
const NEWEST = 9

/** The middle one of the newest, whole minutes up; components that were made less than thrice aren't in it. */
export const measuredMinutes = (
  batches: readonly MeasuredBatch[],
): Readonly<Record<string, number>> => {
  const taken: Record<string, number[]> = {}
  for (const { component, startedAt, finishedAt } of batches) {
    if (finishedAt === null || finishedAt <= startedAt) continue
    taken[component] ??= []
    taken[component].push(Math.ceil((finishedAt - startedAt) / MINUTE_MS))
  }
  return Object.fromEntries(
    Object.entries(taken).flatMap(([component, minutes]) => {
      const newest = minutes.slice(-NEWEST).sort((a, b) => a - b)
      const middle = newest[Math.floor(newest.length / 2)]
      return newest.length < FEWEST || middle === undefined ? [] : [[component, middle]]
    }),
  )
}
