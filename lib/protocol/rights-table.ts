/** What PROTOCOL.md says of who may do what, and when: role by command by stage, and of whose station. */
import { type Asker, type RightsProblem, rightsProblem } from '#lib/access/rights.ts'
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

const asked = (role: Role, station: string): Asker => ({
  kind: 'proved',
  device: 'device',
  station,
  role,
})

const ASKERS: readonly (readonly [who: string, asker: Asker])[] = [
  ['a device of the station', asked('lead', 'own')],
  ['a device of another station', asked('lead', 'another')],
  ['who walks through the demo', { kind: 'demo', role: 'lead' }],
]

const CLOSE = { type: 'close' } as const
const RELABEL = { type: 'notSameProduct', ingredient: 'flour' } as const
const opening = (kind: 'real' | 'demo') => ({ type: 'open', station: 'own', kind }) as const

const ASKED: readonly (readonly [what: string, of: (asker: Asker) => RightsProblem | null])[] = [
  ['its real service', (asker) => rightsProblem(asker, CLOSE, of('real'), false)],
  ['its demo', (asker) => rightsProblem(asker, CLOSE, of('demo'), false)],
  ['with a passphrase', (asker) => rightsProblem(asker, CLOSE, of('demo'), true)],
  ['a service that isn’t there', (asker) => rightsProblem(asker, CLOSE, null, false)],
  ['opens a real one', (asker) => rightsProblem(asker, opening('real'), null, false)],
  ['changes a label of its demo', (asker) => rightsProblem(asker, RELABEL, of('demo'), false)],
  [
    'opens a demo after a real one',
    (asker) => rightsProblem(asker, opening('demo'), of('real'), false),
  ],
  ['opens a demo', (asker) => rightsProblem(asker, opening('demo'), of('demo'), false)],
]

const of = (kind: 'real' | 'demo') => ({ station: 'own', kind })

/** Whose services are whose, before the role is asked. */
export const askersTable = (): string =>
  [
    row(['', ...ASKED.map(([what]) => what)]),
    row(['', ...ASKED].map(() => '---')),
    ...ASKERS.map(([who, asker]) =>
      row([
        who,
        ...ASKED.map(([, problem]) => {
          const code = problem(asker)
          return code === null ? 'by role' : `\`${code}\``
        }),
      ]),
    ),
  ].join('\n')
