import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { z } from 'zod'
import { hashOf } from '#lib/service/state-hash.ts'
import { COMMANDS, type Command, commandSchema } from '#lib/spine/registry.ts'
import { setApart } from '#server/rail/apart.ts'
import { fingerprintOf, isSameAs } from '#server/rail/fingerprint.ts'
import { withoutReasons } from '#server/rail/old-reasons.ts'
import { createDrive } from '#tests/support/drive-history.ts'
import { wholeService } from '#tests/support/moves.ts'
import { ONE_OF_EACH } from '#tests/support/one-of-each.ts'
import { CANARY, canariesIn, plantedIn } from '#tests/support/planted.ts'
import { createOpenRoom } from '#tests/support/rail-room.ts'
import { stationWithShelf } from '#tests/support/spare-station.ts'

const NEED = { code: 'milk', handling: 'leave-out', reason: 'allergy' } as const

/** One of each command, those with needs and people named among them. */
const all: readonly Command[] = Object.values(ONE_OF_EACH).map((given): Command => {
  const { shape } = COMMANDS.find(({ type }) => type === given.type)?.schema ?? { shape: {} }
  const command = commandSchema.parse({ ...given, ...('initials' in shape && { initials: 'KT' }) })
  if (command.type === 'send') {
    const builds = command.builds.map((one) => ({ ...one, needs: [NEED] }))
    return { ...command, name: 'Ada', builds }
  }
  if (command.type === 'change') return { ...command, to: { ...command.to, needs: [NEED] } }
  if (command.type === 'tellNeed') return { ...command, asked: 'needs', needs: [NEED, NEED] }
  if (command.type === 'acceptCaution')
    return { ...command, build: { ...command.build, needs: [NEED] } }
  if (command.type === 'changeLabel')
    return { ...command, label: { ...command.label, readBy: 'KT' } }
  return command
})

/** What strings in commands are: each by the last word of its path. */
const STRINGS: Readonly<Record<string, 'of the house' | 'a day or a time' | 'apart'>> = {
  ...Object.fromEntries(
    [
      ...[
        'station',
        'item',
        'base',
        'parts',
        'code',
        'ingredient',
        'declarations',
        'component',
        'lot',
      ],
      ...['pan', 'id', 'batch', 'backup', 'by', 'from', 'for', 'inIt', 'letter', 'key', 'claims'],
      // Names of things: an assembly screen's, a thermometer's; keys of what was read back.
      ...['screen', 'probe', 'said'],
      // What a pack says word by word, and which picture of it is kept.
      ...['list', 'photo'],
      // A schedule, what is on sale, and a group of guests, which is told to be nobody's name.
      ...['bells', 'items', 'label', 'task'],
    ].map((word) => [word, 'of the house'] as const),
  ),
  ...Object.fromEntries(
    [
      ...['closesAt', 'readOn', 'frozenOn', 'thawedOn', 'preparedOn', 'useBy'],
      ...['on', 'at', 'to', 'doorsOpen', 'doorsClose'],
    ].map((word) => [word, 'a day or a time'] as const),
  ),
  name: 'apart',
  initials: 'apart',
  readBy: 'apart',
}

interface Def {
  readonly type: string
  readonly shape?: Readonly<Record<string, z.ZodType>>
  readonly element?: z.ZodType
  readonly keyType?: z.ZodType
  readonly valueType?: z.ZodType
  readonly innerType?: z.ZodType
  readonly options?: readonly z.ZodType[]
  readonly in?: z.ZodType
}

/** The word under which each string of a shape stands; a shape that isn't known stands for itself. */
const stringsIn = (schema: z.ZodType, word: string): readonly string[] => {
  const def = schema._zod.def as unknown as Def
  const within = (...parts: readonly (z.ZodType | undefined)[]) =>
    parts.flatMap((part) => (part ? stringsIn(part, word) : []))
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape ?? {}).flatMap(([key, one]) => stringsIn(one, key))
    case 'string':
      return [word]
    case 'number':
    case 'boolean':
    case 'enum':
    case 'literal':
    case 'transform':
      return []
    default: {
      const parts = within(
        ...[def.element, def.keyType, def.valueType, def.innerType, def.in],
        ...(def.options ?? []),
      )
      const known = ['array', 'record', 'optional', 'nullable', 'default', 'readonly', 'union']
      return [...known, 'pipe'].includes(def.type) ? parts : [`${word}: ${def.type}`]
    }
  }
}

describe('what is said of people', () => {
  test('[G1] leaves every command before it is decided, and all of it goes to the second file', () => {
    const planted = all.map(plantedIn)
    const parted = planted.map(setApart)
    expect(planted.filter((one) => canariesIn(one) > 0).length).toBeGreaterThanOrEqual(15)
    expect(parted.map(({ command }) => canariesIn(command))).toEqual(parted.map(() => 0))
    for (const [index, { apart }] of parted.entries()) {
      const command = planted[index]
      // The order brings those of an acceptance; a label names its reader once or twice.
      const kept = command?.type === 'acceptCaution' ? 0 : canariesIn(command)
      expect(canariesIn(apart), command?.type).toBe(command?.type === 'changeLabel' ? 1 : kept)
    }
  })

  test('[G1] every string of every command is known for what it is: a new one has to be told', () => {
    const words = new Set(COMMANDS.flatMap(({ schema }) => stringsIn(schema, 'command')))
    expect([...words].filter((word) => !Object.hasOwn(STRINGS, word))).toEqual([])
    const apart = [...words].filter((word) => STRINGS[word] === 'apart')
    expect(apart.sort()).toEqual(['initials', 'name', 'readBy'])
  })

  test('[G1] is in no event and no refusal of a whole service, whatever is done in it', () => {
    let planted = 0
    let apart = 0
    fc.assert(
      fc.property(wholeService, (moves) => {
        const drive = createDrive(stationWithShelf)
        const refusals: unknown[] = []
        for (const act of moves.flatMap((move) => move(drive.state()))) {
          if (act.do === 'pass') drive.pass(act.ms)
          if (act.do !== 'command') continue
          const parsed = commandSchema.safeParse(act.command)
          if (!parsed.success) continue
          const command = plantedIn(parsed.data)
          const parted = setApart(command)
          planted += canariesIn(command)
          apart += canariesIn(parted.apart)
          refusals.push(drive.take(parted.command, act.by).refusal)
        }
        expect(canariesIn([drive.log(), drive.state(), refusals])).toBe(0)
      }),
      { numRuns: 25 },
    )
    expect(planted).toBeGreaterThan(200)
    expect(apart).toBeGreaterThan(200)
  }, 60_000)

  test('[PL9] [G2] who is there for a planned service is apart by initials, in the order of the plan', () => {
    const there = { adult: true, from: '08:00', to: '12:00' }
    const crew = [
      { ...there, initials: 'KT' },
      { ...there, initials: 'AB', on: '2026-11-24' },
    ]
    const { command, apart } = setApart(commandSchema.parse({ ...ONE_OF_EACH.plan, crew }))
    expect(command).toMatchObject({
      crew: [{ initials: 'p1' }, { initials: 'p2', on: '2026-11-24' }],
    })
    expect(apart).toEqual([{ kind: 'initials', body: '["KT","AB"]' }])
    expect(setApart(commandSchema.parse(ONE_OF_EACH.plan)).apart).toEqual([])
  })

  test('[G2] goes to the second file by its kind, reasons with build and need', async () => {
    const { give, guests, entries, gated } = await createOpenRoom()
    const [build] = all.flatMap((one) => (one.type === 'send' ? one.builds : []))
    if (!build) throw new Error('nothing to send')
    const harbor = { ...build, item: 'harbor-tuna', base: 'rice', parts: {} }
    const needs = [{ code: 'peanut', handling: 'leave-out', reason: 'faith' } as const]
    const send = {
      type: 'send',
      name: 'Ada',
      paid: false,
      readBack: true,
      builds: [
        { ...harbor, asked: 'none', needs: [] },
        { ...harbor, asked: 'needs', needs },
      ],
    } as const
    const answer = await give('order', send)
    expect(answer).toMatchObject({ answer: 'accepted' })
    const kept = await Promise.all(
      (['name', 'reasons', 'initials'] as const).map((kind) => guests.of('s-lunch', kind)),
    )
    const told = JSON.stringify([{ letter: 'B', code: 'peanut', reason: 'faith' }])
    expect(kept).toEqual([{ order: 'Ada' }, { order: told }, {}])
    const stored = JSON.stringify([await entries(), gated.attempts])
    expect(stored).not.toContain('faith')
    expect(stored).toContain('"code":"peanut","handling":"leave-out","reason":null')
  })
})

describe('a command that is sent again', () => {
  const [order] = all.filter((one) => one.type === 'send')
  if (!order) throw new Error('nothing to send')
  const because = (reason: 'faith' | 'diet' | null): Command => ({
    ...order,
    builds: order.builds.map((one) => ({ ...one, needs: [{ ...NEED, reason }] })),
  })

  test('[G3] is the same whatever reason it gives, and another need is another command', () => {
    expect(fingerprintOf(because('faith'))).toBe(fingerprintOf(because('diet')))
    expect(fingerprintOf(because('faith'))).toBe(fingerprintOf(because(null)))
    expect(fingerprintOf({ ...order, builds: [] })).not.toBe(fingerprintOf(order))
  })

  test('[G3] is known by the fingerprint of before, which counted its reasons', () => {
    const { name, ...rest } = order
    const before = hashOf({ ...rest, named: name !== undefined })
    expect(before).not.toBe(fingerprintOf(order))
    expect(isSameAs(before, order)).toBe(true)
    expect(isSameAs(before, because('faith'))).toBe(false)
    expect(isSameAs(fingerprintOf(order), because('faith'))).toBe(true)
  })
})

describe('a log of before', () => {
  test('[G4] has its reasons in the file, and is folded and shown without', () => {
    const choice = { item: 'tuna', needs: [{ ...NEED, reason: CANARY }] }
    const event = { type: 'ticketSent', position: 1, at: 1, command: 'c', builds: [{ choice }] }
    const shown = withoutReasons(event as never)
    expect([canariesIn(event), canariesIn(shown)]).toEqual([1, 0])
    expect(shown).toMatchObject({ builds: [{ choice: { needs: [{ ...NEED, reason: null }] } }] })
    const held = { type: 'buildHeld', reason: 'need', position: 2, at: 1, command: null }
    expect(withoutReasons(held as never)).toBe(held)
  })
})
