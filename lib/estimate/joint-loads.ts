/**
 * Loads that are started together make whole builds: what is planned for each component by itself may
 * leave many of one beside few of another that goes into the same build.
 */
import type { BatchPlan } from '#lib/estimate/batch-timing.ts'
import { portionChances, type Spread } from '#lib/estimate/count-chances.ts'
import { expectedLost } from '#lib/estimate/newsvendor.ts'

export interface JointPlan {
  readonly component: string
  readonly plan: BatchPlan
  readonly portionsPerLoad: number
  /** Portions that are there until close without a new load. */
  readonly there: number
  /** Portions that are still wanted until close. */
  readonly wanted: number
}

export interface JointItem {
  /** What its builds usually have, bases apart, since guests take another. */
  readonly components: readonly string[]
  /** Of it until close. */
  readonly builds: Spread
}

/** Cents of a build that is served without a part it should have. Found by simulation. */
const NOT_WHOLE_CENTS = 150

/** Takings of one portion. */
const ONE = [1]
/** Every plan is looked at again so often at most; a change that saves nothing ends it sooner. */
const ROUNDS = 4

type Loads = Readonly<Record<string, number>>

/** Of an item: what of it is started, and how far that goes which goes furthest as planned by itself. */
interface Shared {
  readonly item: JointItem
  readonly furthest: number
  /** Chances of its builds, from none on. */
  readonly chances: Float64Array
}

const lost = ({ item, chances }: Shared, covered: number): number =>
  expectedLost(chances, item.builds.mean, Math.max(0, covered))

/** How many loads of each to start, of those that are to be started: as many as planned, or more. */
export const jointLoads = (plans: readonly JointPlan[], items: readonly JointItem[]): Loads => {
  const started = new Map(
    plans.flatMap((one) => (one.plan.verdict === 'start' ? [[one.component, one] as const] : [])),
  )
  const own: Record<string, number> = Object.fromEntries(
    [...started].map(([id, { plan }]) => [id, plan.loads]),
  )
  /** How many builds of an item what is there and started of a component goes for. */
  const covers = (id: string, loads: number, { builds }: JointItem): number => {
    const one = started.get(id)
    if (!one || one.wanted <= 0) return Number.POSITIVE_INFINITY
    return ((one.there + loads * one.portionsPerLoad) / one.wanted) * builds.mean
  }
  const shared = items.flatMap((all): readonly Shared[] => {
    const item = { ...all, components: all.components.filter((id) => started.has(id)) }
    if (item.components.length < 2) return []
    const furthest = Math.max(...item.components.map((id) => covers(id, own[id] ?? 0, item)))
    if (!Number.isFinite(furthest)) return []
    return [{ item, furthest, chances: portionChances(item.builds, ONE, Math.ceil(furthest)) }]
  })
  /** Builds for which something else goes far enough, and this doesn't. */
  const notWhole = (one: Shared, loads: Loads): number => {
    const covered = one.item.components.map((id) => covers(id, loads[id] ?? 0, one.item))
    const least = Math.min(one.furthest, ...covered)
    return lost(one, least) - lost(one, one.furthest)
  }
  const costOf = (loads: Loads, component: string): number => {
    const apart = started.get(component)?.plan.costs[loads[component] ?? 0]
    const together = shared
      .filter(({ item }) => item.components.includes(component))
      .reduce((sum, one) => sum + notWhole(one, loads), 0)
    return (apart ?? Number.POSITIVE_INFINITY) + NOT_WHOLE_CENTS * together
  }
  let best: Loads = own
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = best
    for (const [id, { plan }] of started) {
      for (let loads = (own[id] ?? 0) + 1; loads < plan.costs.length; loads += 1) {
        const other = { ...best, [id]: loads }
        if (costOf(other, id) < costOf(best, id)) best = other
      }
    }
    if (best === before) break
  }
  return best
}
