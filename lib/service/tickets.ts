import type { Build, ServiceState, Ticket } from '#lib/service/state.ts'

/** Letters of a ticket's builds, in order: so many go on one ticket. */
export const LETTERS = 'ABCDEFGH'

const CHUNK = 64

const chunkOf = (ticket: number): string => String(Math.floor(ticket / CHUNK))

/**
 * A ticket's place in its chunk. Counted from the chunk's start: engines keep keys that are small
 * whole numbers in an array, and copy a record of large ones three hundred times slower.
 */
const placeOf = (ticket: number): string => String(ticket % CHUNK)

/** The key of an open ticket: no whole number, for the same reason. */
const keyOf = (ticket: number): string => `t${ticket}`

const isOver = (build: Build): boolean =>
  build.state === 'handed-over' || build.state === 'cancelled'

/** An open ticket, or a past one of this service. */
export const findTicket = (state: ServiceState, ticket: number): Ticket | undefined =>
  state.tickets[keyOf(ticket)] ?? state.past[chunkOf(ticket)]?.[placeOf(ticket)]

export const findBuild = (state: ServiceState, ticket: number, letter: string): Build | undefined =>
  findTicket(state, ticket)?.builds.find((build) => build.letter === letter)

/** Puts a ticket among the open ones or, when all its builds are over, among the past ones. */
export const putTicket = (
  state: ServiceState,
  ticket: Ticket,
): Pick<ServiceState, 'tickets' | 'past'> => {
  const chunk = chunkOf(ticket.number)
  const chunkBefore = state.past[chunk]
  const place = placeOf(ticket.number)
  const key = keyOf(ticket.number)
  if (ticket.builds.every(isOver)) {
    const { [key]: _, ...tickets } = state.tickets
    return {
      tickets,
      past: { ...state.past, [chunk]: { ...chunkBefore, [place]: ticket } },
    }
  }
  const tickets = { ...state.tickets, [key]: ticket }
  if (chunkBefore?.[place] === undefined) return { tickets, past: state.past }
  const { [place]: _, ...rest } = chunkBefore
  return { tickets, past: { ...state.past, [chunk]: rest } }
}

export interface QueuedBuild {
  readonly ticket: Ticket
  readonly build: Build
}

/** Of tickets, which never change: worked out once. */
const openIn = new WeakMap<ServiceState['tickets'], readonly QueuedBuild[]>()

/** Open builds in the order in which they are made: by number, then by letter. */
export const openBuilds = ({ tickets }: ServiceState): readonly QueuedBuild[] => {
  const known = openIn.get(tickets)
  if (known) return known
  const open = Object.values(tickets)
    .sort((one, other) => one.number - other.number)
    .flatMap((ticket) =>
      ticket.builds.filter((build) => !isOver(build)).map((build) => ({ ticket, build })),
    )
  openIn.set(tickets, open)
  return open
}

/** Puts a build in the place of the one of its letter, without a change of its state. */
export const withBuildAs = <State extends ServiceState>(
  state: State,
  number: number,
  build: Build,
): State => {
  const ticket = findTicket(state, number)
  if (!ticket) throw new Error(`no ticket ${number}`)
  const builds = ticket.builds.map((one) => (one.letter === build.letter ? build : one))
  return { ...state, ...putTicket(state, { ...ticket, builds }) }
}

/** What a name like "21A" says; a number and a letter that no build has where it says nothing. */
export const namedBuild = (name: string): { readonly ticket: number; readonly letter: string } => {
  const [, number = '', letter = ''] = /^(\d+)([A-Z]{1,2})$/.exec(name) ?? []
  return { ticket: Number(number), letter }
}

/** "21A" */
export const buildName = (ticket: number, letter: string): string => `${ticket}${letter}`

/**
 * A build's name as it is said, shown and written: "21-A", since a handwritten 2B is read as 28. A word
 * joiner follows the dash, so that no line ends between number and letter.
 */
export const sayBuild = (name: string): string => name.replace(/^(\d+)([A-Z]{1,2})$/, '$1-\u2060$2')
