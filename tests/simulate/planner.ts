/**
 * A planner who knows when each component will be wanted, and is optimal for each by itself: a lower
 * bound that no advice can reach. All batches start as early as they can.
 */
import { type ComponentFacts, components } from '#tests/simulate/scenario.ts'
import { type Day, wantedOf } from '#tests/simulate/world.ts'

export interface Outcome {
  /** Portions that were wanted and not there. */
  readonly lost: number
  /** Portions left over. */
  readonly left: number
  readonly costCents: number
}

export type Outcomes = Readonly<Record<string, Outcome>>

export const costOf = (facts: ComponentFacts, lost: number, left: number): Outcome => ({
  lost,
  left,
  costCents: lost * facts.stakes.lostCents + left * facts.stakes.leftCents,
})

const MOST_LOADS = 16

interface Want {
  readonly at: number
  readonly portions: number
}

const played = (
  facts: ComponentFacts,
  wants: readonly Want[],
  bias: number,
  opens: number,
  loads: number,
): Outcome => {
  const { remake } = facts
  const readyAt = (load: number): number => {
    if (!remake) return Number.POSITIVE_INFINITY
    const batch = Math.floor(load / remake.mostLoads)
    const within = load % remake.mostLoads
    const aBatch = remake.minutes + (remake.mostLoads - 1) * remake.minutesPerLoad
    return opens + batch * aBatch + remake.minutes + within * remake.minutesPerLoad
  }
  let there = facts.usualPortions + facts.backUp
  let ready = 0
  let lost = 0
  for (const { at, portions } of wants) {
    while (ready < loads && readyAt(ready) <= at) {
      there += remake?.portionsPerLoad ?? 0
      ready += 1
    }
    const need = portions * (1 + bias)
    if (there >= need) there -= need
    else lost += portions
  }
  return costOf(facts, lost, there + (loads - ready) * (remake?.portionsPerLoad ?? 0))
}

export const planned = (day: Day, opens: number): Outcomes =>
  Object.fromEntries(
    components.map((facts) => {
      const wants = day.guests.flatMap(({ at, wishes }) =>
        wishes.flatMap((wish) => {
          const portions = wantedOf(wish)[facts.id] ?? 0
          return portions > 0 ? [{ at, portions }] : []
        }),
      )
      const most = facts.remake ? MOST_LOADS : 0
      let best = played(facts, wants, day.bias[facts.id] ?? 0, opens, 0)
      for (let loads = 1; loads <= most; loads += 1) {
        const other = played(facts, wants, day.bias[facts.id] ?? 0, opens, loads)
        if (other.costCents < best.costCents) best = other
      }
      return [facts.id, best]
    }),
  )
