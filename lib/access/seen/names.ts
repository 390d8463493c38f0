/** Names of guests, which lie beside the log with whatever else is kept apart from it. */
import { type CrewRole, isSent } from '#lib/access/seen/classes.ts'
import type { ServiceState, Ticket } from '#lib/service/state.ts'

type ByCommand = Readonly<Record<string, string>>

const namedBy = ({ named, sentBy }: Ticket): readonly string[] =>
  named && sentBy !== null ? [sentBy] : []

/**
 * Of what is kept by command, the names of this service's guests, where a role is sent names: nobody's
 * initials, and nothing of a command that sent no ticket.
 */
export const namesFor = (role: CrewRole, state: ServiceState, apart: ByCommand): ByCommand => {
  if (!isSent(role, 'name')) return {}
  const tickets = [state.tickets, ...Object.values(state.past)].flatMap((one) => Object.values(one))
  return Object.fromEntries(
    tickets.flatMap(namedBy).flatMap((command) => {
      const name = Object.hasOwn(apart, command) ? apart[command] : undefined
      return name === undefined ? [] : [[command, name] as const]
    }),
  )
}
