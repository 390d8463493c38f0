/** What is worth telling the lead about a component, from its forecast: one rule each. */
import type { AdviceLog } from '#lib/estimate/advice.ts'
import type { ByWhen } from '#lib/estimate/advice-reason.ts'
import type { BatchPlan } from '#lib/estimate/batch-timing.ts'
import { portionChances } from '#lib/estimate/count-chances.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'
import type { KeepPlan } from '#lib/estimate/keep.ts'
import { expectedLost, type Stakes } from '#lib/estimate/newsvendor.ts'
import type { Supply } from '#lib/estimate/run-out.ts'
import type { Suggestion } from '#lib/estimate/station-forecast.ts'

/** A doubt of so many portions is worth a look, where it matters. */
const DOUBT = 2
/** Chances of running out between which a look could change what is done. */
const MATTERS = [0.1, 0.9] as const
/** Of what is lost without knowing, a look is taken to save so much. Found by simulation. */
const LOOK_SAVES = 0.2
const MEASURE_AGAIN_MS = 15 * 60_000
/** From this chance of running out on it is worth keeping some of what can't be made again. */
const KEEP_FROM = 0.6
/** Cents of not having to disappoint at the counter. Found by simulation. */
const KEEP_SAVES = 60

/** What is known of one component at a moment. Instants in epoch milliseconds. */
export interface ComponentCase {
  readonly component: string
  readonly demand: ComponentDemand
  readonly supply: Supply
  readonly stakes: Stakes
  /** Chance of running out before close. */
  readonly chance: number
  readonly by: ByWhen
  readonly plan: BatchPlan | null
  readonly keep: KeepPlan | null
  readonly isKept: boolean
  readonly lookedAt: number
  readonly now: number
  /** Minute of the day at which the service closes. */
  readonly closes: number
  readonly instantAt: (minute: number) => number
}

const startBatch = (one: ComponentCase): readonly Suggestion[] => {
  const { component, plan, chance, by } = one
  if (plan?.verdict !== 'start') return []
  const { loads, portions, gapIfNow, gapIfLater, leftWith, leftWithout, latestStart } = plan
  return [
    {
      key: `start-batch ${component}`,
      kind: 'start-batch',
      saves: plan.saves,
      reason: {
        why: 'start-batch',
        component,
        loads,
        portions,
        chance,
        by,
        readyAt: one.instantAt(plan.readyAt),
        latestStart: latestStart === null ? null : one.instantAt(latestStart),
        gapIfNow,
        gapIfLater,
        leftWith,
        leftWithout,
      },
    },
  ]
}

const measure = (one: ComponentCase): readonly Suggestion[] => {
  const { component, supply, demand, chance, stakes, lookedAt, now } = one
  const isDoubted = supply.sd > DOUBT && chance > MATTERS[0] && chance < MATTERS[1]
  if (!isDoubted || now - lookedAt <= MEASURE_AGAIN_MS) return []
  const wanted = demand.until(one.closes)
  const most = Math.ceil(supply.mean)
  const lost = expectedLost(portionChances(wanted, demand.perTaking, most), wanted.mean, most)
  return [
    {
      key: `measure ${component}`,
      kind: 'measure',
      saves: LOOK_SAVES * stakes.lostCents * Math.min(lost, supply.sd),
      reason: {
        why: 'measure',
        component,
        chance,
        left: supply.mean,
        sd: supply.sd,
        lookedAt,
      },
    },
  ]
}

/** Said once a service: what was kept, or isn't to be, isn't spoken of again. */
const keep = (one: ComponentCase, log: AdviceLog): readonly Suggestion[] => {
  const { component, chance, by, stakes, keep: plan, isKept } = one
  const key = `keep ${component}`
  const isAnswered = log.some(
    (told) => told.key === key && (told.answer === 'done' || told.answer === 'declined'),
  )
  if (!plan || one.plan !== null || isKept || isAnswered || chance <= KEEP_FROM) return []
  return [
    {
      key,
      kind: 'keep',
      saves: KEEP_SAVES * chance + stakes.lostCents / 2,
      reason: { why: 'keep', component, chance, by, ...plan },
    },
  ]
}

/** What the figures of a component suggest, each with its reason. */
export const suggestionsFor = (one: ComponentCase, log: AdviceLog): readonly Suggestion[] => [
  ...startBatch(one),
  ...measure(one),
  ...keep(one, log),
]
