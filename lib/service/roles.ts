import { COMMAND_TYPES, type CommandType } from '#lib/service/command-type.ts'

export const ROLES = ['counter', 'assembly', 'hand-over', 'lead', 'in-charge', 'pick-up'] as const

export type Role = (typeof ROLES)[number]

/** What a student never does, and what counts only with the passphrase of the person in charge. */
export const ONLY_IN_CHARGE: readonly CommandType[] = [
  'signOn',
  'acceptCaution',
  'changeLabel',
  'resolveOffSale',
  'resolveShelf',
  'answerHandedOver',
]

/** What each role may do. The lead stands in for any of the crew. */
export const MAY: Readonly<Record<Role, readonly CommandType[]>> = {
  counter: ['send', 'change', 'cancel', 'wait', 'pay', 'tellNeed', 'soilPan', 'wantedGone'],
  assembly: [
    'start',
    'finish',
    'takeBack',
    'remake',
    'acknowledge',
    'soilPan',
    'notSameProduct',
    'waste',
    'readTemperature',
    'throwOut',
  ],
  'hand-over': [
    'handOver',
    'takeBack',
    'remake',
    'pay',
    'tellNeed',
    'acknowledge',
    'readShelf',
    'throwOut',
    'remakeMixedUp',
  ],
  lead: COMMAND_TYPES.filter((one) => !ONLY_IN_CHARGE.includes(one)),
  'in-charge': COMMAND_TYPES,
  'pick-up': [],
}

export const mayDo = (role: Role, command: CommandType): boolean => MAY[role].includes(command)
