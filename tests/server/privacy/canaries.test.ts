import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { DAY_MS } from '#lib/access/believed-time.ts'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { usual } from '#tests/support/orders.ts'
import { publishIn, realService } from '#tests/support/own-station.ts'
import { createTestClock, NOON, type TestClock } from '#tests/support/rail-room.ts'
import { connectScreen } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const FIRST = 's-1'

/** A hello of whoever owns the data folder. */
const owner = async (url: string) => ({
  auth: { protocol: PROTOCOL, role: 'lead', token: await scriptsToken(url) },
})

/** Words that nothing of the house spells, and how a reason and a need are written. */
const SAID = {
  firstName: 'Qzxwvj',
  otherName: 'Vkqzjx',
  initials: 'QJXZKV',
  firstReason: 'coeliac"',
  otherReason: 'faith"',
  need: '"handling":"leave-out"',
} as const

type Said = keyof typeof SAID

const filesOf = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name))

/** In how many files of a folder, and lines of a log, each was found; those that weren't are left out. */
const found = (folder: string, logged: readonly string[] = []): Partial<Record<Said, number>> => {
  const all = [
    ...filesOf(folder).map((file) => readFileSync(file).toString('latin1')),
    logged.join('\n'),
  ]
  const counts = Object.entries(SAID).map(([key, word]): [string, number] => [
    key,
    all.filter((text) => text.includes(word)).length,
  ])
  return Object.fromEntries(counts.filter(([, count]) => count > 0))
}

const where = (folder: string, word: Said): readonly string[] =>
  filesOf(folder)
    .filter((file) => readFileSync(file).toString('latin1').includes(SAID[word]))
    .map((file) => file.slice(folder.length + 1).replace(/-(wal|shm)$/, ''))

const toldOf = (reason: 'coeliac' | 'faith'): BuildChoice => ({
  ...usual('garden-chicken'),
  asked: 'needs',
  needs: [{ code: 'peanut', handling: 'leave-out', reason }],
})

const send = (name: string, reason: 'coeliac' | 'faith'): Command => ({
  type: 'send',
  name,
  builds: [toldOf(reason)],
  paid: false,
  readBack: true,
})

const accepted = expect.objectContaining({ answer: 'accepted' })

/** A service with two guests and a reading: each with a name, a reason and a need. */
const served = async (time: TestClock) => {
  const data = temporaryFolder()
  await publishIn(data)
  const server = await startComposedStation(data, time.clock)
  expect(found(data)).toEqual({})
  const { give } = await connectScreen(server.url, 'lead', await owner(server.url))
  const doing = async (id: string, command: Command, service = FIRST) =>
    expect(await give(id, command, { service }), id).toEqual(accepted)
  for (const [index, one] of realService(demoStation, time.clock.now()).entries())
    await doing(`set-up-${index}`, one)
  await doing('first', send(SAID.firstName, 'coeliac'))
  await doing('other', send(SAID.otherName, 'faith'))
  await doing('strip', {
    type: 'readSanitizer',
    mgPerL: 100,
    water: { tenths: 750, scale: 'F' },
    ph: null,
    initials: SAID.initials,
  })
  return { data, server, give, doing }
}

const closed = async (doing: Awaited<ReturnType<typeof served>>['doing']) => {
  for (const ticket of [1, 2])
    await doing(`cancel-${ticket}`, { type: 'cancel', ticket, letter: 'A' })
  await doing('close', { type: 'close' })
}

describe('what guests said, in all files and in the log of the program', () => {
  test('[G5] lies in the second file until the close, codes of needs alone in the log', async () => {
    const { data, server, doing } = await served(createTestClock())
    expect(Object.keys(found(data))).toEqual(Object.keys(SAID))
    for (const word of [
      'firstName',
      'otherName',
      'initials',
      'firstReason',
      'otherReason',
    ] as const)
      expect(new Set(where(data, word)), word).toEqual(new Set(['guests.db']))
    expect(new Set(where(data, 'need'))).toEqual(new Set(['log.db']))
    await closed(doing)
    await server.station.finish()
    expect(Object.keys(found(data, server.logged))).toEqual(['initials', 'need'])
    await server.end()
    expect(Object.keys(found(data, server.logged))).toEqual(['initials', 'need'])
  })

  test('[G6] of one guest is gone at once when it is forgotten, of the other it stays', async () => {
    const { data, server, give } = await served(createTestClock())
    expect(await server.station.keeping.forget(FIRST, 1)).toBe(2)
    const left = ['otherName', 'initials', 'otherReason', 'need']
    expect(Object.keys(found(data, server.logged))).toEqual(left)
    expect(await server.station.keeping.forget(FIRST, 1)).toBe(0)
    // Sent again it is known, and brings nothing back.
    expect(await give('first', send(SAID.firstName, 'coeliac'), { service: FIRST })).toEqual(
      accepted,
    )
    await server.end()
    expect(Object.keys(found(data, server.logged))).toEqual(left)
  })

  test('[G7] is gone to the last byte after retention, and so are codes and initials', async () => {
    const time = createTestClock()
    const { data, server, doing } = await served(time)
    await closed(doing)
    await doing('open', { type: 'open', station: demoStation.id, kind: 'real' }, 's-2')
    await doing('close-2', { type: 'close' }, 's-2')
    await server.end()
    const startOn = async (day: number) => {
      time.set(NOON + day * DAY_MS)
      return startComposedStation(data, time.clock)
    }
    const seen = await startOn(31)
    expect(Object.keys(found(data, seen.logged))).toEqual(['initials', 'need'])
    await seen.end()
    const agreed = await startOn(32)
    expect(found(data, agreed.logged)).toEqual({})
    const { follow, give } = await connectScreen(agreed.url, 'lead', await owner(agreed.url))
    expect(await follow(0, 's-2')).toEqual({ kind: 'no-such-service' })
    const late = await give('late', { type: 'close' }, { service: 's-2' })
    expect(late).toMatchObject({ answer: 'not taken', because: { code: 'no-such-service' } })
    const { rows } = await agreed.station.keeping.now()
    const countOf = (id: string) => rows.find((row) => row.id === id)?.now?.count
    expect([countOf('records'), countOf('streams')]).toEqual([2, 0])
    await agreed.end()
    expect(found(data, agreed.logged)).toEqual({})
  })

  test('[G13] stays while a clock is years ahead for a day', async () => {
    const time = createTestClock()
    const { data, server, doing } = await served(time)
    await closed(doing)
    await server.end()
    for (const day of [1, 2_000, 2_001, 2, 3]) {
      time.set(NOON + day * DAY_MS)
      await (await startComposedStation(data, time.clock)).end()
    }
    expect(Object.keys(found(data))).toEqual(['initials', 'need'])
  })

  test('[G7] an open service stays, however long ago it was opened', async () => {
    const time = createTestClock()
    const { data, server, doing } = await served(time)
    await closed(doing)
    await doing('open', { type: 'open', station: demoStation.id, kind: 'real' }, 's-2')
    await server.end()
    for (const day of [40, 41, 42, 43]) {
      time.set(NOON + day * DAY_MS)
      await (await startComposedStation(data, time.clock)).end()
    }
    expect(found(data)).toEqual({})
    const last = await startComposedStation(data, time.clock)
    const { follow } = await connectScreen(last.url, 'lead', await owner(last.url))
    expect(await follow(0, 's-2')).toMatchObject({ kind: 'events' })
  })
})
