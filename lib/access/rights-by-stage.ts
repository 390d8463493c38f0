/** Which commands of which role are decided at which stage of a service: what isn't named isn't. */
import type { Stage } from '#lib/service/commands/define.ts'
import type { Role } from '#lib/service/roles.ts'
import { COMMANDS, type CommandType, mayDo } from '#lib/spine/registry.ts'

/**
 * Stages of a service in which a role's command is decided, rather than refused for whoever gave it
 * or when. Of the person in charge with their passphrase; without it they have the lead's rights.
 */
export const stagesFor = (role: Role, command: CommandType): readonly Stage[] =>
  mayDo(role, command) ? (COMMANDS.find(({ type }) => type === command)?.stages ?? []) : []
