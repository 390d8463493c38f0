import { z } from 'zod'
import {
  civilDate,
  minuteOfDay,
  nextTimeOfDay,
  startOfNextDay,
  timeOnDayOf,
} from '#lib/measure/civil.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { type CommandOf, defineCommand } from '#lib/service/commands/define.ts'
import { dayFields, idField } from '#lib/service/commands/fields.ts'
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

/** From the newest document of a station that has no other open service. */
export const open = defineCommand({
  type: 'open',
  who: [],
  stages: ['planned'],
  schema: { station: idField, kind: z.enum(['demo', 'real']), ...dayFields },
  decide: (_, command, { now, service, station, otherIsOpen, knownBias }) => {
    if (otherIsOpen) return refuse({ code: 'service-already-open' })
    const found = station(command.station)
    if (!found) return refuse({ code: 'unknown', what: 'station', id: command.station })
    const { document, labels } = found
    const { timeZone } = document
    const { closes, assemblers } = document.day
    const said = command.closesAt ?? null
    const closesAt = said === null ? null : nextTimeOfDay(now, said, timeZone)
    if (said !== null && closesAt === null) return refuse({ code: 'closes-before-now', time: said })
    const usually =
      command.closesAt !== undefined || closes === null
        ? null
        : nextTimeOfDay(now, closes, timeZone)
    const until = closesAt ?? usually
    const doors = document.day.doors && timeOnDayOf(now, document.day.doors.open, timeZone)
    const isAhead = doors !== undefined && doors > now && (until === null || doors < until)
    return happened({
      type: 'serviceOpened',
      service,
      kind: command.kind,
      revision: found.revision,
      station: withoutReaders(document),
      ...(labels ? { labels } : {}),
      portions: portionsOf(document),
      closesItselfAt: command.kind === 'demo' ? startOfNextDay(now, timeZone) : null,
      minuteOfDay: minuteOfDay(now, timeZone),
      // What is invented was read by nobody, on no day.
      ...(document.invented ? {} : { servedOn: civilDate(now, timeZone) }),
      rushes: rushesOf(document.day.rushes, now, timeZone),
      followsProbes: true,
      guestsExpected: command.guestsExpected ?? null,
      closesAt: until,
      ...(isAhead ? { doorsAt: doors } : {}),
      assemblers: command.assemblers ?? assemblers,
      knownBias: knownBias?.(command.station, command.kind) ?? {},
    })
  },
  sample: (_, station) => [{ station, kind: 'demo' as const }],
  rules: ['S1', 'S2', 'S3', 'S8', 'U16'],
  example: { station: 'alder-hall', kind: 'real' },
  tells: ' (`kind`: `real`, or `demo`, which closes itself the next day)',
})

export type OpenCommand = CommandOf<typeof open>
