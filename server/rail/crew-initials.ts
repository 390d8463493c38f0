/** Who is there on a planned day, by initials: as its plan was told last, out of the second file. */
import { z } from 'zod'
import type { Recorded } from '#lib/service/events/event.ts'
import type { EventLog } from '#server/event-log/port.ts'
import type { Guests } from '#server/guests/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

const told = z.array(z.string())

/** By the id of each entry of its crew; empty where it has no plan, or what was told is gone. */
export const crewInitials = async (
  {
    events,
    guests,
  }: {
    readonly events: Pick<EventLog<Recorded, StoredAnswer>, 'read'>
    readonly guests: Pick<Guests, 'of'>
  },
  service: string,
): Promise<Readonly<Record<string, string>>> => {
  const plan = (await events.read(service, 0)).findLast(
    ({ type }) => type === 'servicePlanned' || type === 'planChanged',
  )
  const body = plan?.command ? (await guests.of(service, 'initials'))[plan.command] : undefined
  if (body === undefined) return {}
  const initials = told.parse(JSON.parse(body))
  return Object.fromEntries(initials.map((one, index) => [`c${index + 1}`, one]))
}
