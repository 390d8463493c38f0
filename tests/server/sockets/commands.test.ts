import { describe, expect, test } from 'vitest'
import { MOST_COMMAND_BYTES, MOST_MESSAGE_BYTES, PROTOCOL } from '#lib/protocol/wire.ts'
import { ROLES } from '#lib/service/roles.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { order, usual } from '#tests/support/orders.ts'
import { connectScreen, createSocketRoom, type Screen } from '#tests/support/socket-room.ts'

const notTaken = (id: string | null, because: object) => ({ id, answer: 'not taken', because })

/** A command of so many bytes, which isn't one. */
const ofBytes = (bytes: number) => ({ type: 'send', builds: [], filler: 'x'.repeat(bytes) })

/** As text, since the sender's own library can't write it. */
const deep = (levels: number): string => `${'['.repeat(levels)}${']'.repeat(levels)}`

const build = usual()

/** What is not the protocol: most of it was never meant to be, some of it nearly is. */
const NONSENSE: readonly unknown[] = [
  null,
  undefined,
  0,
  -1,
  1e308,
  true,
  '',
  'close',
  'x'.repeat(20_000),
  '\u0000\ud800',
  [],
  [[[]]],
  {},
  new Uint8Array([1, 2, 3]),
  new Date(0),
  { command: { type: 'close' } },
  { protocol: PROTOCOL },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch' },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: null },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: 'close' },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: [] },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: {} },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: 'drop' } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: 'close', more: 1 } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: ['close'] } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: [[[[]]]] },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: new Uint8Array(100) },
  { protocol: -1, id: 'n', service: 's-lunch', command: { type: 'close' } },
  { protocol: 0.5, id: 'n', service: 's-lunch', command: { type: 'close' } },
  { protocol: 'one', id: 'n', service: 's-lunch', command: { type: 'close' } },
  { protocol: PROTOCOL, id: '', service: 's-lunch', command: { type: 'close' } },
  { protocol: PROTOCOL, id: 7, service: 's-lunch', command: { type: 'close' } },
  { protocol: PROTOCOL, id: 'a b', service: 's-lunch', command: { type: 'close' } },
  { protocol: PROTOCOL, id: 'n'.repeat(81), service: 's-lunch', command: { type: 'close' } },
  { protocol: PROTOCOL, id: "'; DROP TABLE entries; --", service: 's-lunch', command: {} },
  { protocol: PROTOCOL, id: 'n', service: null, command: { type: 'close' } },
  { protocol: PROTOCOL, id: 'n', service: '../log', command: { type: 'close' } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: 'send' } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: 'send', builds: {} } },
  { protocol: PROTOCOL, id: 'n', service: 's-lunch', command: { type: 'send', builds: [null] } },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'send', builds: Array.from({ length: 51 }, () => 1) },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'send', builds: [{ ...build, asked: undefined }] },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'send', builds: [{ ...build, asked: 'yes' }] },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'send', builds: [{ ...build, needs: [{ code: 'gluten' }] }] },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'send', builds: [build], name: 'x'.repeat(41) },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'load', pan: 'pan-rice', amount: 'much' },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'load', pan: 'pan-rice', amount: null },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'finish', ticket: 'one', letter: 'A' },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'finish', ticket: null, letter: 'A' },
  },
  {
    protocol: PROTOCOL,
    id: 'n',
    service: 's-lunch',
    command: { type: 'takeBack', ticket: 1, letter: 'A', made: 'no' },
  },
]

/** Whole and well formed, and yet nothing that can be. */
const IMPOSSIBLE: readonly object[] = [
  { type: 'send', builds: [] },
  { type: 'send', builds: [{ ...build, item: '__proto__' }] },
  { type: 'send', builds: [{ ...build, item: 'constructor' }] },
  { type: 'send', builds: [{ ...build, base: '__proto__' }] },
  {
    type: 'send',
    builds: [{ ...build, parts: { constructor: { placement: 'in', portions: 1 } } }],
  },
  {
    type: 'send',
    builds: [{ ...build, parts: { slaw: { placement: 'in', portions: -1 } } }],
  },
  {
    type: 'send',
    builds: [{ ...build, parts: { slaw: { placement: 'in', portions: 1e300 } } }],
  },
  { type: 'load', pan: '__proto__', amount: 1 },
  { type: 'changePan', pan: 'pan-rice', amount: -1 },
  { type: 'correct', pan: 'pan-rice', amount: 0.5 },
  { type: 'correct', pan: 'pan-rice', amount: 1e300 },
  { type: 'start', ticket: 999_999, letter: 'Z' },
  { type: 'start', ticket: -1, letter: 'A' },
  { type: 'pay', ticket: 0.5, paid: true },
  { type: 'handOver', ticket: 0, letter: '__' },
  { type: 'stopSelling', what: 'item', id: 'toString' },
]

const foldOf = async ({ room }: Awaited<ReturnType<typeof createSocketRoom>>) =>
  (await room.ports.log.read('s-lunch', 0)).reduce(
    (state, event) => evolve(state, event),
    NOT_OPENED,
  )

describe('what is taken', () => {
  test('[X3] a command as the protocol has it', async () => {
    const { url } = await createSocketRoom()
    const { give } = await connectScreen(url, 'counter')
    expect(await give('order', order())).toEqual({ id: 'order', answer: 'accepted', position: 12 })
  })

  test('[X3] not one of a newer or an older version, until it comes in this one', async () => {
    const { url, room } = await createSocketRoom()
    const { give } = await connectScreen(url, 'counter')
    expect(await give('order', order(), { protocol: PROTOCOL + 1 })).toEqual(
      notTaken('order', { code: 'newer-version' }),
    )
    expect(await give('order', order(), { protocol: PROTOCOL - 1 })).toEqual(
      notTaken('order', { code: 'older-version' }),
    )
    expect(await room.ports.log.answerTo('s-lunch', 'order')).toBeNull()
    expect(await give('order', order())).toMatchObject({ answer: 'accepted' })
  })

  test.each(ROLES)('[X3] from %s only what its table allows', async (role) => {
    const { url } = await createSocketRoom()
    const { give } = await connectScreen(url, role)
    const mayClose = role === 'lead' || role === 'in-charge'
    const answer = await give('pan', { type: 'correct', pan: 'pan-rice', amount: 0 })
    expect(answer).toEqual(
      mayClose
        ? { id: 'pan', answer: 'accepted', position: 12 }
        : notTaken('pan', { code: 'role-may-not', role, command: 'correct' }),
    )
  })

  test('[X3] not one for a service that does not exist', async () => {
    const { url } = await createSocketRoom()
    const { give } = await connectScreen(url, 'counter')
    expect(await give('order', order(), { service: 's-supper' })).toEqual(
      notTaken('order', { code: 'no-such-service' }),
    )
  })

  test('[X3] not one that is too large, counted in bytes', async () => {
    const { url } = await createSocketRoom()
    const { give } = await connectScreen(url, 'counter')
    const room = MOST_COMMAND_BYTES - JSON.stringify(ofBytes(0)).length
    const say = (command: object) => give('large', command as never)
    expect(await say(ofBytes(room + 1))).toEqual(notTaken('large', { code: 'too-large' }))
    expect(await say(ofBytes(room))).toEqual(notTaken('large', { code: 'not-the-protocol' }))
    expect(await say({ ...ofBytes(0), filler: 'é'.repeat(room / 2 + 1) })).toEqual(
      notTaken('large', { code: 'too-large' }),
    )
  })

  test('[X4] not more than the rate allows; others are taken meanwhile', async () => {
    const { url, room } = await createSocketRoom({ mostMessagesASecond: 10 })
    const [flood, other] = await Promise.all([
      connectScreen(url, 'counter'),
      connectScreen(url, 'counter'),
    ])
    const asked = Array.from({ length: 40 }, (_, index) =>
      flood.give(`close-${index}`, { type: 'close' }),
    )
    const followed = flood.follow()
    const calm = await other.give('order', order())
    const answers = await Promise.all(asked)
    expect((await followed).kind).toBe('busy')
    expect(calm).toMatchObject({ answer: 'accepted' })
    const busy = answers.filter((one) => one.answer === 'not taken' && one.because.code === 'busy')
    expect(busy.length).toBeGreaterThan(0)
    expect(await room.ports.log.answerTo('s-lunch', busy[0]?.id ?? '')).toBeNull()
  })

  test('[X5] a message beyond the largest size closes its connection, and no other', async () => {
    const { url, room } = await createSocketRoom()
    const [large, other] = await Promise.all([
      connectScreen(url, 'counter'),
      connectScreen(url, 'counter'),
    ])
    const closed = new Promise((settle) => large.socket.once('disconnect', settle))
    large.socket.emit('command', 'x'.repeat(MOST_MESSAGE_BYTES + 1))
    await closed
    expect(await other.give('order', order())).toMatchObject({ answer: 'accepted' })
    const again = await connectScreen(url, 'counter')
    expect(await again.give('order', order())).toMatchObject({ answer: 'accepted' })
    expect(await room.ports.log.head('s-lunch')).toBe(12)
  })
})

const sendRaw = (socket: Screen['socket'], packet: string): void => {
  const { ws } = socket.io.engine.transport as unknown as { ws: { send(packet: string): void } }
  ws.send(packet)
}

describe('nonsense', () => {
  const unharmed = async (room: Awaited<ReturnType<typeof createSocketRoom>>, screen: Screen) => {
    expect(await foldOf(room)).toEqual(room.services.current('alder-hall')?.state())
    expect(await room.room.ports.log.head('s-lunch')).toBe(11)
    expect(await screen.give('order', order())).toMatchObject({ answer: 'accepted', position: 12 })
    expect(room.room.faults).toEqual([])
  }

  test('[X6] of fifty kinds as a command is not taken and changes nothing', async () => {
    expect(NONSENSE).toHaveLength(50)
    const room = await createSocketRoom()
    const screen = await connectScreen(room.url, 'lead')
    for (const message of NONSENSE)
      expect(await screen.say(message), JSON.stringify(message)?.slice(0, 200)).toMatchObject({
        answer: 'not taken',
        because: { code: 'not-the-protocol' },
      })
    await unharmed(room, screen)
  })

  test('[X6] of fifty kinds as what to follow is answered', async () => {
    const room = await createSocketRoom()
    const screen = await connectScreen(room.url, 'lead')
    for (const message of NONSENSE)
      expect(await screen.socket.timeout(5_000).emitWithAck('follow', message)).toEqual({
        kind: 'no-such-service',
      })
    await unharmed(room, screen)
  })

  test('[X6] without anything that could be answered, or under a name of its own, is passed over', async () => {
    const room = await createSocketRoom()
    const screen = await connectScreen(room.url, 'lead')
    for (const message of NONSENSE) {
      screen.socket.emit('command', message)
      screen.socket.emit('follow', message)
      screen.socket.emit('events', message)
      screen.socket.emit('command')
      screen.socket.emit('command', message, message, message)
    }
    await unharmed(room, await connectScreen(room.url, 'lead'))
  })

  test('[X6] that is no packet closes the connection at most', async () => {
    const room = await createSocketRoom()
    const packets = ['', '4', '42', '42["command"', '451-["command"]', '9', '42[1,2]', '\u0000']
    for (const packet of [...packets, `420["command",${deep(30_000)}]`]) {
      const { socket } = await connectScreen(room.url, 'lead')
      sendRaw(socket, packet)
    }
    await unharmed(room, await connectScreen(room.url, 'lead'))
  })

  test('[X6] nested too deeply to be written again is answered as too large', async () => {
    const room = await createSocketRoom()
    const screen = await connectScreen(room.url, 'lead')
    const envelope = `"protocol":${PROTOCOL},"id":"deep","service":"s-lunch"`
    const answered = new Promise((settle) => screen.socket.io.engine.on('data', settle))
    sendRaw(screen.socket, `420["command",{${envelope},"command":${deep(30_000)}}]`)
    expect(await answered).toBe(
      '30[{"id":"deep","answer":"not taken","because":{"code":"too-large"}}]',
    )
    await unharmed(room, screen)
  })

  test('[X6] well formed, it is refused with a code of its own', async () => {
    const room = await createSocketRoom()
    const screen = await connectScreen(room.url, 'lead')
    for (const [index, command] of IMPOSSIBLE.entries()) {
      const answer = await screen.give(`impossible-${index}`, command as never)
      expect(answer, JSON.stringify(command)).toMatchObject({ answer: 'refused' })
      expect(JSON.stringify(answer)).not.toContain('could-not-decide')
    }
    await unharmed(room, screen)
  })
})
