import { z } from 'zod'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { findTicket } from '#lib/service/tickets.ts'

export const paySchema = z.strictObject({
  type: z.literal('pay'),
  ticket: buildFields.ticket,
  paid: z.boolean(),
})

export const decidePay = (state: ServiceState, command: z.infer<typeof paySchema>): Decision =>
  whenOpen(state, (running) => {
    const ticket = findTicket(running, command.ticket)
    if (!ticket) return refuse({ code: 'no-such-ticket', ticket: command.ticket })
    if (ticket.paid === command.paid) return refuse({ code: 'already-so' })
    return happened({ type: 'ticketPaid', ticket: command.ticket, paid: command.paid })
  })
