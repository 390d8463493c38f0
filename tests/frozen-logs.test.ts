import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { takeCommand } from '#lib/protocol/wire-schema.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { SHELF } from '#lib/service/shelf.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { COMMAND_TYPES } from '#lib/spine/registry.ts'
import { eventTypes, sorted } from '#tests/support/declared-names.ts'
import { root } from '#tests/support/source-tree.ts'

const read = (...path: readonly string[]): string => readFileSync(join(root, ...path), 'utf8')

describe('what is frozen', () => {
  const lines = (file: string): readonly unknown[] =>
    read('fixtures', 'frozen', file)
      .split('\n')
      .filter((line) => line !== '')
      .map((line): unknown => JSON.parse(line))

  const frozenLog = (file: string) => lines(file) as readonly Recorded[]

  /** Of the states that the logs fold to. They may change with the state's shape, never a log. */
  const HASHES = {
    1: '0038c45d054e767a3e6172e0de16324e6505d68263e438e5e55569251ebe0fbe',
    2: 'ebfc1ad5e8b33688c0fab593839cefe7b8fcf60316058735816e4fd53eadf97b',
    3: '70a2152d88f11f197bf211f7e16361510062e5327eb3ae8c9618078cf9e4135f',
    4: '0cb3b598c662167fe366c7c4d70fcc67a8a2abcb373333ba1408890ff8e82e90',
    5: '281bd88c0ed3465ca27388d21081b899f41c4afc9d22f4488a081173741775bb',
    6: '325b3a4bedf20ac015c359de943116bcbb0e677be60f98b1f494f908b6da76c8',
    7: '1b33dd285200e4c5eda9b5a39f7d66662c890db84f8b6c81e8779676ff73866b',
  } as const

  const folded = (version: keyof typeof HASHES) => {
    const log = frozenLog(`v${version}-log.jsonl`)
    expect(log.map(({ position }) => position)).toEqual(log.map((_, index) => index + 1))
    const state = log.reduce((before, event) => evolve(before, event), NOT_OPENED)
    expect(stateHash(state)).toBe(HASHES[version])
    expect(state).toMatchObject({ stage: 'closed', clockJump: null })
    return { log, state, types: new Set(log.map(({ type }) => type)) }
  }

  test('the log of version 1 folds to its hash, with a document of today: nothing known of contact', () => {
    const { state } = folded(1)
    expect(state.nextTicket).toBe(5)
    expect(state.station).toMatchObject({ version: 4, contacts: null, backups: [] })
    const builds = Object.values(state.past['0'] ?? {}).flatMap((ticket) => ticket.builds)
    for (const { choice } of builds) expect(choice).toMatchObject({ agreed: false, caution: null })
  })

  test('the log of version 2 folds to its hash: nothing known of its food', () => {
    const { state } = folded(2)
    for (const { food } of state.station?.components ?? []) expect(food.kind).toBeNull()
    for (const pan of Object.values(state.pans)) expect(pan.food).toBeNull()
    expect(state.batches).toEqual({})
  })

  /** Events and commands that came since version 7 was frozen; events that 6, 4 and 3 didn't know. */
  /** Of the day before and the day after. */
  const ENDS = ['foodEnded', 'foodTaken']
  const PREP = ['prepPlanned', 'taskTicked', 'tickTakenBack', 'taskPassed']
  const PLANS = ['servicePlanned', 'planChanged', 'planFollowed', 'planDropped', ...PREP]
  const SINCE_6 = ['contactsChanged', ...PLANS, ...ENDS]
  const SINCE_4 = ['sanitizerRead', ...SINCE_6]
  const SINCE_3 = ['holdLifted', 'shelfRead', 'shelfReadingMissed', 'shelfResolved', ...SINCE_4]
  test('the log of version 3 holds every event of its time, and folds to its hash', () => {
    const { types } = folded(3)
    expect(sorted([...types, ...SINCE_3])).toEqual(sorted(eventTypes()))
  })

  /** Fields that an event may have since version 4. */
  const FIELDS_OF_4: readonly (readonly [Recorded['type'], string])[] = [
    ['panLoaded', 'bought'],
    ['panChanged', 'bought'],
    ['panToppedUp', 'bought'],
    ['backupSet', 'bought'],
    ['panChanged', 'leaves'],
    ['scoopMissed', 'lentBy'],
    ['stopAcknowledged', 'inIt'],
    ['stopAcknowledged', 'mixedUpWith'],
    ['buildRemade', 'mixedUpWith'],
    ['countCorrected', 'ends'],
    ['countCorrected', 'was'],
    ['countCorrected', 'rest'],
    ['offSaleResolved', 'presentUntil'],
    ['buildFinished', 'until.roomUntil'],
    ['cautionAccepted', 'findings.0.states'],
    ['labelChanged', 'label.sources'],
    ['labelChanged', 'label.glutenStatement'],
  ]

  const at = (value: unknown, path: string): unknown =>
    path.split('.').reduce<unknown>((so, key) => Object(so)[key], value)

  test('the log of version 4 holds every event of its time, every field that was new, and folds to its hash', () => {
    const { log, types, state } = folded(4)
    expect(sorted([...types, ...SINCE_4])).toEqual(sorted(eventTypes()))
    expect(state).not.toHaveProperty('sanitizer')
    const unseen = FIELDS_OF_4.filter(
      ([type, path]) => !log.some((one) => one.type === type && at(one, path) !== undefined),
    )
    expect(unseen).toEqual([])
    expect(log.some((one) => one.type === 'buildHeld' && one.pan === SHELF)).toBe(true)
    expect(at(log[0], 'station.ingredients.0.readBy')).toBeNull()
  })

  /** Fields that came within version 4, and what a reading of the sanitizer tells. */
  const FIELDS_OF_5: readonly (readonly [Recorded['type'], string])[] = [
    ...FIELDS_OF_4,
    ['buildStarted', 'behind'],
    ['shelfReadingMissed', 'lastGoodAt'],
    ['sanitizerRead', 'water.tenths'],
    ['sanitizerRead', 'problem'],
  ]

  test('the log of version 5 holds every event of its time, every field that was new, and folds to its hash', () => {
    const { log, types, state } = folded(5)
    expect(sorted([...types, ...SINCE_6])).toEqual(sorted(eventTypes()))
    const unseen = FIELDS_OF_5.filter(
      ([type, path]) => !log.some((one) => one.type === type && at(one, path) !== undefined),
    )
    expect(unseen).toEqual([])
    const problems = log.flatMap((one) => (one.type === 'sanitizerRead' ? [one.problem] : []))
    expect(problems).toEqual(['water-not-read', null])
    expect(state.sanitizer).toMatchObject({ kind: 'chlorine', mgPerL: 50, problem: null })
  })

  test('the log of version 6 holds every event of its time, whose passphrase proved it where one did, and no reason', () => {
    const { log, types, state } = folded(6)
    expect(sorted([...types, ...SINCE_6])).toEqual(sorted(eventTypes()))
    const unseen = FIELDS_OF_5.filter(
      ([type, path]) => !log.some((one) => one.type === type && at(one, path) !== undefined),
    )
    expect(unseen).toEqual([])
    const proved = log.filter(({ adult }) => adult !== undefined).map(({ type }) => type)
    expect(proved).toContain('inChargeSignedOn')
    expect(proved).toContain('cautionAccepted')
    expect(JSON.stringify(log)).not.toMatch(/"handling":"[a-z-]+","reason":"/)
    // An adult's id is on the event, and nothing is folded of it.
    const without = log.map(({ adult: _, ...event }) => event as Recorded)
    expect(stateHash(without.reduce(evolve, NOT_OPENED))).toBe(stateHash(state))
  })

  test('the logs of version 7 hold every event of their time: a service that was planned, one that was dropped, and one whose food came to ends', () => {
    const { log, types, state } = folded(7)
    const dropped = frozenLog('v7-dropped-log.jsonl')
    const ended = frozenLog('v7-ends-log.jsonl')
    const all = new Set([...types, ...[...dropped, ...ended].map(({ type }) => type)])
    expect(sorted([...all])).toEqual(sorted(eventTypes()))
    expect(ended.map(({ position }) => position)).toEqual(ended.map((_, index) => index + 1))
    const over = ended.reduce(evolve, NOT_OPENED)
    expect(stateHash(over)).toBe('d7dcc3ecff747a5d7eccfc08fa26ed108d2884b345e5a0de24c20d2d6273b03b')
    expect(over).toMatchObject({ stage: 'closed', batches: { 'b-lot': { lot: 's-before.4' } } })
    const [first, ...others] = log
    expect(first).toMatchObject({ type: 'servicePlanned', plan: { crew: [{ id: 'c1' }] } })
    expect(others.find(({ type }) => type === 'serviceOpened')?.position).toBeGreaterThan(5)
    expect(state.batches['day-before']?.thrownOutAt).not.toBeNull()
    const never = dropped.reduce(evolve, NOT_OPENED)
    expect(stateHash(never)).toMatch(/^c2afdba2669e96084a2808b7fa1dbd377dcecc27466d9c/)
    expect(never).toMatchObject({ stage: 'closed', kind: 'practice', nextTicket: 1 })
  })

  test('every command of version 7 as it is sent is taken, and there is one of each', () => {
    const taken = ['v7-commands.jsonl', 'v7-ends-commands.jsonl']
      .flatMap(lines)
      .map((message) => takeCommand(message, 'lead'))
    expect(taken.filter((one) => !one.taken)).toEqual([])
    const types = new Set(taken.flatMap((one) => (one.taken ? [one.command.type] : [])))
    expect(sorted([...types])).toEqual(sorted(COMMAND_TYPES))
  })

  test('no command of an earlier version is taken: its page loads itself anew', () => {
    const sent = [1, 2, 3, 4, 5, 6].flatMap((version) => lines(`v${version}-commands.jsonl`))
    expect(sent).toHaveLength(46 + 70 + 113 + 182 + 185 + 185)
    for (const message of sent)
      expect(takeCommand(message, 'lead')).toMatchObject({
        taken: false,
        because: { code: 'older-version' },
      })
  })
})
