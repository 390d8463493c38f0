import type { Recorded } from '#lib/service/events/event.ts'
import { isNewest } from '#lib/station/any-station-document.ts'
import { upgraded } from '#lib/station/shapes/older-documents.ts'

/** An event with its document, where it has one of a known version, brought up to the newest. */
export const newestEvent = <Event extends Recorded>(event: Event): Event => {
  if (!('station' in event) || isNewest(event.station)) return event
  const station = upgraded(event.station)
  return isNewest(station) ? { ...event, station } : event
}
