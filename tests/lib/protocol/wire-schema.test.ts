import { describe, expect, it } from 'vitest'
import { serviceFor } from '#lib/protocol/service-id.ts'
import { MOST_COMMAND_BYTES, PROTOCOL } from '#lib/protocol/wire.ts'
import { takeCommand } from '#lib/protocol/wire-schema.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { COMMAND_TYPES, type CommandType, mayDo, ONLY_IN_CHARGE } from '#lib/spine/registry.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
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

const reading = { tenths: 1650, scale: 'F', probe: 'probe 1', where: 'thickest-part' } as const

const of: Readonly<Record<CommandType, Given>> = {
  open: { type: 'open', station: 'alder-hall', kind: 'demo' },
  plan: {
    type: 'plan',
    station: 'alder-hall',
    kind: 'real',
    on: '2026-11-27',
    doorsOpen: '11:00',
    doorsClose: '13:00',
  },
  dropPlan: { type: 'dropPlan' },
  planPrep: { type: 'planPrep', foods: [{ component: 'slaw', loads: 1, portions: 20 }] },
  tickTask: { type: 'tickTask', task: 'make.slaw', initials: 'KT' },
  takeBackTick: { type: 'takeBackTick', task: 'make.slaw' },
  passTask: { type: 'passTask', task: 'make.slaw', far: 2, where: 'table', initials: 'KT' },
  startBatch: { type: 'startBatch', component: 'rice', loads: 1 },
  recordCooking: { type: 'recordCooking', batch: 'b1', reading },
  finishBatch: { type: 'finishBatch', batch: 'b1', amount: 1 },
  takeFromLarder: { type: 'takeFromLarder', lot: 'lot-a', amount: 1 },
  recordCooling: { type: 'recordCooling', batch: 'b1', reading },
  recordReheating: { type: 'recordReheating', batch: 'b1', place: 'range', startedAt: 0, reading },
  startTimeClock: {
    type: 'startTimeClock',
    what: 'batch',
    id: 'b1',
    leftAt: 0,
    from: 'cold',
    rule: '4h',
    reading,
  },
  load: { type: 'load', pan: 'pan-rice', amount: 1 },
  topUp: { type: 'topUp', pan: 'pan-rice', amount: 1 },
  readTemperature: { type: 'readTemperature', id: 'pan-rice', reading },
  resolveOffSale: { type: 'resolveOffSale', what: 'pan', id: 'pan-rice', way: 'discard' },
  readShelf: { type: 'readShelf', reading },
  resolveShelf: { type: 'resolveShelf', way: 'discard' },
  readSanitizer: { type: 'readSanitizer', mgPerL: 100, water: null, ph: null },
  throwOut: { type: 'throwOut', what: 'pan', id: 'pan-rice', reason: 'quality' },
  answerHandedOver: {
    type: 'answerHandedOver',
    what: 'pan',
    id: 'pan-rice',
    answer: 'told',
    seen: 1,
  },
  endFood: { type: 'endFood', what: 'pan', id: 'pan-rice', end: 'throw-out', how: 'eye' },
  throwOutHot: { type: 'throwOutHot' },
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
  remakeMixedUp: { type: 'remakeMixedUp', builds: [at('1A'), at('1B')] },
  handOver: { type: 'handOver', ...at('1A') },
  pay: { type: 'pay', ticket: 1, paid: true },
  stopSelling: { type: 'stopSelling', what: 'item', id: 'harbor-tuna' },
  resumeSelling: { type: 'resumeSelling', what: 'item', id: 'harbor-tuna' },
  signOn: { type: 'signOn' },
  signOff: { type: 'signOff' },
  acceptCaution: { type: 'acceptCaution', build: choose('harbor-tuna'), reason: 'guest-accepts' },
  tellNeed: { type: 'tellNeed', ...at('1A'), asked: 'not-sure', needs: [] },
  changeLabel: { type: 'changeLabel', ingredient: 'rice', label: UNREAD_LABEL },
  notSameProduct: { type: 'notSameProduct', ingredient: 'rice' },
  soilPan: { type: 'soilPan', pan: 'pan-rice', by: 'slaw' },
  setBackup: { type: 'setBackup', component: 'rice', ready: true },
  setDay: { type: 'setDay', guestsExpected: 90 },
  waste: { type: 'waste', pan: 'pan-rice', amount: 1, reason: 'spill' },
  keep: { type: 'keep', component: 'rice', portions: 4, for: ['harbor-tuna'] },
  endKeep: { type: 'endKeep', component: 'rice' },
  wantedGone: { type: 'wantedGone', component: 'rice' },
  missScoop: { type: 'missScoop', component: 'rice' },
  scoopBack: { type: 'scoopBack', component: 'rice' },
  answerAdvice: { type: 'answerAdvice', key: 'measure rice', answer: 'done' },
  wait: { type: 'wait', ...at('1A') },
  confirmClock: { type: 'confirmClock' },
  close: { type: 'close' },
}

describe('a command message', () => {
  it.each(ROLES.flatMap((role) => COMMAND_TYPES.map((type) => ({ role, type }))))(
    '[RO4] of a $role to $type is taken by the table of roles',
    ({ role, type }) => {
      const counts = role === 'in-charge' ? 'lead' : role
      expect(codeFor(message(of[type]), role)).toBe(mayDo(counts, type) ? null : 'role-may-not')
    },
  )

  it.each(ROLES.flatMap((role) => COMMAND_TYPES.map((type) => ({ role, type }))))(
    '[I8] of a $role to $type, with a passphrase, is the person in charge’s or nobody’s',
    ({ role, type }) => {
      const passphrase = 'left of the grill'
      expect(takeCommand(message(of[type], { passphrase }), role)).toMatchObject({
        taken: true,
        by: 'in-charge',
        passphrase,
      })
    },
  )

  it.each(ROLES)('[I8] of a %s without a passphrase never counts as in charge', (role) => {
    const taken = takeCommand(message(of.correct), role)
    if (taken.taken) expect(taken).toMatchObject({ by: 'lead', passphrase: null })
    else expect(taken.because).toEqual({ code: 'role-may-not', role, command: 'correct' })
    for (const type of ONLY_IN_CHARGE)
      expect(codeFor(message(of[type]), role), type).toBe('role-may-not')
  })

  it('[I8] whose passphrase is none, or beyond bounds, is not the protocol', () => {
    for (const passphrase of [null, 12_345_678, ['left of the grill'], {}, 'x'.repeat(801)])
      expect(codeFor(message(of.close, { passphrase }))).toBe('not-the-protocol')
    expect(codeFor(message(of.close, { passphrase: '' }))).toBeNull()
    expect(codeFor(message(of.close, { passphrase: '\u{1F957}'.repeat(200) }))).toBeNull()
  })

  it('[X3] is taken with its id, its service, and its defaults filled in', () => {
    expect(takeCommand(message(of.send), 'counter')).toEqual({
      taken: true,
      id: 'c-1',
      service: 's-lunch',
      command: { ...of.send, paid: false },
      by: 'counter',
      passphrase: null,
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
      'a need that can be no code',
      message(
        send({
          ...choose('harbor-tuna'),
          needs: [{ code: 'x'.repeat(61), handling: 'leave-out', reason: null }],
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
