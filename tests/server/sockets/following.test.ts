import { connect } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'
import { describe, expect, onTestFinished, test } from 'vitest'
import { projectState } from '#lib/access/seen/project.ts'
import type { EventsMessage, PictureMessage, PulseMessage } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { OPEN, order, usual } from '#tests/support/orders.ts'
import { settle } from '#tests/support/rail-room.ts'
import { connectScreen, createSocketRoom, type Screen } from '#tests/support/socket-room.ts'

/** An order with all that a pick-up screen must never learn. */
const PRIVATE: Command = {
  type: 'send',
  builds: [
    {
      ...usual('harbor-tuna'),
      base: 'rice',
      parts: { cheddar: { placement: 'no', portions: 0, because: 'need' } },
      asked: 'needs',
      needs: [{ code: 'peanut', handling: 'leave-out', reason: 'allergy' }],
    },
  ],
  paid: true,
  readBack: true,
  name: 'Ada',
}

const eventsOf = (screen: Screen): readonly Recorded[] =>
  (screen.of('events') as EventsMessage[]).flatMap(({ events }) => events)

const namesOf = (screen: Screen): unknown =>
  Object.assign({}, ...(screen.of('guests') as { names: object }[]).map(({ names }) => names))

/** Waits until what was emitted has arrived: replies come behind it on the same connection. */
const heardAll = async (screen: Screen): Promise<void> => {
  await settle()
  await screen.socket.timeout(5_000).emitWithAck('command', null)
}

describe('who follows', () => {
  test('[X10] gets the events after its position, and then each as it happens', async () => {
    const { url } = await createSocketRoom()
    const screen = await connectScreen(url, 'assembly')
    const counter = await connectScreen(url, 'counter')
    const followed = await screen.follow(9)
    expect(followed).toMatchObject({ kind: 'events' })
    await counter.give('order', order())
    await heardAll(screen)
    const before = followed.kind === 'events' ? followed.events : []
    expect([...before, ...eventsOf(screen)].map(({ position }) => position)).toEqual([10, 11, 12])
    expect(counter.of('events')).toEqual([])
  })

  test('[X10] gets the state where its position lies ahead or too far back', async () => {
    const { url, services } = await createSocketRoom()
    const screen = await connectScreen(url, 'assembly')
    const state = projectState('assembly', services.current('alder-hall')?.state() ?? NOT_OPENED)
    const snapshot = { kind: 'snapshot', position: 11, state }
    expect(await screen.follow(400)).toEqual(snapshot)
  })

  test('[X10] folds to the same state as the server, whichever way it caught up', async () => {
    const { url, services } = await createSocketRoom()
    const screen = await connectScreen(url, 'lead')
    const all = await screen.follow(0)
    await screen.give('order', order())
    await heardAll(screen)
    const events = [...(all.kind === 'events' ? all.events : []), ...eventsOf(screen)]
    expect(events.reduce((state, event) => evolve(state, event), NOT_OPENED)).toEqual(
      services.current('alder-hall')?.state(),
    )
  })

  test('[X9] is shown that service and no other', async () => {
    const { url, services } = await createSocketRoom()
    const screen = await connectScreen(url, 'lead')
    await screen.follow()
    await screen.give('close', { type: 'close' })
    await screen.give('open-2', OPEN, { service: 's-supper' })
    expect(await screen.follow(0, 's-supper')).toMatchObject({ kind: 'events' })
    const heard = eventsOf(screen).length
    await services.submit(
      's-supper',
      'stop',
      { type: 'stopSelling', what: 'item', id: 'harbor-tuna' },
      'lead',
    )
    await heardAll(screen)
    expect(eventsOf(screen)).toHaveLength(heard + 1)
    const other = await connectScreen(url, 'lead')
    expect(await other.follow(0, 's-none')).toEqual({ kind: 'no-such-service' })
    await other.follow(0, 's-lunch')
    await services.submit(
      's-supper',
      'resume',
      { type: 'resumeSelling', what: 'item', id: 'harbor-tuna' },
      'lead',
    )
    await heardAll(other)
    expect(other.of('events')).toEqual([])
  })

  test('[X11] is told every other second where the log stands, and at once of a new service', async () => {
    const { url } = await createSocketRoom()
    const screen = await connectScreen(url, 'pick-up')
    const lead = await connectScreen(url, 'lead')
    await pause(2_200)
    expect(screen.of('pulse').at(0)).toEqual({
      at: expect.any(Number),
      service: 's-lunch',
      position: 11,
    })
    const before = screen.of('pulse').length
    await lead.give('close', { type: 'close' })
    await lead.give('open-2', OPEN, { service: 's-supper' })
    await heardAll(screen)
    const pulses = (screen.of('pulse') as PulseMessage[]).slice(before)
    expect(pulses).toContainEqual(expect.objectContaining({ service: 's-supper', position: 1 }))
  })
})

describe('what is private', () => {
  test('[X7] a pick-up screen hears numbers and states, and nothing else at all', async () => {
    const { url } = await createSocketRoom()
    const pickUp = await connectScreen(url, 'pick-up')
    const lead = await connectScreen(url, 'lead')
    const first = await pickUp.follow(0)
    expect(first).toMatchObject({ kind: 'picture' })
    expect(await lead.give('order', PRIVATE)).toMatchObject({ answer: 'accepted' })
    await lead.give('start', { type: 'start', ticket: 1, letter: 'A', read: true })
    await lead.give('finish', { type: 'finish', ticket: 1, letter: 'A' })
    await heardAll(pickUp)
    const again = await pickUp.follow(0)
    const names = new Set(pickUp.heard.map(([name]) => name))
    expect([...names].filter((name) => name !== 'pulse').sort()).toEqual(['picture', 'welcome'])
    const pictures = pickUp.of('picture') as PictureMessage[]
    expect(pictures.map(({ picture }) => picture.builds.map(({ state }) => state))).toEqual([
      ['waiting'],
      ['making'],
      ['made'],
    ])
    for (const { service, picture } of pictures) {
      expect(service).toBe('s-lunch')
      expect(Object.keys(picture).sort()).toEqual(['builds', 'open', 'station', 'wells'])
      expect(picture.wells.every(Number.isInteger)).toBe(true)
      for (const build of picture.builds)
        expect(Object.keys(build).sort()).toEqual(['name', 'since', 'state'])
    }
    const all = JSON.stringify([first, again, pickUp.heard])
    for (const secret of ['Ada', 'peanut', 'allergy', 'tuna', 'rice', 'cheddar', 'events', 'paid'])
      expect(all, secret).not.toContain(secret)
  })

  test('[G6] a name that is forgotten is taken from the screens that were told it, and only from them', async () => {
    const { url, forgotten } = await createSocketRoom()
    const [crew, assembly, lead] = await Promise.all([
      connectScreen(url, 'hand-over'),
      connectScreen(url, 'assembly'),
      connectScreen(url, 'lead'),
    ])
    await Promise.all([crew.follow(), assembly.follow()])
    await lead.give('order', PRIVATE)
    await heardAll(crew)
    forgotten(['order'])
    await Promise.all([crew, assembly].map(heardAll))
    expect(crew.of('guests').at(-1)).toEqual({ service: 's-lunch', names: { order: '' } })
    expect(assembly.of('guests')).toEqual([])
  })

  test('[X8] names go to crew screens of the service, at once and on catching up, and with the close', async () => {
    const { url } = await createSocketRoom()
    const [crew, pickUp, stranger, lead] = await Promise.all([
      connectScreen(url, 'hand-over'),
      connectScreen(url, 'pick-up'),
      connectScreen(url, 'counter'),
      connectScreen(url, 'lead'),
    ])
    await Promise.all([crew.follow(), pickUp.follow()])
    await lead.give('order', PRIVATE)
    await Promise.all([crew, pickUp, stranger].map(heardAll))
    expect(namesOf(crew)).toEqual({ order: 'Ada' })
    expect([pickUp.of('guests'), stranger.of('guests')]).toEqual([[], []])
    const late = await connectScreen(url, 'counter')
    await late.follow()
    await heardAll(late)
    expect(late.of('guests')).toEqual([{ service: 's-lunch', names: { order: 'Ada' } }])
    expect(JSON.stringify(eventsOf(crew))).not.toContain('Ada')
    await lead.give('cancel', { type: 'cancel', ticket: 1, letter: 'A' })
    await lead.give('close', { type: 'close' })
    await settle()
    const after = await connectScreen(url, 'counter')
    await after.follow()
    await heardAll(after)
    expect(after.of('guests')).toEqual([])
  })
})

describe('the end in good order', () => {
  test('[X12] what was taken is answered before the socket closes; what comes later is not taken', async () => {
    const { url, room, stopTaking, closeSockets } = await createSocketRoom()
    const screen = await connectScreen(url, 'counter')
    room.gated.hold()
    const taken = screen.give('order', order())
    await heardAll(screen)
    stopTaking()
    expect(await screen.give('late', order())).toEqual({
      id: 'late',
      answer: 'not taken',
      because: { code: 'closing' },
    })
    const lost = new Promise<string>((reason) => screen.socket.once('disconnect', reason))
    const closed = closeSockets()
    room.gated.open()
    expect(await taken).toEqual({ id: 'order', answer: 'accepted', position: 12 })
    expect(await lost).toBe('transport close')
    await closed
  })

  test('[X12] a connection that never asks for anything holds nobody up', async () => {
    const { port, closeSockets, httpServer } = await createSocketRoom()
    const silent = connect(port, '127.0.0.1')
    await new Promise((connected) => silent.once('connect', connected))
    await closeSockets()
    expect(httpServer.listening).toBe(true)
    silent.destroy()
  })

  test('[X12] a screen connects again by itself, and what it sent meanwhile arrives', async () => {
    const first = await createSocketRoom()
    let token = first.token('counter')
    const crew = connectCrew(first.url, 'counter', async () => token)
    onTestFinished(crew.close)
    await whenView(crew.client, (view) => view.link === 'live' && view.position === 11)
    await first.closeSockets()
    await whenView(crew.client, (view) => view.link === 'lost')
    const answered = crew.client.send(order(), 'meanwhile')
    first.httpServer.closeAllConnections()
    await new Promise((closed) => first.httpServer.close(closed))
    const second = await createSocketRoom({ port: first.port })
    token = second.token('counter')
    expect(await answered).toEqual({ id: 'meanwhile', answer: 'accepted', position: 12 })
    await whenView(crew.client, (view) => view.link === 'live' && view.position === 12)
    const state = second.services.current('alder-hall')?.state() ?? NOT_OPENED
    expect(crew.client.view().state).toEqual(projectState('counter', state))
  })
})
