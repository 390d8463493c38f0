import { z } from 'zod'
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import { offSaleBecause } from '#lib/rooms/food/facts/off-sale.ts'
import { mostInPan } from '#lib/rooms/pans/facts/capacity.ts'
import { type Withdrawal, withdraw } from '#lib/rooms/pans/facts/short.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { WASTE_REASONS, type WasteReason } from '#lib/service/events/stock-event.ts'
import { isUsable } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent, findPan, pansOf } from '#lib/station/find.ts'

/** Somebody eats it. */
const EATEN: readonly WasteReason[] = ['sample', 'staff-meal']

const outOfPan = (
  state: RunningState,
  pan: string,
  component: string,
  amount: number,
): Withdrawal => {
  const held = state.pans[pan]
  const there = Math.min(held?.amount ?? 0, amount)
  return {
    took: held && there > 0 ? [{ pan, load: held.load, counted: held.counted, amount: there }] : [],
    uncounted: amount > there ? { [component]: amount - there } : {},
  }
}

/** What was spilt, dropped, tasted or eaten by the crew: it is in no pan any more. */
export const waste = defineCommand({
  type: 'waste',
  who: ['assembly'],
  stages: ['open'],
  schema: {
    /** Out of which pan; else of a component, out of its pans in the order of the line. */
    pan: idField.optional(),
    component: idField.optional(),
    /** In the component's unit. */
    amount: amountField,
    reason: z.enum(WASTE_REASONS),
  },
  decide: (state, { pan, component, amount, reason }) => {
    const place = pan === undefined ? null : findPan(state.station, pan)
    if (pan !== undefined && !place) return refuse({ code: 'unknown', what: 'pan', id: pan })
    const of = place?.component ?? component
    if (of === undefined || !findComponent(state.station, of))
      return refuse({ code: 'unknown', what: 'component', id: of ?? '' })
    const pans = state.station.line.wells
      .flatMap((well) => well.pans)
      .filter((one) => (place ? one.id === place.id : one.component === of))
    const there = pans.filter((one) => (state.pans[one.id]?.amount ?? 0) > 0)
    if (EATEN.includes(reason) && !there.every((one) => isUsable(state, 'pan', one.id)))
      return refuse(offSaleBecause(of, clockDoubtOf(state, of)))
    const most = pans.reduce((sum, one) => sum + mostInPan(state, one), 0)
    if (!Number.isSafeInteger(amount) || amount < 1 || amount > most)
      return refuse({ code: 'absurd-amount', pan: pans[0]?.id ?? of, most })
    const out = place ? outOfPan(state, place.id, of, amount) : withdraw(state, { [of]: amount })
    return happened({ type: 'wasteRecorded', component: of, amount, reason, ...out })
  },
  sample: ({ station }) =>
    pansOf(station).map(({ id }) => ({ pan: id, amount: 1, reason: 'dropped' }) as const),
  rules: ['U6'],
  example: { pan: 'pan-rice', amount: 250_000, reason: 'spill' },
  tells:
    ' (`reason`: `spill`, `dropped`, `sample`, `staff-meal`, `spoiled` or `other`; `component` in the place of `pan`: out of its pans in order)',
})
