import { z } from 'zod'
import { pastTickets } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { findTicket } from '#lib/service/tickets.ts'

/**
 * Whether a ticket is paid, at any time, once the service is closed too. `writtenOff`, by the adults
 * only: it stays unpaid, and nothing is to come any more.
 */
export const pay = defineCommand({
  type: 'pay',
  who: ['counter', 'hand-over'],
  stages: ['open', 'closed'],
  schema: {
    ticket: buildFields.ticket,
    paid: z.boolean(),
    writtenOff: z.literal(true).optional(),
  },
  decide: (state, { ticket: number, paid, writtenOff }, { by }) => {
    if (writtenOff && by !== 'lead' && by !== 'in-charge') return refuse({ code: 'not-lead' })
    const ticket = findTicket(state, number)
    if (!ticket) return refuse({ code: 'unknown', what: 'ticket', id: String(number) })
    const isOff = writtenOff === true && !paid
    if (ticket.paid === paid && (ticket.writtenOff === true) === isOff)
      return refuse({ code: 'already-so' })
    const off = isOff ? ({ writtenOff: true } as const) : {}
    return happened({ type: 'ticketPaid', ticket: number, paid, ...off })
  },
  sample: (state) =>
    [...Object.values(state.tickets), ...pastTickets(state)].map(({ number, paid }) => ({
      ticket: number,
      paid: !paid,
    })),
  rules: ['S12', 'S13'],
  example: { ticket: 12, paid: true },
  tells:
    '; with `"paid": false, "writtenOff": true`, by the adults only, nothing is to come of it any more; also once the service is closed',
})
