import { z } from 'zod'
import { findComponent, findPan, linePansOf } from '#lib/menu/find.ts'
import { clockDoubtOf } from '#lib/service/clock-doubt.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { isUsable } from '#lib/service/held-stock.ts'
import { offSaleBecause } from '#lib/service/off-sale.ts'
import { noPlace } from '#lib/service/place.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { WASTE_REASONS, type WasteReason } from '#lib/service/stock-event.ts'
import { mostInPan } from '#lib/stock/capacity.ts'
import { type Withdrawal, withdraw } from '#lib/stock/short.ts'

export const wasteSchema = z.strictObject({
  type: z.literal('waste'),
  /** Out of which pan; else of a component, out of its pans in the order of the line. */
  pan: idField.optional(),
  component: idField.optional(),
  /** In the component's unit. */
  amount: amountField,
  reason: z.enum(WASTE_REASONS),
})

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
export const decideWaste = (
  state: ServiceState,
  { pan, component, amount, reason }: z.infer<typeof wasteSchema>,
): Decision =>
  whenOpen(state, (running) => {
    const place = pan === undefined ? null : findPan(running.station, pan)
    if (pan !== undefined && !place) return refuse(noPlace({ what: 'pan', id: pan }))
    const of = place?.component ?? component
    if (of === undefined || !findComponent(running.station, of))
      return refuse({ code: 'no-such-component', id: of ?? '' })
    const pans = place ? [place] : linePansOf(running.station, of)
    const there = pans.filter((one) => (running.pans[one.id]?.amount ?? 0) > 0)
    if (EATEN.includes(reason) && !there.every((one) => isUsable(running, 'pan', one.id)))
      return refuse(offSaleBecause(of, clockDoubtOf(running, of)))
    const most = pans.reduce((sum, one) => sum + mostInPan(running, one), 0)
    if (!Number.isSafeInteger(amount) || amount < 1 || amount > most)
      return refuse({ code: 'absurd-amount', pan: pans[0]?.id ?? of, most })
    const out = place
      ? outOfPan(running, place.id, of, amount)
      : withdraw(running, { [of]: amount })
    return happened({ type: 'wasteRecorded', component: of, amount, reason, ...out })
  })
