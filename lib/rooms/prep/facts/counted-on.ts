/** What of the larder planned services count on: the one whose doors open first chooses first. */
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { atHandFor, takenFor } from '#lib/rooms/food/facts/larder/at-hand.ts'
import type { HereNow } from '#lib/rooms/food/facts/larder/from-larder.ts'
import { mostWantedFor } from '#lib/rooms/prep/facts/par-for.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'

/** A planned service of the house, of whichever station. */
export interface PlannedDay {
  /** Its station, portions and labels count, and what it has of the larder already. */
  readonly state: HereNow & Pick<RunningState, 'batches'>
  readonly plan: Pick<ServicePlan, 'on' | 'opensAt' | 'closesAt' | 'items'>
  /** Guests expected; null where nobody said. */
  readonly expected: number | null
  readonly past: readonly PastDay[]
}

/** Builds an hour where neither guests expected nor a past service tells. Common practice, no source. */
const FIRST_AN_HOUR = 40
const HOUR_MS = 3_600_000

export const aheadOf = ({ plan, expected }: Pick<PlannedDay, 'plan' | 'expected'>) => ({
  on: plan.on,
  expected,
  firstBuilds: Math.max(1, (FIRST_AN_HOUR * (plan.closesAt - plan.opensAt)) / HOUR_MS),
})

/**
 * Lots by id with the day of the service that counts on them: of what it may use, those that go first,
 * until they are as much as it wants on nearly any day. `services`: the first to open first; each takes
 * of what those before it leave. A lot is one service's as a whole.
 */
export const countedOn = (
  services: readonly PlannedDay[],
  larder: LarderState,
  now: number,
): Readonly<Record<string, CivilDate>> => {
  const counted: Record<string, CivilDate> = {}
  for (const service of services) {
    const { state, plan, past } = service
    const { on, closesAt, items } = plan
    const most = mostWantedFor(state.station, { ahead: aheadOf(service), past, items })
    for (const { id } of state.station.components) {
      let lacks = (most[id] ?? 0) - takenFor(state, id, closesAt)
      const { lots } = atHandFor(state, larder, id, { now, on, until: closesAt, counted })
      for (const { lot, portions } of lots) {
        if (lacks <= 0) break
        lacks -= portions
        counted[lot] = on
      }
    }
  }
  return counted
}
