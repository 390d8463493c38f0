/** What is forecast of one component, with what that suggests. */

import type { ByWhen } from '#lib/estimate/advice-reason.ts'
import { type BatchPlan, planBatch } from '#lib/estimate/batch-timing.ts'
import { portionSpread, type Spread } from '#lib/estimate/count-chances.ts'
import type { Forecast, Stocked } from '#lib/estimate/forecast.ts'
import { type KeepPlan, keepPlan } from '#lib/estimate/keep.ts'
import type { Stakes } from '#lib/estimate/newsvendor.ts'
import { biasSaid } from '#lib/estimate/scoop-bias.ts'
import type {
  BatchForecast,
  ComponentForecast,
  Suggestion,
} from '#lib/estimate/station-forecast.ts'
import { suggestionsFor } from '#lib/estimate/suggestions.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component } from '#lib/station/station-document.ts'

/** A moment of a service, for all its components. */
export interface Moment {
  readonly state: RunningState
  readonly now: number
  readonly minute: number
  /** Minute of the day. */
  readonly closes: number
  readonly nextLook: number
  /** Builds still to come, by item. */
  readonly toCome: Readonly<Record<string, Spread>>
  readonly stakes: Readonly<Record<string, Stakes>>
  /** What the pans on the line are counted to hold, by component. */
  readonly inPans: Readonly<Record<string, number>>
  readonly remakes: ReadonlyMap<string, Component['remake']>
  readonly instant: (minute: number) => number
}

const NOTHING_AT_STAKE: Stakes = { lostCents: 0, leftCents: 0 }

const batchOf = (
  plan: BatchPlan,
  place: { readonly where: string; readonly by: string; readonly minutes: number },
  { instant }: Moment,
): BatchForecast => ({
  verdict: plan.verdict,
  loads: plan.loads,
  portions: plan.portions,
  readyAt: instant(plan.readyAt),
  latestStart: plan.latestStart === null ? null : instant(plan.latestStart),
  gapIfNow: plan.gapIfNow,
  gapIfLater: plan.gapIfLater,
  leftWith: plan.leftWith,
  leftWithout: plan.leftWithout,
  saves: plan.saves,
  where: place.where,
  who: place.by,
  minutes: place.minutes,
})

const byWhen = ({ runOut }: Forecast, instant: (minute: number) => number): ByWhen => {
  const at = (minute: number | null) => (minute === null ? null : instant(minute))
  return { early: at(runOut.by.early), likely: at(runOut.by.likely), late: at(runOut.by.late) }
}

export interface Looked {
  readonly forecast: ComponentForecast
  readonly suggestions: readonly Suggestion[]
}

/** What a component's own figures plan; null where it can't be made again today. */
export const planOf = (
  id: string,
  { demand }: Forecast,
  { supply }: Stocked,
  { remakes, stakes, minute: now, nextLook, closes }: Moment,
): BatchPlan | null => {
  const remake = remakes.get(id) ?? null
  const own = stakes[id] ?? NOTHING_AT_STAKE
  return remake ? planBatch({ demand, supply, remake, stakes: own, now, nextLook, closes }) : null
}

export const lookAt = (
  id: string,
  found: Forecast,
  stocked: Stocked,
  plan: BatchPlan | null,
  moment: Moment,
): Looked => {
  const { state, now, closes, instant } = moment
  const { demand, runOut } = found
  const { supply } = stocked
  const remake = moment.remakes.get(id) ?? null
  const stakes = moment.stakes[id] ?? NOTHING_AT_STAKE
  const by = byWhen(found, instant)
  const keep: KeepPlan | null =
    plan === null && runOut.lasting !== 'enough'
      ? keepPlan(state.station, id, supply.mean, moment.toCome)
      : null
  const wanted = portionSpread(demand.until(closes), demand.perTaking)
  const portion = state.portions[id]?.amount ?? 1
  const belief = state.beliefs[id]
  return {
    forecast: {
      lasting: runOut.lasting,
      chance: runOut.chance,
      beforeNextBatch: runOut.beforeNextBatch,
      by,
      left: { mean: supply.mean, sd: supply.sd },
      wanted: { mean: wanted.mean, sd: Math.sqrt(wanted.variance) },
      underway: supply.arriving.map(({ at, portions }) => ({ at: instant(at), portions })),
      batch: plan && remake ? batchOf(plan, remake, moment) : null,
      keep,
      bias: belief ? biasSaid(belief, (moment.inPans[id] ?? 0) / portion) : null,
    },
    suggestions: suggestionsFor(
      {
        component: id,
        demand,
        supply,
        stakes,
        chance: runOut.chance,
        by,
        plan,
        keep,
        isKept: state.keeps[id] !== undefined,
        lookedAt: state.lookedAt[id] ?? state.openedAt,
        now,
        closes,
        instantAt: instant,
      },
      state.adviceLog,
    ),
  }
}
