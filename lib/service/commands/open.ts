import { z } from 'zod'
import { portionsOf } from '#lib/menu/portion.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { startOfNextDay } from '#lib/time/civil.ts'

export const openSchema = z.strictObject({
  type: z.literal('open'),
  station: idField,
  kind: z.enum(['demo', 'real']),
})

export const decideOpen = (
  state: ServiceState,
  command: z.infer<typeof openSchema>,
  { now, service, station, otherIsOpen }: Circumstances,
): Decision => {
  if (state.stage !== 'none')
    return refuse({ code: state.stage === 'open' ? 'service-already-open' : 'service-closed' })
  if (otherIsOpen) return refuse({ code: 'service-already-open' })
  const found = station(command.station)
  if (!found) return refuse({ code: 'no-such-station' })
  return happened({
    type: 'serviceOpened',
    service,
    kind: command.kind,
    revision: found.revision,
    station: found.document,
    portions: portionsOf(found.document),
    closesItselfAt: command.kind === 'demo' ? startOfNextDay(now, found.document.timeZone) : null,
  })
}
