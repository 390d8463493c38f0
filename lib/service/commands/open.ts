import { z } from 'zod'
import { withoutReaders } from '#lib/menu/label.ts'
import { portionsOf } from '#lib/menu/portion.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
} from '#lib/service/commands/decision.ts'
import { dayFields, idField } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { minuteOfDay, nextTimeOfDay, startOfNextDay, timeOnDayOf } from '#lib/time/civil.ts'

export const openSchema = z.strictObject({
  type: z.literal('open'),
  station: idField,
  kind: z.enum(['demo', 'real']),
  ...dayFields,
})

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

export const decideOpen = (
  state: ServiceState,
  command: z.infer<typeof openSchema>,
  { now, service, station, otherIsOpen, knownBias }: Circumstances,
): Decision => {
  if (state.stage !== 'none')
    return refuse({ code: state.stage === 'open' ? 'service-already-open' : 'service-closed' })
  if (otherIsOpen) return refuse({ code: 'service-already-open' })
  const found = station(command.station)
  if (!found) return refuse({ code: 'no-such-station' })
  const { document } = found
  const { timeZone } = document
  const { closes, assemblers } = document.day
  const said = command.closesAt ?? null
  const closesAt = said === null ? null : nextTimeOfDay(now, said, timeZone)
  if (said !== null && closesAt === null) return refuse({ code: 'closes-before-now', time: said })
  const usually =
    command.closesAt !== undefined || closes === null ? null : nextTimeOfDay(now, closes, timeZone)
  return happened({
    type: 'serviceOpened',
    service,
    kind: command.kind,
    revision: found.revision,
    station: withoutReaders(document),
    portions: portionsOf(document),
    closesItselfAt: command.kind === 'demo' ? startOfNextDay(now, timeZone) : null,
    minuteOfDay: minuteOfDay(now, timeZone),
    rushes: rushesOf(document.day.rushes, now, timeZone),
    guestsExpected: command.guestsExpected ?? null,
    closesAt: closesAt ?? usually,
    assemblers: command.assemblers ?? assemblers,
    knownBias: knownBias?.(command.station, command.kind) ?? {},
  })
}
