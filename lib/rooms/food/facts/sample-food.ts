import { civilDate } from '#lib/measure/civil.ts'
import { batchesInOrder, needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import {
  INVENTED_INITIALS as initials,
  readingInLimits,
} from '#lib/rooms/food/facts/invented-readings.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

/** What is put into a pan: of its batch, where it needs one, as much as is left up to `amount`. */
export const foodFor = (state: RunningState, id: string, amount: number) => {
  const component = componentOf(state.station, componentIn(state.station, id) ?? '')
  const reading = readingInLimits(state.station, component)
  const read = reading ? { reading, initials } : {}
  if (!needsBatch(component)) {
    const preparedOn = civilDate(state.at, state.station.timeZone)
    return { amount, ...(reading ? ({ bought: true, preparedOn } as const) : {}), ...read }
  }
  const [batch] = batchesInOrder(state, component.id)
  const of = batch === undefined ? undefined : state.batches[batch]
  return {
    amount: Math.min(amount, of ? leftOfBatch(of) : amount),
    ...(batch === undefined ? {} : { batch }),
    ...read,
  }
}
