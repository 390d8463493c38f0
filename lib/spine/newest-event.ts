import type { Recorded } from '#lib/service/events/event.ts'
import { newestOf } from '#lib/station/newest-document.ts'

/** An event with its document, where it has one, of the newest version. @throws where that is of none known */
export const newestEvent = <Event extends Recorded>(event: Event): Event =>
  'station' in event && typeof event.station === 'object'
    ? { ...event, station: newestOf(event.station) }
    : event
