import { describe, expect, it } from 'vitest'
import { type Answer, PROTOCOL } from '#lib/protocol/wire.ts'
import type { NotTaken } from '#lib/service/refusal.ts'
import type { Command } from '#lib/spine/registry.ts'
import { createMemoryOutbox, type Pending } from '#lib/sync/outbox.ts'
import { createScreen, settled, welcomeTo } from '#tests/support/crew.ts'
import { LUNCH, last, lastOf, liveScreen, type Screen } from '#tests/support/live-screen.ts'
import { parsed } from '#tests/support/service.ts'

const close: Command = { type: 'close' }
const accepted = (id: string): Answer => ({ id, answer: 'accepted', position: last })
const not = (id: string, because: NotTaken): Answer => ({ id, answer: 'not taken', because })

describe('a command', () => {
  it('[Y10] goes out at once from a live screen, and is settled by its answer', async () => {
    const screen = await liveScreen()
    const answered = screen.client.send(close)
    expect(screen.commands).toHaveLength(1)
    lastOf(screen.commands).reply(accepted('c-1'))
    await expect(answered).resolves.toEqual(accepted('c-1'))
    expect(screen.client.view().pending).toEqual([])
    expect(await screen.outbox.all()).toEqual([])
  })

  it('[Y11] is sent again under the same id after a lost connection, and settled once', async () => {
    const screen = await liveScreen()
    let answers = 0
    void screen.client.send(close).then(() => {
      answers += 1
    })
    screen.say.lost()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    expect(screen.commands.map((one) => one.message.id)).toEqual(['c-1', 'c-1'])
    for (const asked of screen.commands) asked.reply(accepted('c-1'))
    await settled()
    expect(answers).toBe(1)
    expect(screen.client.view().pending).toEqual([])
  })

  it('[Y11] whose old connection fails is not sent a third time', async () => {
    const screen = await liveScreen()
    void screen.client.send(close)
    screen.say.lost()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    screen.commands[0]?.fail()
    await settled()
    screen.timers.pass()
    expect(screen.commands).toHaveLength(2)
  })

  it.each([
    ['no reply came', (screen: Screen) => lastOf(screen.commands).fail()],
    [
      'the server was busy',
      (screen: Screen) => lastOf(screen.commands).reply(not('c-1', { code: 'busy' })),
    ],
    [
      'the server was closing',
      (screen: Screen) => lastOf(screen.commands).reply(not('c-1', { code: 'closing' })),
    ],
  ])('[Y12] is sent again a while later where %s', async (_, goWrong) => {
    const screen = await liveScreen()
    const answered = screen.client.send(close)
    goWrong(screen)
    await settled()
    expect(screen.client.view().pending).toHaveLength(1)
    expect(screen.commands).toHaveLength(1)
    screen.timers.pass()
    expect(screen.commands.map((one) => one.message.id)).toEqual(['c-1', 'c-1'])
    lastOf(screen.commands).reply(accepted('c-1'))
    await expect(answered).resolves.toMatchObject({ answer: 'accepted' })
    expect(screen.timers.waiting()).toBe(0)
  })

  it.each<NotTaken>([
    { code: 'not-the-protocol' },
    { code: 'too-large' },
    { code: 'newer-version' },
    { code: 'older-version' },
    { code: 'role-may-not', role: 'counter', command: 'close' },
    { code: 'no-such-service' },
    { code: 'wrong-passphrase' },
    { code: 'no-passphrase' },
    { code: 'too-many-tries' },
  ])('[Y13] that was not taken as $code is not sent again', async (because) => {
    const screen = await liveScreen()
    const answered = screen.client.send(close)
    lastOf(screen.commands).reply(not('c-1', because))
    await expect(answered).resolves.toEqual(not('c-1', because))
    expect(screen.client.view().pending).toEqual([])
    screen.timers.pass()
    expect(screen.commands).toHaveLength(1)
  })

  it('[Y14] that was kept before the page was loaded anew is sent when the screen is live', async () => {
    const kept: Pending = { id: 'k-1', service: LUNCH, command: close }
    const outbox = createMemoryOutbox()
    await outbox.put(kept)
    const screen = await liveScreen({ outbox })
    expect(screen.commands.map((one) => one.message.id)).toEqual(['k-1'])
    lastOf(screen.commands).reply(accepted('k-1'))
    await settled()
    expect(await outbox.all()).toEqual([])
  })

  it('[Y14] asked about again by its id it stays what was kept, and the answer is heard', async () => {
    const kept: Pending = { id: 'k-1', service: 's-earlier', command: close }
    const outbox = createMemoryOutbox()
    await outbox.put(kept)
    const screen = await liveScreen({ outbox })
    const answered = screen.client.send(close, 'k-1')
    expect(screen.commands.map((one) => one.message)).toMatchObject([{ service: 's-earlier' }])
    expect(screen.client.view().pending).toEqual([kept])
    lastOf(screen.commands).reply(accepted('k-1'))
    await expect(answered).resolves.toEqual(accepted('k-1'))
  })

  it('[Y14] is sent from an outbox that opens late, and one that fails is done without', async () => {
    const gate: { open?: () => void } = {}
    const late = createMemoryOutbox()
    await late.put({ id: 'k-1', service: LUNCH, command: close })
    const opened = new Promise<void>((resolve) => {
      gate.open = resolve
    })
    const screen = await liveScreen({
      outbox: { ...late, all: () => opened.then(() => late.all()) },
    })
    expect(screen.commands).toHaveLength(0)
    gate.open?.()
    await settled()
    expect(screen.commands.map((one) => one.message.id)).toEqual(['k-1'])

    const broken = () => Promise.reject(new Error('no database'))
    const other = await liveScreen({ outbox: { all: broken, put: broken, remove: broken } })
    const answered = other.client.send(close)
    lastOf(other.commands).reply(accepted('c-1'))
    await expect(answered).resolves.toMatchObject({ answer: 'accepted' })
  })

  it('[Y15] given twice under one id goes out once and answers both', async () => {
    const screen = await liveScreen()
    const both = [screen.client.send(close, 'x-1'), screen.client.send(close, 'x-1')]
    expect(screen.commands).toHaveLength(1)
    expect(screen.client.view().pending).toHaveLength(1)
    lastOf(screen.commands).reply(accepted('x-1'))
    await expect(Promise.all(both)).resolves.toEqual([accepted('x-1'), accepted('x-1')])
  })

  it('[Y16] to open goes to a service of its own name, also where none was ever opened', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(null))
    expect(screen.client.view().link).toBe('live')
    const open = parsed({ type: 'open', station: 'alder-hall', kind: 'demo' })
    void screen.client.send(open)
    expect(lastOf(screen.commands).message).toMatchObject({ service: 's-c-1', id: 'c-1' })
    screen.say.lost()
    screen.say.welcome(welcomeTo(null))
    expect(screen.commands).toHaveLength(2)
  })
})

describe('a command with a passphrase', () => {
  const passphrase = 'left of the grill'

  it('[Y21] carries it to the server, each time it is sent', async () => {
    const screen = await liveScreen()
    const answered = screen.client.send(close, undefined, { passphrase })
    screen.say.lost()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    expect(screen.commands.map(({ message }) => message)).toEqual([
      { protocol: PROTOCOL, id: 'c-1', service: LUNCH, command: close, passphrase },
      { protocol: PROTOCOL, id: 'c-1', service: LUNCH, command: close, passphrase },
    ])
    lastOf(screen.commands).reply(accepted('c-1'))
    await expect(answered).resolves.toEqual(accepted('c-1'))
  })

  it('[Y21] is kept in memory only, and no one sees the passphrase there', async () => {
    const put: Pending[] = []
    const kept = createMemoryOutbox()
    const outbox = {
      ...kept,
      put: (pending: Pending) => {
        put.push(pending)
        return kept.put(pending)
      },
    }
    const screen = await liveScreen({ outbox })
    void screen.client.send(close, undefined, { passphrase })
    await settled()
    expect(screen.client.view().pending).toHaveLength(1)
    expect(JSON.stringify(screen.client.view())).not.toContain(passphrase)
    expect(put).toEqual([])
    const again = await liveScreen({ outbox })
    expect(again.commands).toEqual([])
    expect(again.client.view().pending).toEqual([])
  })

  it('[Y21] gives it to no command but its own, and forgets it with the answer', async () => {
    const screen = await liveScreen()
    void screen.client.send(close, 'x-1', { passphrase })
    void screen.client.send(close, 'x-2')
    expect(screen.commands.map(({ message }) => 'passphrase' in message)).toEqual([true, false])
    for (const asked of screen.commands) asked.reply(accepted(asked.message.id))
    await settled()
    void screen.client.send(close, 'x-1')
    expect(lastOf(screen.commands).message).not.toHaveProperty('passphrase')
  })
})
