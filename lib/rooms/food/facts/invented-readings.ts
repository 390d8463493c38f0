/** Readings that nobody took, for what is invented anyway: the demo, trials and samples. */

import { civilDate } from '#lib/measure/civil.ts'
import { batchesInOrder, needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import { cookingLimit } from '#lib/safety/cooking.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { GivenHeatReading, GivenReading } from '#lib/service/commands/food-fields.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** Nobody's: they say themselves that they are invented. */
export const INVENTED_INITIALS = 'DEMO'

const PROBE = 'probe 1'

const figure = (station: StationDocument, both: { readonly F: number; readonly C: number }) => ({
  tenths: both[station.safety.scale],
  scale: station.safety.scale,
})

/** A reading in limits, of food that is held hot or cold; none of what is held dry. */
export const readingInLimits = (
  station: StationDocument,
  { held }: Pick<Component, 'held'>,
  at?: number,
): GivenReading | undefined => {
  if (held === 'dry') return undefined
  const both = held === 'hot' ? { F: 1500, C: 660 } : { F: 380, C: 30 }
  return {
    ...figure(station, both),
    probe: PROBE,
    where: 'middle-stirred',
    ...(at === undefined ? {} : { at }),
  }
}

/** A reading that meets the limit to which a component is cooked; none where it isn't. */
export const cookedReading = (
  station: StationDocument,
  component: Component,
  at?: number,
): GivenHeatReading | undefined => {
  const limit = cookingLimit(foodKindOf(component), component.food.cookedIn, limitsOf(station))
  const first = limit?.combinations[0]
  if (!limit || !first) return undefined
  return {
    ...figure(station, first.tenths),
    probe: PROBE,
    where: 'thickest-part',
    heldSeconds: first.seconds,
    stoodSeconds: limit.standSeconds,
    ...(at === undefined ? {} : { at }),
  }
}

/** What is put into a pan: of its batch, where it needs one, as much as is left up to `amount`. */
export const foodFor = (state: RunningState, id: string, amount: number) => {
  const component = componentOf(state.station, componentIn(state.station, id) ?? '')
  const reading = readingInLimits(state.station, component)
  const read = reading ? { reading, initials: INVENTED_INITIALS } : {}
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
