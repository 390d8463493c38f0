/** What PROTOCOL.md says of who may do what, and when: role by command by stage. */
import { stagesFor } from '#lib/access/rights-by-stage.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { COMMAND_TYPES, type CommandType } from '#lib/spine/registry.ts'

export const NEVER = '–'

/** What a cell says: the stages in which it is decided, or never. */
export const rightsCell = (role: Role, command: CommandType): string =>
  stagesFor(role, command).join(', ') || NEVER

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`

export const rightsTable = (): string =>
  [
    row(['command', ...ROLES.map((role) => `\`${role}\``)]),
    row(['command', ...ROLES].map(() => '---')),
    ...COMMAND_TYPES.map((type) =>
      row([`\`${type}\``, ...ROLES.map((role) => rightsCell(role, type))]),
    ),
  ].join('\n')
