import type { Build, ServiceState, Ticket } from '#lib/service/state.ts'

const CHUNK = 64

const chunkOf = (ticket: number): string => String(Math.floor(ticket / CHUNK))

const isOver = (build: Build): boolean =>
  build.state === 'handed-over' || build.state === 'cancelled'

/** An open ticket, or a past one of this service. */
export const findTicket = (state: ServiceState, ticket: number): Ticket | undefined =>
  state.tickets[ticket] ?? state.past[chunkOf(ticket)]?.[ticket]

export const findBuild = (state: ServiceState, ticket: number, letter: string): Build | undefined =>
  findTicket(state, ticket)?.builds.find((build) => build.letter === letter)

/** Puts a ticket among the open ones or, when all its builds are over, among the past ones. */
export const putTicket = (
  state: ServiceState,
  ticket: Ticket,
): Pick<ServiceState, 'tickets' | 'past'> => {
  const chunk = chunkOf(ticket.number)
  const chunkBefore = state.past[chunk]
  if (ticket.builds.every(isOver)) {
    const { [ticket.number]: _, ...tickets } = state.tickets
    return {
      tickets,
      past: { ...state.past, [chunk]: { ...chunkBefore, [ticket.number]: ticket } },
    }
  }
  const tickets = { ...state.tickets, [ticket.number]: ticket }
  if (chunkBefore?.[ticket.number] === undefined) return { tickets, past: state.past }
  const { [ticket.number]: _, ...rest } = chunkBefore
  return { tickets, past: { ...state.past, [chunk]: rest } }
}

export interface QueuedBuild {
  readonly ticket: Ticket
  readonly build: Build
}

/** Open builds in the order in which they are made: by number, then by letter. */
export const openBuilds = (state: ServiceState): readonly QueuedBuild[] =>
  Object.values(state.tickets)
    .sort((one, other) => one.number - other.number)
    .flatMap((ticket) =>
      ticket.builds.filter((build) => !isOver(build)).map((build) => ({ ticket, build })),
    )

/** "21A" */
export const buildName = (ticket: number, letter: string): string => `${ticket}${letter}`
