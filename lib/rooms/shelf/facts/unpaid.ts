/** What was given out and not paid: on one list until it is paid or written off. */
import type { Build, ServiceState, Ticket } from '#lib/service/state.ts'

/** Of a ticket as it stands: what it costs, and whether money is still to come. */
export const totalCentsOf = (ticket: Ticket): number =>
  ticket.builds
    .filter((one) => one.state !== 'cancelled')
    .reduce((sum, one) => sum + one.priceCents, 0)

/** Nothing is to come of it any more: it is paid, or the lead wrote it off. */
export const isSettled = (ticket: Ticket): boolean => ticket.paid || ticket.writtenOff === true

/** Something of it is with its guest. */
export const isPartlyOut = (ticket: Ticket): boolean =>
  ticket.builds.some(({ state }) => state === 'handed-over')

/**
 * When it was first handed over, epoch milliseconds; null where its guest had nothing of it, or owes
 * nothing, since it was cancelled. Made again, it stays what they had before.
 */
export const outSince = ({ state, since, had = [] }: Build): number | null => {
  if (state === 'cancelled') return null
  return had[0]?.since ?? (state === 'handed-over' ? since : null)
}

const owes = (ticket: Ticket): boolean =>
  !isSettled(ticket) && ticket.builds.some((build) => outSince(build) !== null)

/** Of chunks of tickets, which never change: each is looked through once. */
const owingIn = new WeakMap<Readonly<Record<string, Ticket>>, readonly Ticket[]>()

const owingOf = (chunk: Readonly<Record<string, Ticket>>): readonly Ticket[] => {
  const known = owingIn.get(chunk)
  if (known) return known
  const owing = Object.values(chunk).filter(owes)
  owingIn.set(chunk, owing)
  return owing
}

/** Tickets of which something was handed over and nothing was paid, by number. */
export const unpaidTickets = ({ tickets, past }: ServiceState): readonly Ticket[] =>
  [tickets, ...Object.values(past)].flatMap(owingOf).sort((one, other) => one.number - other.number)
