/**
 * What a role is sent of what happened: field by field as it is classed, and nothing that isn't. What
 * a role folds of the events it is sent is the state that it would be sent.
 */

import { AWAY, toldOf } from '#lib/access/seen/classed.ts'
import { CREW, type CrewRole, SENT, SIGHTS, type Sight, sightOf } from '#lib/access/seen/classes.ts'
import { EVENTS, STAMP } from '#lib/access/seen/event-fields.ts'
import { FORECAST } from '#lib/access/seen/forecast-fields.ts'
import { STATE } from '#lib/access/seen/state-fields.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'

type ByKey = Readonly<Record<string, unknown>>

/** Undefined where nothing of it is sent. */
type Show = (value: unknown) => unknown

const isByKey = (value: unknown): value is ByKey =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const plain: Show = (value) => (typeof value === 'object' && value !== null ? undefined : value)

const showList =
  (show: Show): Show =>
  (value) => {
    if (value === null) return null
    if (!Array.isArray(value)) return undefined
    const shown: unknown[] = []
    for (const one of value) {
      const seen = show(one)
      if (seen !== undefined) shown.push(seen)
    }
    return shown
  }

const showEach =
  (show: Show): Show =>
  (value) => {
    if (value === null) return null
    if (!isByKey(value)) return undefined
    const shown: Record<string, unknown> = {}
    for (const key of Object.keys(value)) {
      const seen = show(value[key])
      if (seen !== undefined && key !== '__proto__') shown[key] = seen
    }
    return shown
  }

const showFields = (fields: readonly (readonly [key: string, show: Show])[]): Show => {
  return (value) => {
    if (value === null) return null
    if (!isByKey(value)) return undefined
    const shown: Record<string, unknown> = {}
    for (const [key, show] of fields) {
      const own = value[key]
      if (own === undefined) continue
      // Most fields are plain and sent: they need no call.
      if (show === plain) {
        if (typeof own !== 'object' || own === null) shown[key] = own
        continue
      }
      const seen = show(own)
      if (seen !== undefined) shown[key] = seen
    }
    return shown
  }
}

const showKept = (show: Show): Show => {
  const known = new WeakMap<object, unknown>()
  return (value) => {
    if (typeof value !== 'object' || value === null) return show(value)
    const before = known.get(value)
    if (before !== undefined) return before
    const seen = show(value)
    known.set(value, seen)
    return seen
  }
}

/** What is shown to a role of a value by how it is classed. @throws for what isn't classed */
const showAs = (classed: unknown, role: CrewRole): Show => {
  const told = toldOf(classed)
  switch (told.is) {
    case 'plain': {
      if (SENT[role][told.fieldClass]) return plain
      const { instead } = told
      return instead === AWAY ? () => undefined : () => instead
    }
    case 'list':
      return showList(showAs(told.of, role))
    case 'each':
      return showEach(showAs(told.of, role))
    case 'kept':
      return showKept(showAs(told.of, role))
    case 'fields':
      return showFields(told.fields.map(([key, inner]) => [key, showAs(inner, role)]))
  }
}

interface Seen {
  readonly events: ReadonlyMap<string, Show>
  readonly state: Show
  readonly forecast: Show
}

const seenBy = (role: CrewRole): Seen => ({
  events: new Map(
    Object.entries(EVENTS).map(([type, fields]) => [
      type,
      showKept(showAs({ type: 'always', ...fields, ...STAMP }, role)),
    ]),
  ),
  state: showKept(showAs(STATE, role)),
  forecast: showKept(showAs(FORECAST, role)),
})

const SEEN: ReadonlyMap<Sight, Seen> = new Map(
  [...SIGHTS].map(([sight, role]) => [sight, seenBy(role)]),
)

/** What a role's sight is called is put together of its classes: once, and not at each event. */
const BY_ROLE: ReadonlyMap<CrewRole, Seen | undefined> = new Map(
  CREW.map((role) => [role, SEEN.get(sightOf(role))]),
)

const seen = (role: CrewRole): Seen => {
  const found = BY_ROLE.get(role)
  if (!found) throw new Error(`nothing is sent to ${role}`)
  return found
}

/**
 * What a role is sent of an event. The same object for the same event and for roles that are sent the
 * same. @throws for an event of no known type
 */
export const project = (role: CrewRole, event: Recorded): Recorded => {
  const show = seen(role).events.get(event.type)
  if (!show) throw new Error(`an event of no known type: ${event.type}`)
  return show(event) as Recorded
}

/** What a role is sent of a state: what its events so far fold to. */
export const projectState = (role: CrewRole, state: ServiceState): ServiceState =>
  seen(role).state(state) as ServiceState

/** What a role is sent of a forecast. */
export const projectForecast = (role: CrewRole, forecast: StationForecast): StationForecast =>
  seen(role).forecast(forecast) as StationForecast
