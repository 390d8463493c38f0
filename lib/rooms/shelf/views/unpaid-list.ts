import { outSince, totalCentsOf, unpaidTickets } from '#lib/rooms/shelf/facts/unpaid.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

export interface Unpaid {
  readonly ticket: number
  /** All of its builds that weren't cancelled: they are paid as one sum. */
  readonly names: readonly string[]
  readonly cents: number
  /** When the first of it was handed over, epoch milliseconds. */
  readonly since: number
}

export interface UnpaidList {
  /** The one that went out first comes first. */
  readonly tickets: readonly Unpaid[]
  readonly cents: number
}

/** What was given out and isn't paid; the state of a closed service has it too. */
export const unpaidList = (state: ServiceState): UnpaidList => {
  const tickets = unpaidTickets(state)
    .map((ticket) => ({
      ticket: ticket.number,
      names: ticket.builds
        .filter((one) => one.state !== 'cancelled')
        .map((one) => buildName(ticket.number, one.letter)),
      cents: totalCentsOf(ticket),
      since: Math.min(...ticket.builds.flatMap((one) => outSince(one) ?? [])),
    }))
    .sort((one, other) => one.since - other.since)
  return { tickets, cents: tickets.reduce((sum, one) => sum + one.cents, 0) }
}
