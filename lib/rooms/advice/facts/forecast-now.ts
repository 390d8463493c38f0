/** All that is forecast for a station at a moment, from its state and what past services taught. */

import { type AdviceLog, NEXT_LOOK_MINUTES, toDo } from '#lib/estimate/advice.ts'
import type { Spread } from '#lib/estimate/count-chances.ts'
import { demandAhead, type PastTaught } from '#lib/estimate/demand-history.ts'
import { type Forecasts, forecastAll, type Stocked } from '#lib/estimate/forecast.ts'
import { itemShares } from '#lib/estimate/knock-on.ts'
import type { ServiceCounts } from '#lib/estimate/service-counts.ts'
import type {
  ComponentForecast,
  StationForecast,
  Suggestion,
} from '#lib/estimate/station-forecast.ts'
import { type Calm, calmOf } from '#lib/rooms/advice/facts/calm.ts'
import { lookAt, type Moment } from '#lib/rooms/advice/facts/component-forecast.ts'
import { menuTaught } from '#lib/rooms/advice/facts/menu-taught.ts'
import { plansTogether } from '#lib/rooms/advice/facts/plans-together.ts'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { soldOut } from '#lib/rooms/advice/facts/sold-out.ts'
import { timedGroups } from '#lib/rooms/advice/facts/timed-groups.ts'
import { supplyOf } from '#lib/rooms/pans/facts/supply.ts'
import { waitNow } from '#lib/rooms/pans/facts/wait-now.ts'
import { closesAt } from '#lib/service/closing.ts'
import { instantAt, minuteAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'

export interface ForecastAsked {
  /** Of the log, for the newest to win. */
  readonly position: number
  /** Epoch milliseconds. */
  readonly now: number
  /** Key of what was first before, which stays so unless another is clearly better. */
  readonly firstBefore: string | null
}

const buildsByItem = (
  state: RunningState,
  counts: ServiceCounts,
  past: readonly ServiceCounts[],
  { horizons }: Forecasts,
): Readonly<Record<string, Spread>> => {
  const all = horizons.at(-1) ?? { mean: 0, variance: 0 }
  return Object.fromEntries(
    Object.entries(itemShares(state.station, [...past, counts])).map(([id, share]) => [
      id,
      {
        mean: all.mean * share,
        variance: all.mean * share * (1 - share) + all.variance * share * share,
      },
    ]),
  )
}

const stockedNow = (state: RunningState, now: number, closes: number): Record<string, Stocked> => {
  const minute = minuteAt(state, now)
  return Object.fromEntries(
    state.station.components.flatMap(({ id, remake }): [string, Stocked][] => {
      const supply = supplyOf(state, id, now)
      if (!supply) return []
      const ready = remake ? minute + remake.minutes : null
      return [[id, { supply, nextBatchAt: ready !== null && ready < closes ? ready : null }]]
    }),
  )
}

const inPansOf = (state: RunningState): Readonly<Record<string, number>> => {
  const sums: Record<string, number> = {}
  for (const { id, component } of pansOf(state.station))
    sums[component] = (sums[component] ?? 0) + (state.pans[id]?.amount ?? 0)
  return sums
}

const momentOf = (
  state: RunningState,
  now: number,
  calm: Calm,
  known: Pick<Moment, 'toCome' | 'stakes'> & { readonly counts: ServiceCounts },
): Moment => {
  const { closes } = known.counts
  const look = calm.nextQuiet(now + NEXT_LOOK_MINUTES * 60_000, instantAt(state, closes))
  return {
    state,
    now,
    minute: minuteAt(state, now),
    closes,
    nextLook: minuteAt(state, look),
    toCome: known.toCome,
    stakes: known.stakes,
    inPans: inPansOf(state),
    remakes: new Map(state.station.components.map(({ id, remake }) => [id, remake])),
    instant: (minute) => instantAt(state, minute),
  }
}

/**
 * While the pans are being set up nothing is suggested but to start what can't wait: the first order or ten
 * minutes end that.
 */
const SETTING_UP_MS = 10 * 60_000

const isUnderWay = ({ nextTicket, openedAt }: RunningState, now: number): boolean =>
  nextTicket > 1 || now - openedAt >= SETTING_UP_MS

/** A start that would be too late, or dearer, once the pans are set up. */
const cantWait = ({ reason }: Suggestion, { openedAt }: RunningState): boolean =>
  reason.why === 'start-batch' &&
  (reason.latestStart === null || reason.latestStart <= openedAt + SETTING_UP_MS)

/** Whether any of it was there in this service: what was never made ready isn't missed. */
const wasThere = (state: RunningState, component: string): boolean =>
  (state.accounts[component]?.loaded ?? 0) > 0 ||
  Object.values(state.batches).some((batch) => batch.component === component)

/**
 * The forecast of an open service. Costs a few milliseconds for a line of 24 pans; asks no clock, so
 * that the server, a simulation and a test come to the same.
 */
export const forecastNow = (
  state: RunningState,
  taught: PastTaught,
  { position, now, firstBefore }: ForecastAsked,
): StationForecast => {
  const closing = closesAt(state, now)
  const closes = Math.max(minuteAt(state, closing), state.counts.opens + 1)
  const counts: ServiceCounts = { ...state.counts, closes }
  const model = demandAhead(taught, { ...counts, groups: timedGroups(state.plan) })
  const menu = menuTaught(state.station, taught)
  const stocked = stockedNow(state, now, closes)
  const all = forecastAll(
    { ...menu, model },
    counts,
    stocked,
    Math.min(minuteAt(state, now), closes),
  )
  const calm = calmOf(state, taught.past.length > 0 ? model.profile : null)
  const toCome = buildsByItem(state, counts, taught.past, all)
  const moment = momentOf(state, now, calm, { counts, toCome, stakes: menu.stakes })
  const components: Record<string, ComponentForecast> = {}
  const candidates: Suggestion[] = [...safetyDue(state, now), ...soldOut(state, now)]
  const plans = plansTogether(all.of, stocked, moment)
  for (const [id, found] of Object.entries(all.of)) {
    const there = stocked[id]
    if (!there) continue
    const { forecast, suggestions } = lookAt(id, found, there, plans[id] ?? null, moment)
    components[id] = forecast
    const isNow = isUnderWay(state, now)
    if (wasThere(state, id))
      candidates.push(...suggestions.filter((one) => isNow || cantWait(one, state)))
  }
  return {
    service: state.service,
    position,
    at: now,
    closesAt: closing,
    closesSaid: state.closesAt !== null,
    rushUntil: calm.rushUntil(now),
    rushAhead: calm.rushAhead(now, closing),
    components,
    wait: waitNow(state, 1),
    candidates,
    doNext: toDo(state.adviceLog, candidates, firstBefore),
  }
}

/** A forecast with what is open by the log as it is now, in the order in which to do it. */
export const withDoNext = (
  forecast: StationForecast,
  log: AdviceLog,
  firstBefore: string | null,
): StationForecast => ({
  ...forecast,
  doNext: toDo(log, forecast.candidates, firstBefore),
})
