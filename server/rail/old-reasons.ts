/** Logs of before have reasons of needs in their events: they go no further than the file. */
import type { Recorded } from '#lib/service/events/event.ts'

const isNeed = (value: object): boolean =>
  'code' in value && 'handling' in value && 'reason' in value && value.reason !== null

const stripped = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    const all = value.map(stripped)
    return all.some((one, index) => one !== value[index]) ? all : value
  }
  if (isNeed(value)) return { ...value, reason: null }
  const changed = Object.entries(value).flatMap(([key, one]): [string, unknown][] => {
    const to = stripped(one)
    return to === one ? [] : [[key, to]]
  })
  return changed.length === 0 ? value : { ...value, ...Object.fromEntries(changed) }
}

/** An event as it is folded and shown; the same object where it never had any. */
export const withoutReasons = (event: Recorded): Recorded =>
  // A station's document says nothing of guests, and is large.
  event.type === 'serviceOpened' ? event : (stripped(event) as Recorded)
