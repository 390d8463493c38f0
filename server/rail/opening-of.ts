/** Of a service in the log: when it was opened, or that it is still only planned. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { EventLog } from '#server/event-log/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

export interface Opened {
  readonly service: string
  readonly station: string
  /** Epoch milliseconds. */
  readonly at: number
}

/** What is prepared for a service lies before its opening: so much is read at a time. */
const AT_A_TIME = 200

/** null where it was never opened and isn't planned any more. */
export const openingOf = async (
  log: Pick<EventLog<Recorded, StoredAnswer>, 'read'>,
  service: string,
): Promise<Opened | 'planned' | null> => {
  const [first] = await log.read(service, 0, 1)
  if (first?.type === 'serviceOpened') return { service, station: first.station.id, at: first.at }
  if (first?.type !== 'servicePlanned') return null
  for (let after = 0; ; ) {
    const some = await log.read(service, after, AT_A_TIME)
    const opened = some.find((one) => one.type === 'serviceOpened')
    if (opened) return { service, station: opened.station.id, at: opened.at }
    if (some.some(({ type }) => type === 'planDropped')) return null
    if (some.length < AT_A_TIME) return 'planned'
    after += some.length
  }
}
