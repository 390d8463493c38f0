import { z } from 'zod'
import {
  civilDate,
  minuteOfDay,
  nextTimeOfDay,
  startOfNextDay,
  timeOnDayOf,
} from '#lib/measure/civil.ts'
import { expectedBy } from '#lib/rooms/day/facts/expected-by.ts'
import { followedDocument } from '#lib/rooms/day/facts/followed.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import { type Circumstances, happened, refuse } from '#lib/service/commands/decision.ts'
import { type CommandOf, defineCommand } from '#lib/service/commands/define.ts'
import { dayFields, idField } from '#lib/service/commands/fields.ts'
import type { ServiceKind, ServicePlan } from '#lib/service/events/plan-event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { withoutReaders } from '#lib/station/label.ts'
import { portionsOf } from '#lib/station/portion.ts'

/** The rushes of the civil day of the opening, as instants. */
const rushesOf = (
  rushes: readonly { readonly from: string; readonly to: string }[],
  now: number,
  timeZone: string,
): readonly RushWindow[] =>
  rushes.flatMap(({ from, to }) => {
    const window = {
      from: timeOnDayOf(now, from, timeZone),
      to: timeOnDayOf(now, to, timeZone),
    }
    return window.from < window.to ? [window] : []
  })

interface Opening {
  readonly newest: NonNullable<ReturnType<Circumstances['station']>>
  readonly kind: ServiceKind
  /** As the plan says it; null where there is none. */
  readonly plan: ServicePlan | null
}

/** What is opened: the newest document, or what is planned with what its food of before was made of. */
const openingOf = (
  state: ServiceState,
  command: { readonly station: string; readonly kind: 'demo' | 'real' },
  station: Circumstances['station'],
): Opening | Refusal => {
  const newest = station(command.station)
  if (!newest) return { code: 'unknown', what: 'station', id: command.station }
  const { plan = null } = state
  if (!isRunning(state) || !plan) return { newest, kind: command.kind, plan: null }
  if (command.station !== state.station.id || command.kind === 'demo')
    return { code: 'not-as-planned' }
  const followed = followedDocument(state, newest)
  if ('foodOf' in followed) return { code: 'food-of-before', component: followed.foodOf }
  const { station: document, ...rest } = followed
  return { newest: { document, ...rest }, kind: plan.kind, plan }
}

/**
 * From the newest document of a station that has no other open service. What is planned is opened with
 * all that was prepared in it.
 */
export const open = defineCommand({
  type: 'open',
  who: [],
  stages: ['none', 'planned'],
  schema: { station: idField, kind: z.enum(['demo', 'real']), ...dayFields },
  decide: (state, command, { now, service, station, otherIsOpen, knownBias }) => {
    if (otherIsOpen) return refuse({ code: 'service-already-open' })
    const opening = openingOf(state, command, station)
    if ('code' in opening) return refuse(opening)
    const { newest, kind, plan } = opening
    const { document, labels } = newest
    const { timeZone } = document
    const { closes, assemblers } = document.day
    const said = command.closesAt ?? null
    const closesAt = said === null ? null : nextTimeOfDay(now, said, timeZone)
    if (said !== null && closesAt === null) return refuse({ code: 'closes-before-now', time: said })
    const planned = plan && plan.closesAt > now ? plan.closesAt : null
    const usually = closes === null ? null : nextTimeOfDay(now, closes, timeZone)
    const unsaid = command.closesAt === undefined ? (planned ?? usually) : null
    const until = closesAt ?? unsaid
    const saidDoors = document.day.doors && timeOnDayOf(now, document.day.doors.open, timeZone)
    const doors = plan ? plan.opensAt : saidDoors
    const isAhead = doors !== undefined && doors > now && (until === null || doors < until)
    return happened({
      type: 'serviceOpened',
      service,
      kind,
      revision: newest.revision,
      station: withoutReaders(document),
      ...(labels ? { labels } : {}),
      portions: portionsOf(document),
      closesItselfAt: kind === 'demo' ? startOfNextDay(now, timeZone) : null,
      minuteOfDay: minuteOfDay(now, timeZone),
      // What is invented was read by nobody, on no day.
      ...(document.invented ? {} : { servedOn: civilDate(now, timeZone) }),
      rushes: rushesOf(document.day.rushes, now, timeZone),
      followsProbes: true,
      guestsExpected:
        command.guestsExpected === undefined && plan
          ? expectedBy(plan)
          : (command.guestsExpected ?? null),
      closesAt: until,
      ...(isAhead ? { doorsAt: doors } : {}),
      assemblers: command.assemblers ?? assemblers,
      knownBias: knownBias?.(command.station, kind) ?? {},
    })
  },
  sample: (_, station) => [{ station, kind: 'demo' as const }],
  rules: ['S1', 'S2', 'S3', 'S8', 'U16', 'PL4', 'PL5', 'PL8'],
  example: { station: 'alder-hall', kind: 'real' },
  tells: ' (`kind`: `real`, or `demo`, which closes itself the next day)',
})

export type OpenCommand = CommandOf<typeof open>
