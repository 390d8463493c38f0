/** Initials of the larder go as those of a service do: so many days after they were told. */
import { type BelievedTime, isToGo } from '#lib/access/believed-time.ts'
import { isLarderStream } from '#lib/larder/stream.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { EventLog } from '#server/event-log/port.ts'
import type { Guests } from '#server/guests/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

interface Ports {
  readonly log: Pick<EventLog<Recorded, StoredAnswer>, 'read'>
  readonly guests: Pick<Guests, 'of' | 'forget' | 'services' | 'sweep'>
}

const larders = async ({ guests }: Ports): Promise<readonly string[]> =>
  (await guests.services()).filter(isLarderStream)

/** Those of commands that were never stored. Only while nothing is under way. */
export const sweepLarderOrphans = async (ports: Ports): Promise<void> => {
  for (const stream of await larders(ports)) {
    const entries = await ports.log.read(stream, 0)
    await ports.guests.sweep(stream, new Set(entries.flatMap(({ command }) => command ?? [])))
  }
}

/** @param days after which they go */
export const forgetLarderInitials = async (
  ports: Ports,
  time: BelievedTime,
  days: number,
): Promise<void> => {
  for (const stream of await larders(ports)) {
    const held = await ports.guests.of(stream, 'initials')
    const old = (await ports.log.read(stream, 0)).flatMap(({ command, at }) =>
      command !== null &&
      Object.hasOwn(held, command) &&
      isToGo({ closedAt: at, seenAt: null }, time, days)
        ? [command]
        : [],
    )
    if (old.length > 0) await ports.guests.forget(stream, ['initials'], [...new Set(old)])
  }
}
