import { describe, expect, it } from 'vitest'
import { serviceFor } from '#lib/protocol/service-id.ts'
import { MOST_COMMAND_BYTES, PROTOCOL } from '#lib/protocol/wire.ts'
import { takeCommand } from '#lib/protocol/wire-schema.ts'
import { COMMAND_TYPES, type CommandType } from '#lib/service/command-type.ts'
import { mayDo, ROLES, type Role } from '#lib/service/roles.ts'
import { at, choose, type Given, parsed, send } from '#tests/support/service.ts'

const message = (command: unknown, over: Record<string, unknown> = {}): unknown => ({
  protocol: PROTOCOL,
  id: 'c-1',
  service: 's-lunch',
  command,
  ...over,
})

const codeFor = (sent: unknown, role: Role = 'lead'): string | null => {
  const taken = takeCommand(sent, role)
  return taken.taken ? null : taken.because.code
}

const of: Readonly<Record<CommandType, Given>> = {
  open: { type: 'open', station: 'alder-hall', kind: 'demo' },
  load: { type: 'load', pan: 'pan-rice', amount: 1 },
  changePan: { type: 'changePan', pan: 'pan-rice', amount: 1 },
  correct: { type: 'correct', pan: 'pan-rice', amount: 1 },
  send: send(choose('harbor-tuna')),
  change: { type: 'change', ...at('1A'), to: choose('harbor-tuna') },
  cancel: { type: 'cancel', ...at('1A') },
  acknowledge: { type: 'acknowledge', ...at('1A'), foodInIt: true },
  start: { type: 'start', ...at('1A') },
  finish: { type: 'finish', ...at('1A') },
  takeBack: { type: 'takeBack', ...at('1A'), made: true },
  remake: { type: 'remake', ...at('1A') },
  handOver: { type: 'handOver', ...at('1A') },
  pay: { type: 'pay', ticket: 1, paid: true },
  stopSelling: { type: 'stopSelling', what: 'item', id: 'harbor-tuna' },
  resumeSelling: { type: 'resumeSelling', what: 'item', id: 'harbor-tuna' },
  confirmClock: { type: 'confirmClock' },
  close: { type: 'close' },
}

describe('a command message', () => {
  it.each(ROLES.flatMap((role) => COMMAND_TYPES.map((type) => ({ role, type }))))(
    '[RO4] of a $role to $type is taken by the table of roles',
    ({ role, type }) => {
      expect(codeFor(message(of[type]), role)).toBe(mayDo(role, type) ? null : 'role-may-not')
    },
  )

  it('[X3] is taken with its id, its service, and its defaults filled in', () => {
    expect(takeCommand(message(of.send), 'counter')).toEqual({
      taken: true,
      id: 'c-1',
      service: 's-lunch',
      command: { ...of.send, paid: false },
    })
  })

  it.each<[string, unknown]>([
    ['nothing', undefined],
    ['a word', 'send'],
    ['a list', [message(of.close)]],
    ['no id', message(of.close, { id: undefined })],
    ['an id with a space', message(of.close, { id: 'c 1' })],
    ['an id that is too long', message(of.close, { id: 'c'.repeat(81) })],
    ['no version', message(of.close, { protocol: undefined })],
    ['a service that is no name', message(of.close, { service: '../lunch' })],
    ['no command', message(undefined)],
    ['a command that nobody knows', message({ type: 'eat' })],
    ['a field that nobody knows', message({ type: 'close', now: true })],
    ['an amount in words', message({ ...of.load, amount: 'much' })],
    ['an amount that is no number', message({ ...of.load, amount: Number.NaN })],
    ['a ticket in words', message({ ...of.start, ticket: 'one' })],
    ['a ticket that is no number', message({ ...of.start, ticket: Number.POSITIVE_INFINITY })],
    ['half a version seen', message({ ...of.start, seen: 0.5 })],
    ['a yes in words', message({ ...of.start, read: 'yes' })],
    [
      'a need that nobody knows',
      message(
        send({
          ...choose('harbor-tuna'),
          needs: [{ code: 'celery' as 'milk', handling: 'leave-out', reason: null }],
        }),
      ),
    ],
    ['a name that is too long', message({ ...of.send, name: 'x'.repeat(41) })],
  ])('[X3] of %s is not the protocol', (_, sent) => {
    expect(codeFor(sent)).toBe('not-the-protocol')
  })

  it.each([-1, 1.5, 1e300])(
    '[X3] for ticket %d is taken: that there is none is decided',
    (ticket) => {
      expect(codeFor(message({ ...of.start, ticket }))).toBeNull()
    },
  )

  it('[X3] of another version is told which of the two is older', () => {
    expect(codeFor(message({ type: 'eat' }, { protocol: PROTOCOL + 1 }))).toBe('newer-version')
    expect(codeFor(message({ type: 'eat' }, { protocol: PROTOCOL - 1 }))).toBe('older-version')
  })

  it('[X3] is measured in bytes, not in letters, and in whatever nests too deeply', () => {
    const long = (letter: string) =>
      message({ ...of.send, name: letter.repeat(MOST_COMMAND_BYTES / 2) })
    expect(codeFor(long('x'))).toBe('not-the-protocol')
    expect(codeFor(long('ß'))).toBe('too-large')
    let deep: unknown = []
    for (let depth = 0; depth < 200_000; depth += 1) deep = [deep]
    expect(codeFor(message(deep))).toBe('too-large')
  })

  it('[X3] that is not taken is told under its id, where it has one', () => {
    expect(takeCommand(message({ type: 'eat' }), 'lead')).toMatchObject({ id: 'c-1' })
    expect(takeCommand({ id: 7 }, 'lead')).toMatchObject({ id: null })
  })

  it('[Y16] to open is for a service named after it; any other for the one that is followed', () => {
    expect(serviceFor(parsed(of.open), 'c-7', 's-lunch')).toBe('s-c-7')
    expect(serviceFor(parsed(of.close), 'c-7', 's-lunch')).toBe('s-lunch')
    expect(
      takeCommand(
        message(of.close, { service: serviceFor(parsed(of.close), 'c-7', null) }),
        'lead',
      ),
    ).toMatchObject({ taken: true, service: '' })
  })
})
