/** What a reading of food on time alone brings with it. */

import { broughtBy } from '#lib/rooms/food/facts/probe-trail.ts'
import { meets } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { TimeClock } from '#lib/safety/time-control.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What a reading of food on time alone brings with it. */
export const timedReading = (
  state: RunningState,
  { what, id }: Place,
  clock: TimeClock | null,
  reading: Reading,
): readonly ServiceEvent[] => {
  const isWarm =
    clock !== null &&
    clock.rule !== '4h' &&
    !meets(reading.temperature, limitsOf(state.station).timeOnlyWarmest)
  const read: ServiceEvent = {
    type: 'temperatureRead',
    what,
    id,
    reading,
    inLimits: !isWarm,
    ...broughtBy(state, { what, id }, reading),
  }
  if (!isWarm) return [read]
  return [read, { type: 'throwOutPassed', what, id, because: 'too-warm' }]
}
