import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { Role } from '#lib/service/roles.ts'
import { isUnderWay, NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { decide } from '#lib/spine/decide.ts'
import { COMMANDS, type Command, type CommandType, mayDo } from '#lib/spine/registry.ts'

/**
 * One valid example of each command that a role could give now, without ids of its own. After the
 * close it is another service that could be opened.
 */
export const samplesFor = (
  state: ServiceState,
  role: Role,
  station: string,
): Partial<Record<CommandType, Command>> => {
  const circumstances: Circumstances = {
    now: state.at,
    by: role,
    service: state.service,
    otherIsOpen: state.stage === 'open',
    station: () => null,
    newestLabels: state.labelVersions ?? {},
  }
  const isPossible = (command: Command): boolean =>
    // Only the server has the document that a service is opened from.
    command.type === 'open' || 'events' in decide(state, command, circumstances)
  const now = isUnderWay(state) ? state : NOT_OPENED
  const found = COMMANDS.flatMap(({ type, samples }): [CommandType, Command][] => {
    const sample = mayDo(role, type) ? samples(now, station).find(isPossible) : undefined
    return sample ? [[type, sample]] : []
  })
  return Object.fromEntries(found)
}
