import type { Consequence } from '#lib/service/consequence.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import type { Command } from '#lib/spine/registry.ts'
import { take } from '#lib/spine/take.ts'
import { orderNumber } from '#tests/prove/orders.ts'
import { LOADS, railStation } from '#tests/support/orders.ts'

/** A service as far as it has come: its state and where its log stands. */
export interface Moment {
  readonly state: ServiceState
  readonly position: number
}

const START = Date.UTC(2026, 2, 2, 17)

/** A command on a moment, what it recorded, and what follows by these rules. @throws where it is refused */
export const giving = (
  { state, position }: Moment,
  command: Command,
  follows: readonly Consequence[],
): { readonly moment: Moment; readonly recorded: readonly Recorded[] } => {
  const taken = take(
    state,
    { id: `command-${position + 1}`, command, position },
    {
      now: Math.max(START, state.at) + 1,
      by: 'lead',
      service: 's-long',
      station: () => ({ revision: 1, document: railStation }),
      newestLabels: {},
      otherIsOpen: false,
      follows,
    },
  )
  if (taken.refusal !== null)
    throw new Error(`${command.type} refused: ${JSON.stringify(taken.refusal)}`)
  const { recorded } = taken
  return { moment: { state: taken.state, position: position + recorded.length }, recorded }
}

/** Takes a command on a moment, with all that follows from it. @throws where it is refused */
export const give = (at: Moment, command: Command): Moment =>
  giving(at, command, CONSEQUENCES).moment

/** Tickets that are open at any time: sent, not yet handed over. */
const OPEN_TICKETS = 6
/** After so many orders every pan is changed. */
const PANS_LAST = 10

const changePans = LOADS.map(
  (load): Command => (load.type === 'load' ? { ...load, type: 'changePan' } : load),
)

/** The commands with which a steady service takes its nth order: what a crew really gives. */
export const roundOf = (order: number): readonly Command[] => {
  const ready = order - OPEN_TICKETS
  const making = order - OPEN_TICKETS / 2
  const at = (ticket: number) => ({ ticket, letter: 'A' })
  return [
    ...(order % PANS_LAST === 0 ? changePans : []),
    orderNumber(order),
    ...(order % 10 === 5 ? [{ type: 'pay', ticket: order, paid: order % 3 !== 0 } as const] : []),
    ...(making > 0 ? [{ type: 'start', ...at(making) } as const] : []),
    ...(ready > 0
      ? [{ type: 'finish', ...at(ready) } as const, { type: 'handOver', ...at(ready) } as const]
      : []),
  ]
}

/** Takes orders one after the other until the log holds so many events. */
export const serveUntil = (
  events: number,
): { readonly moment: Moment; readonly orders: number } => {
  let moment: Moment = { state: NOT_OPENED, position: 0 }
  const open: Command = { type: 'open', station: railStation.id, kind: 'real' }
  for (const command of [open, ...LOADS]) moment = give(moment, command)
  let orders = 0
  while (moment.position < events) {
    orders += 1
    for (const command of roundOf(orders)) moment = give(moment, command)
  }
  return { moment, orders }
}
