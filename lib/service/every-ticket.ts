/** All tickets of a service, the past ones too: for what is found out once food was handed over. */
import type { ServiceState, Ticket } from '#lib/service/state.ts'
import type { QueuedBuild } from '#lib/service/tickets.ts'

/** Every ticket of the service, by number. */
export const everyTicket = ({ tickets, past }: ServiceState): readonly Ticket[] =>
  [tickets, ...Object.values(past)]
    .flatMap((some) => Object.values(some))
    .sort((one, other) => one.number - other.number)

/** Every build of the service that was handed over, also before it was made again; by number, then letter. */
export const handedOverBuilds = (state: ServiceState): readonly QueuedBuild[] =>
  everyTicket(state).flatMap((ticket) =>
    ticket.builds.flatMap((build) => [
      ...(build.had ?? []).map((had) => ({ ticket, build: { ...build, ...had } })),
      ...(build.state === 'handed-over' ? [{ ticket, build }] : []),
    ]),
  )
