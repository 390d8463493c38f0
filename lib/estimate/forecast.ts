/** All components of a station together: what will be wanted of each, and whether it lasts. */

import { buildsToCome, type Horizon } from '#lib/estimate/arrivals.ts'
import { type ComponentDemand, demandOf } from '#lib/estimate/demand.ts'
import type { DemandModel } from '#lib/estimate/demand-history.ts'
import {
  baseGroups,
  groupKey,
  itemShares,
  type KnockOn,
  knockOnOf,
  withKnockOn,
} from '#lib/estimate/knock-on.ts'
import { goneCurve, type RunOut, runOutOf, type Supply } from '#lib/estimate/run-out.ts'
import type { ServiceCounts } from '#lib/estimate/service-counts.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What a station's menu and the past say, worked out once a service. */
export interface StationAhead {
  readonly model: DemandModel
  readonly knockOn: KnockOn
  /** Components whose loss changes what else is wanted. */
  readonly changing: readonly string[]
  /** Sets of bases among which guests choose. */
  readonly bases: readonly (readonly string[])[]
}

export const stationAhead = (
  station: StationDocument,
  model: DemandModel,
  past: readonly ServiceCounts[],
): StationAhead => {
  const knockOn = knockOnOf(station, itemShares(station, past))
  const gone = new Set(Object.values(knockOn).flatMap((factors) => Object.keys(factors)))
  return {
    model,
    knockOn,
    changing: station.components.map(({ id }) => id).filter((id) => gone.has(id)),
    bases: baseGroups(station),
  }
}

export interface Forecast {
  readonly demand: ComponentDemand
  readonly runOut: RunOut
}

export interface Forecasts {
  readonly horizons: readonly Horizon[]
  readonly of: Readonly<Record<string, Forecast>>
}

/** What is there of a component, and when a batch started now would be ready; null: none can be made. */
export interface Stocked {
  readonly supply: Supply
  readonly nextBatchAt: number | null
}

/** Demands of which each build has one: of their means and variances, summed. */
const together = (demands: readonly ComponentDemand[]): ComponentDemand => ({
  perTaking: demands[0]?.perTaking ?? [1],
  until: (minute) =>
    demands
      .map(({ until }) => until(minute))
      .reduce(
        (sum, one) => ({ mean: sum.mean + one.mean, variance: sum.variance + one.variance }),
        { mean: 0, variance: 0 },
      ),
})

const pooled = (supplies: readonly Supply[]): Supply => ({
  mean: supplies.reduce((sum, { mean }) => sum + mean, 0),
  sd: Math.sqrt(supplies.reduce((sum, { sd }) => sum + sd * sd, 0)),
  arriving: supplies.flatMap(({ arriving }) => arriving).sort((a, b) => a.at - b.at),
})

/**
 * Every forecast at a minute of the day, of the components in `stocked` that the model knows. Cost is
 * linear in the components, apart from those whose loss changes what else is wanted (hearts, bases).
 */
export const forecastAll = (
  { model, knockOn, changing, bases }: StationAhead,
  counts: ServiceCounts,
  stocked: Readonly<Record<string, Stocked>>,
  minute: number,
): Forecasts => {
  const horizons = buildsToCome(counts, model.profile, model.straying, minute, true)
  const plain: Record<string, ComponentDemand> = {}
  for (const component of Object.keys(stocked)) {
    const taken = model.shares[component]
    if (taken) plain[component] = demandOf(horizons, counts, component, taken)
  }
  const goneBy: Record<string, readonly number[]> = {}
  for (const component of changing) {
    const demand = plain[component]
    const there = stocked[component]
    if (demand && there) goneBy[component] = goneCurve(demand, there.supply, horizons)
  }
  for (const group of bases) {
    const demands = group.flatMap((id) => plain[id] ?? [])
    const supplies = group.flatMap((id) => stocked[id]?.supply ?? [])
    if (demands.length === group.length && supplies.length === group.length)
      goneBy[groupKey(group)] = goneCurve(together(demands), pooled(supplies), horizons)
  }
  const forecasts: Record<string, Forecast> = {}
  for (const [component, { supply, nextBatchAt }] of Object.entries(stocked)) {
    const alone = plain[component]
    if (!alone) continue
    const demand = withKnockOn(alone, component, knockOn, goneBy, horizons)
    forecasts[component] = {
      demand,
      runOut: runOutOf(demand, supply, horizons, nextBatchAt),
    }
  }
  return { horizons, of: forecasts }
}
