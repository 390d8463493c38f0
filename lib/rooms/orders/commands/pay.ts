import { z } from 'zod'
import { pastTickets } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { findTicket } from '#lib/service/tickets.ts'

export const pay = defineCommand({
  type: 'pay',
  who: ['counter', 'hand-over'],
  stages: ['open'],
  schema: { ticket: buildFields.ticket, paid: z.boolean() },
  decide: (state, { ticket: number, paid }) => {
    const ticket = findTicket(state, number)
    if (!ticket) return refuse({ code: 'unknown', what: 'ticket', id: String(number) })
    if (ticket.paid === paid) return refuse({ code: 'already-so' })
    return happened({ type: 'ticketPaid', ticket: number, paid })
  },
  sample: (state) =>
    [...Object.values(state.tickets), ...pastTickets(state)].map(({ number, paid }) => ({
      ticket: number,
      paid: !paid,
    })),
  rules: ['S12', 'S13'],
  example: { ticket: 12, paid: true },
})
