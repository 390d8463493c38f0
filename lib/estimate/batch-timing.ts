/**
 * When to start a batch, and of how many loads: what each choice costs in lost sales and left-over,
 * against waiting for the next moment at which the lead can be asked, by when more will be known.
 */
import { portionChances, portionSpread, type Spread } from '#lib/estimate/count-chances.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'
import { expectedLeft, expectedLost, type Stakes } from '#lib/estimate/newsvendor.ts'
import { chanceOfGap, type Supply } from '#lib/estimate/run-out.ts'

/** How a component is made again today. */
export interface Remake {
  /** Minutes until the first load stands on the line: walk, cooking and the way back. */
  readonly minutes: number
  /** Minutes more for each further load. */
  readonly minutesPerLoad: number
  readonly portionsPerLoad: number
  /** Loads that one batch can have. */
  readonly mostLoads: number
}

/** Minutes from the start until so many loads of a batch stand on the line. */
export const minutesUntil = (
  { minutes, minutesPerLoad }: Pick<Remake, 'minutes' | 'minutesPerLoad'>,
  loads: number,
): number => minutes + minutesPerLoad * Math.max(0, loads - 1)

export interface BatchQuestion {
  readonly demand: ComponentDemand
  readonly supply: Supply
  readonly remake: Remake
  readonly stakes: Stakes
  /** Minutes of the day. */
  readonly now: number
  /** When the lead could be asked about this component next, if not now. */
  readonly nextLook: number
  readonly closes: number
}

export type BatchVerdict = 'start' | 'wait' | 'enough' | 'only-waste' | 'too-late'

export interface BatchPlan {
  readonly verdict: BatchVerdict
  /** Loads to start now; 0 unless the verdict is to start. */
  readonly loads: number
  readonly portions: number
  /** When the first load would stand on the line, if started now. */
  readonly readyAt: number
  /** Cents that starting now is expected to save against waiting for the next look, gaps weighed double. */
  readonly saves: number
  /** Chance of a gap before the batch is there, if started now or in five minutes. */
  readonly gapIfNow: number
  readonly gapIfLater: number
  /** Chance of running out before close if none is started. */
  readonly gapIfNever: number
  /** The latest minute at which a start keeps the chance of a gap within reason; null where past. */
  readonly latestStart: number | null
  /** Portions expected to be left over at close, with and without the loads. */
  readonly leftWith: number
  readonly leftWithout: number
  /** What starting so many loads now costs, cents, from none on; empty where none is weighed. */
  readonly costs: readonly number[]
  /** The same plan with another number of loads, at least 1 and as many as are weighed. */
  readonly withLoads: (loads: number) => BatchPlan
}

/** What a start costs the crew, whatever its size: without it everything would be made in drips. */
const EFFORT_CENTS = 30

/** A guest who goes without costs more than that sale: so many times as much. Found by simulation. */
const GAP_WEIGHT = 2

/** A chance of a gap up to this, or as small as it is already, is within reason. */
const GAP_IN_REASON = 0.1
const LATER_MINUTES = 5

/** Mean shifts in standard deviations of what will be learned, and their weights (Gauss-Hermite). */
const LEARNED = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
] as const

/** Of what is uncertain now, at most this part is known by the next look. */
const LEARNED_MOST = 0.6

/** Full batches that can still be made after the next look. */
const LATER_BATCHES = 2

interface Wanted {
  readonly chances: Float64Array
  readonly mean: number
}

const arriving = (supply: Supply, by: number): number =>
  supply.arriving.reduce((sum, one) => (one.at <= by ? sum + one.portions : sum), 0)

/** What is wanted, with the doubt about what the pans hold added to that about the guests. */
const wantedOf = (
  takings: Spread,
  demand: ComponentDemand,
  supply: Supply,
  most: number,
): Wanted => {
  const unsure = { mean: takings.mean, variance: takings.variance + supply.sd * supply.sd }
  return {
    chances: portionChances(unsure, demand.perTaking, most),
    mean: portionSpread(takings, demand.perTaking).mean,
  }
}

const latestStart = (question: BatchQuestion, gapIfNow: number): number | null => {
  const { demand, supply, remake, now, closes } = question
  const bearable = Math.max(GAP_IN_REASON, gapIfNow)
  if (gapIfNow > 0.5) return null
  let from = now
  let to = closes - remake.minutes
  if (chanceOfGap(demand, supply, closes) <= bearable) return to
  for (let step = 0; step < 6 && to - from > 1; step += 1) {
    const middle = (from + to) / 2
    if (chanceOfGap(demand, supply, middle + remake.minutes) <= bearable) from = middle
    else to = middle
  }
  return from
}

/** Weighs the choices. Costs a fixed number of sums over the portions at stake. */
export const planBatch = (question: BatchQuestion): BatchPlan => {
  const { demand, supply, remake, now, nextLook, closes } = question
  const { leftCents } = question.stakes
  const lostCents = GAP_WEIGHT * question.stakes.lostCents
  const { portionsPerLoad: load, mostLoads } = remake
  const readyAt = now + remake.minutes
  const readyLater = Math.min(closes, nextLook + remake.minutes)
  const there = supply.mean + arriving(supply, closes)
  const gapIfNever = chanceOfGap(demand, supply, closes)
  const gapIfNow = chanceOfGap(demand, supply, Math.min(closes, readyAt))
  const most =
    Math.ceil(Math.max(0, there) + (1 + LATER_BATCHES) * mostLoads * load + 4 * supply.sd) + 1
  const toClose = demand.until(closes)
  const never = wantedOf(toClose, demand, supply, most)
  const leftWithout = expectedLeft(never.chances, there)
  const plan = (
    verdict: BatchVerdict,
    loads: number,
    saves: number,
    costs: readonly number[] = [],
  ): BatchPlan => ({
    verdict,
    loads,
    portions: loads * load,
    readyAt,
    saves,
    gapIfNow,
    gapIfLater: chanceOfGap(demand, supply, Math.min(closes, readyAt + LATER_MINUTES)),
    gapIfNever,
    latestStart: latestStart(question, gapIfNow),
    leftWith: expectedLeft(never.chances, there + loads * load),
    leftWithout,
    costs,
    withLoads: (other) => plan(verdict, other, saves, costs),
  })
  if (readyAt >= closes) return plan(gapIfNever < GAP_IN_REASON ? 'enough' : 'too-late', 0, 0)
  if (gapIfNever < 0.01) return plan('enough', 0, 0)

  const lostBy = (minute: number, extra: number): number => {
    const amount = supply.mean + arriving(supply, minute) + extra
    const wanted = wantedOf(demand.until(minute), demand, supply, Math.ceil(Math.max(0, amount)))
    return expectedLost(wanted.chances, wanted.mean, Math.max(0, amount))
  }
  const lostBeforeReady = lostBy(readyAt, 0)
  const soFar = demand.until(nextLook)
  const learned =
    toClose.mean > 0 ? Math.min(LEARNED_MOST, soFar.mean / Math.max(1e-9, toClose.mean)) : 0
  const outcomes = LEARNED.map(([shift, weight]) => {
    const mean = Math.max(0.01, toClose.mean + shift * Math.sqrt(learned * toClose.variance))
    const variance = Math.max(mean, (1 - learned) * toClose.variance)
    return { weight, wanted: wantedOf({ mean, variance }, demand, supply, most) }
  })
  const costAt = ({ chances, mean }: Wanted, amount: number, lostBefore: number): number =>
    lostCents * (lostBefore + expectedLost(chances, mean, amount + lostBefore)) +
    leftCents * expectedLeft(chances, amount + lostBefore)

  /** Starting so many loads now, and at the next look whatever is best by then. */
  const costOf = (loads: number): number => {
    const lostWithout = loads > 0 ? lostBeforeReady : 0
    const lostBetween = Math.max(lostWithout, lostBy(readyLater, loads * load))
    let cost = loads > 0 ? EFFORT_CENTS : 0
    for (const { weight, wanted } of outcomes) {
      let best = Number.POSITIVE_INFINITY
      for (let more = 0; more <= (readyLater < closes ? LATER_BATCHES * mostLoads : 0); more += 1) {
        const amount = Math.max(0, there) + (loads + more) * load
        const then =
          costAt(wanted, amount, more > 0 ? lostBetween : lostWithout) +
          (more > 0 ? EFFORT_CENTS : 0)
        if (then < best) best = then
      }
      cost += weight * best
    }
    return cost
  }
  const costs = Array.from({ length: mostLoads + 1 }, (_, loads) => costOf(loads))
  const waiting = costs[0] ?? 0
  const bestCost = Math.min(...costs)
  const bestLoads = costs.indexOf(bestCost)
  if (bestLoads > 0) return plan('start', bestLoads, waiting - bestCost, costs)
  const atOnce = costAt(never, Math.max(0, there) + load, lostBeforeReady)
  const isWaste = atOnce > costAt(never, Math.max(0, there), 0)
  if (gapIfNever < GAP_IN_REASON) return plan('enough', 0, 0)
  return plan(isWaste ? 'only-waste' : 'wait', 0, 0)
}
