/** What lies apart of one guest: found by the commands that an order's events name. */
import type { ReasonsTold } from '#lib/access/kept-http.ts'
import type { Recorded } from '#lib/service/events/event.ts'

/** Commands that brought something of a ticket. */
export const commandsOf = (events: readonly Recorded[], ticket: number): readonly string[] => [
  ...new Set(
    events.flatMap((event) =>
      'ticket' in event && event.ticket === ticket && event.command !== null ? [event.command] : [],
    ),
  ),
]

type Told = ReasonsTold['reasons'][number]

const parsed = (body: string): readonly (Pick<Told, 'letter' | 'reason'> & { code: string })[] =>
  JSON.parse(body)

/** Reasons of needs by ticket, build and need, the newest of each; of one ticket where it is said. */
export const reasonsIn = (
  events: readonly Recorded[],
  kept: Readonly<Record<string, string>>,
  ticket?: number,
): readonly Told[] => {
  const told = new Map<string, Told>()
  for (const event of events) {
    if (!('ticket' in event) || event.command === null) continue
    if (ticket !== undefined && event.ticket !== ticket) continue
    const body = Object.hasOwn(kept, event.command) ? kept[event.command] : undefined
    for (const { letter, code, reason } of body === undefined ? [] : parsed(body))
      told.set(`${event.ticket} ${letter} ${code}`, {
        ticket: event.ticket,
        letter,
        need: code,
        reason,
      })
  }
  return [...told.values()].sort(
    (one, other) => one.ticket - other.ticket || one.letter.localeCompare(other.letter),
  )
}
