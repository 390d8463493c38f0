import { hasNeeds } from '#lib/rooms/care/facts/held.ts'
import type { Ticket } from '#lib/service/state.ts'

/**
 * The command under which a ticket's name is kept; null where no name may be shown. A name and a
 * need are never shown together: one need on a ticket hides its name everywhere.
 */
export const shownNameKey = (ticket: Ticket): string | null =>
  ticket.named && !hasNeeds(ticket) ? ticket.sentBy : null
