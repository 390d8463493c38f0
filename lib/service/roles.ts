import { COMMAND_TYPES, type CommandType } from '#lib/service/command-type.ts'

export const ROLES = ['counter', 'assembly', 'hand-over', 'lead', 'in-charge', 'pick-up'] as const

export type Role = (typeof ROLES)[number]

/** What each role may do. The lead stands in for any of the crew. */
export const MAY: Readonly<Record<Role, readonly CommandType[]>> = {
  counter: ['send', 'change', 'cancel', 'pay'],
  assembly: ['start', 'finish', 'takeBack', 'remake', 'acknowledge'],
  'hand-over': ['handOver', 'takeBack', 'remake', 'pay'],
  lead: COMMAND_TYPES,
  'in-charge': COMMAND_TYPES,
  'pick-up': [],
}

export const mayDo = (role: Role, command: CommandType): boolean => MAY[role].includes(command)
