import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type Answer, PROTOCOL } from '#lib/protocol/wire.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'
import {
  COMMAND_TYPES,
  type Command,
  commandSchema,
  mayDo,
  ONLY_IN_CHARGE,
} from '#lib/spine/registry.ts'
import { IN_CHARGE } from '#tests/support/access-room.ts'
import { ONE_OF_EACH } from '#tests/support/one-of-each.ts'
import { connectScreen, createSocketRoom, type SocketRoom } from '#tests/support/socket-room.ts'
import { root } from '#tests/support/source-tree.ts'

const STAGES = ['none', 'planned', 'open', 'closed'] as const
type Stage = (typeof STAGES)[number]

const PASSPHRASE = IN_CHARGE.passphrase

/** The table as PROTOCOL.md shows it: by command and role, the stages of a cell. */
const written = (): ReadonlyMap<string, readonly string[]> => {
  const text = readFileSync(join(root, 'lib', 'protocol', 'PROTOCOL.md'), 'utf8')
  const [, part = ''] = text.split('<!-- rights: ')
  const rows = (part.split('<!-- end of rights')[0] ?? '')
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim().replaceAll('`', '')),
    )
  const [head = [], , ...body] = rows
  return new Map(
    body.flatMap(([command = '', ...cells]) =>
      cells.map((cell, index) => [
        `${command} ${head[index + 1] ?? ''}`,
        cell.split(', ').filter((one) => one !== '–'),
      ]),
    ),
  )
}

const NOT_NOW = ['service-not-open', 'service-already-open', 'service-closed']

/** Whether it came to be decided, or why not. */
const became = (answer: Answer): 'decided' | 'role' | 'stage' | string => {
  if (answer.answer === 'not taken') {
    const { code } = answer.because
    if (code === 'role-may-not') return 'role'
    return code === 'no-such-service' ? 'stage' : code
  }
  if (answer.answer === 'accepted') return 'decided'
  const { code } = answer.refusal
  if (code === 'not-in-charge') return 'role'
  return NOT_NOW.includes(code) ? 'stage' : 'decided'
}

/** One of each, those last that end what the others need, or begin something else. */
const LAST: readonly Command['type'][] = ['signOff', 'plan', 'dropPlan', 'open', 'close']
const commands: readonly Command[] = [
  ...COMMAND_TYPES.filter((type) => !LAST.includes(type)),
  ...LAST,
].map((type) => commandSchema.parse(ONE_OF_EACH[type]))

interface Room extends SocketRoom {
  readonly service: Record<Stage, string>
}

/** Services of one station: one of which nothing is known, one planned, one open, and one closed. */
const allStages = async (): Promise<Room> => {
  const room = await createSocketRoom({ mostMessagesASecond: 100_000 })
  await room.make()
  await room.services.submit('s-lunch', 'over', { type: 'close' }, 'lead')
  const service = { none: 's-none', planned: 's-dinner', open: 's-supper', closed: 's-lunch' }
  return { ...room, service }
}

const tried = async (
  role: Role,
  hasProof: boolean,
  station?: string,
): Promise<ReadonlyMap<string, string>> => {
  const { url, services, service, token } = await allStages()
  const auth = { protocol: PROTOCOL, role, token: token(role, station) }
  const screen = await connectScreen(url, role, { auth })
  const found = new Map<string, string>()
  const ask = async (stage: Stage, command: Command) => {
    const proof = hasProof ? { passphrase: PASSPHRASE } : {}
    const change = { service: service[stage], ...proof }
    const answer = await screen.give(`${stage}-${command.type}`, command, change)
    found.set(`${command.type} ${stage}`, became(answer))
  }
  const give = (at: string, id: string, type: Command['type'], from = id) =>
    services.submit(at, from, commandSchema.parse(ONE_OF_EACH[type]), 'lead')
  const isOf =
    (...types: readonly Command['type'][]) =>
    (command: Command) =>
      types.includes(command.type)
  for (const command of commands) await ask('closed', command)
  for (const command of commands.filter((one) => !isOf('plan', 'open')(one)))
    await ask('none', command)
  // Each of what begins a service has one of its own to begin.
  for (const command of commands.filter(isOf('plan'))) await ask('none', command)
  await give('s-none', 'drop', 'dropPlan')
  service.none = 's-new'
  for (const command of commands.filter(isOf('open'))) await ask('none', command)
  if (services.current('alder-hall')?.service === 's-new') await give('s-new', 'x', 'close')
  await give('s-dinner', 'p', 'plan')
  for (const command of commands.filter((one) => !isOf('plan', 'dropPlan', 'open', 'close')(one)))
    await ask('planned', command)
  for (const command of commands.filter(isOf('plan', 'close'))) await ask('planned', command)
  for (const command of commands.filter(isOf('dropPlan'))) await ask('planned', command)
  service.planned = 's-late'
  await give('s-late', 'p2', 'plan')
  for (const command of commands.filter(isOf('open'))) await ask('planned', command)
  if (services.current('alder-hall')?.service === 's-late') await give('s-late', 'x2', 'close')
  await give('s-supper', 'o', 'open')
  for (const command of commands) await ask('open', command)
  return found
}

describe('the table of rights, tried against a running server', () => {
  test.each(ROLES)('[V10] a %s may what it says, and nothing else', async (role) => {
    const table = written()
    expect(table.size).toBe(COMMAND_TYPES.length * ROLES.length)
    const found = await tried(role, role === 'in-charge')
    expect(found.size).toBe(COMMAND_TYPES.length * STAGES.length)
    for (const type of COMMAND_TYPES) {
      const stages = table.get(`${type} ${role}`) ?? []
      for (const stage of STAGES) {
        const should = stages.length === 0 ? 'role' : stages.includes(stage) ? 'decided' : 'stage'
        expect(`${type} ${stage}: ${found.get(`${type} ${stage}`)}`).toBe(
          `${type} ${stage}: ${should}`,
        )
      }
    }
  })

  test.each(ROLES)('[V10] a %s of another station may nothing of it', async (role) => {
    const found = await tried(role, role === 'in-charge', 'other-hall')
    expect(found.size).toBe(COMMAND_TYPES.length * STAGES.length)
    for (const type of COMMAND_TYPES)
      for (const stage of STAGES)
        expect(`${type}: ${found.get(`${type} ${stage}`)}`).toBe(
          `${type}: ${mayDo(role, type) ? 'stage' : 'role'}`,
        )
  })

  test('[V10] who is in charge but doesn’t prove it may what a lead may', async () => {
    const [claimed, lead] = [await tried('in-charge', false), await tried('lead', false)]
    expect([...claimed]).toEqual([...lead])
    for (const type of ONLY_IN_CHARGE) expect(claimed.get(`${type} open`)).toBe('role')
  })
})
