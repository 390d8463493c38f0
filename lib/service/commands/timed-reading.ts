/** What a reading of food on time alone brings with it. */

import { meets } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { TimeClock } from '#lib/safety/time-control.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import type { StockPlace } from '#lib/service/food-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { stockOf } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { madeToThrowOut, stopsFor } from '#lib/service/thrown-out.ts'

/** What a reading of food on time alone brings with it. */
export const timedReading = (
  state: RunningState,
  { what, id }: Pick<StockPlace, 'what' | 'id'>,
  clock: TimeClock | null,
  reading: Reading,
): readonly ServiceEvent[] => {
  const isWarm =
    clock !== null &&
    clock.rule !== '4h' &&
    !meets(reading.temperature, limitsOf(state.station).timeOnlyWarmest)
  const read: ServiceEvent = { type: 'temperatureRead', what, id, reading, inLimits: !isWarm }
  if (!isWarm) return [read]
  const passed: ServiceEvent = { type: 'throwOutPassed', what, id, because: 'too-warm' }
  if (what === 'batch') return [read, passed]
  const lastGoodAt = stockOf(state, what, id)?.readings.at(-1)?.at ?? null
  const made = madeToThrowOut(state, { what, id, lastGoodAt }, 'too-warm')
  return [read, passed, ...stopsFor(state, [id]), ...made]
}
