import { describe, expect, it } from 'vitest'
import { PROTOCOL, type PulseMessage } from '#lib/protocol/wire.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import type { Command } from '#lib/spine/registry.ts'
import { createScreen, settled, welcomeTo } from '#tests/support/crew.ts'
import {
  DINNER,
  events,
  LUNCH,
  last,
  lastOf,
  liveScreen,
  type Screen,
  state,
} from '#tests/support/live-screen.ts'
import { given } from '#tests/support/service.ts'

const close: Command = { type: 'close' }
const pulse = (position: number, service: string | null = LUNCH): PulseMessage => ({
  at: 9_000,
  service,
  position,
})

describe('a screen that catches up', () => {
  it('[Y1] follows from the beginning at first, and is live once it has the answer', async () => {
    const screen = createScreen()
    expect(screen.client.view().link).toBe('connecting')
    screen.say.welcome(welcomeTo(LUNCH))
    expect(screen.follows.map((one) => one.message)).toEqual([{ service: LUNCH, position: 0 }])
    expect(screen.client.view().link).toBe('connecting')
    lastOf(screen.follows).reply({ kind: 'events', events })
    await settled()
    expect(screen.client.view()).toMatchObject({
      link: 'live',
      position: last,
      service: LUNCH,
      serverOffset: welcomeTo(null).at - 5_000,
    })
    expect(stateHash(screen.client.view().state)).toBe(stateHash(state))
  })

  it('[Y2] takes a snapshot in the place of events, and folds on from there', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    const before = given()
    lastOf(screen.follows).reply({
      kind: 'snapshot',
      position: before.events.length,
      state: before.state,
    })
    await settled()
    screen.say.events({ service: LUNCH, events: events.slice(before.events.length) })
    expect(screen.client.view()).toMatchObject({ position: last, state })
    expect(screen.follows).toHaveLength(1)
  })

  it('[Y2] ignores a snapshot that was overtaken, and takes one of a server that is behind what it asked from', async () => {
    const screen = await liveScreen()
    screen.say.pulse(pulse(last + 1))
    const older = given()
    const asked = lastOf(screen.follows)
    expect(asked.message.position).toBe(last)
    asked.reply({ kind: 'snapshot', position: older.events.length, state: older.state })
    await settled()
    expect(screen.client.view()).toMatchObject({
      position: older.events.length,
      state: older.state,
    })

    const other = createScreen()
    other.say.welcome(welcomeTo(LUNCH))
    other.say.events({ service: LUNCH, events })
    lastOf(other.follows).reply({
      kind: 'snapshot',
      position: older.events.length,
      state: older.state,
    })
    await settled()
    expect(other.client.view().position).toBe(last)
  })

  it('[Y3] ignores what it has already, and what another service says', async () => {
    const screen = await liveScreen()
    const before = screen.client.view().state
    screen.say.events({ service: LUNCH, events: events.slice(-3) })
    screen.say.events({
      service: DINNER,
      events: [{ type: 'clockConfirmed', position: last + 1, at: 0, command: null }],
    })
    expect(screen.client.view().state).toBe(before)
    expect(screen.follows).toHaveLength(1)
  })

  it('[Y4] follows again where something is missing, from where it is', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).reply({ kind: 'events', events: events.slice(0, 4) })
    await settled()
    screen.say.events({ service: LUNCH, events: events.slice(6) })
    expect(screen.client.view().position).toBe(4)
    expect(lastOf(screen.follows).message).toEqual({ service: LUNCH, position: 4 })
    lastOf(screen.follows).reply({ kind: 'events', events: events.slice(4) })
    await settled()
    expect(screen.client.view()).toMatchObject({ position: last, state })
    expect(screen.follows).toHaveLength(2)
  })

  it('[Y4] follows again at once where something newer came while it was asking', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    screen.say.events({ service: LUNCH, events: events.slice(5) })
    expect(screen.follows).toHaveLength(1)
    lastOf(screen.follows).reply({ kind: 'events', events: events.slice(0, 5) })
    await settled()
    expect(lastOf(screen.follows).message.position).toBe(5)
  })

  it('[Y4] that is answered with a gap asks again a while later, not at once', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).reply({ kind: 'events', events: events.slice(3) })
    await settled()
    expect(screen.follows).toHaveLength(1)
    screen.timers.pass()
    expect(screen.follows).toHaveLength(2)
  })

  it('[Y5] follows again where a pulse tells of something newer', async () => {
    const screen = await liveScreen()
    screen.say.pulse(pulse(last))
    expect(screen.follows).toHaveLength(1)
    screen.say.pulse(pulse(last + 1))
    expect(lastOf(screen.follows).message).toEqual({ service: LUNCH, position: last })
  })

  it.each([
    ['fails', (screen: Screen) => lastOf(screen.follows).fail()],
    ['finds the server busy', (screen: Screen) => lastOf(screen.follows).reply({ kind: 'busy' })],
  ])('[Y6] asks again when following %s', async (_, goWrong) => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    goWrong(screen)
    await settled()
    expect(screen.client.view().link).toBe('connecting')
    expect(screen.timers.waiting()).toBe(1)
    screen.timers.pass()
    expect(screen.follows).toHaveLength(2)
    lastOf(screen.follows).reply({ kind: 'events', events })
    await settled()
    expect(screen.client.view().link).toBe('live')
    expect(screen.timers.waiting()).toBe(0)
  })

  it('[Y6] asks again after it was lost, when the first question of the new connection fails', async () => {
    const screen = await liveScreen()
    screen.say.lost()
    screen.say.welcome(welcomeTo(LUNCH))
    lastOf(screen.follows).fail()
    await settled()
    screen.timers.pass()
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    expect(screen.client.view().link).toBe('live')
  })

  it('[Y6] is woken by a pulse where it is not live, though nothing is newer', async () => {
    const screen = await liveScreen()
    screen.say.lost()
    screen.say.pulse(pulse(last))
    expect(screen.follows).toHaveLength(2)
  })

  it('[Y7] begins anew where what comes does not fit what it has', async () => {
    const screen = await liveScreen()
    screen.say.events({
      service: LUNCH,
      events: [
        { type: 'buildStarted', ticket: 77, letter: 'A', position: last + 1, at: 0, command: 'x' },
      ],
    })
    expect(lastOf(screen.follows).message.position).toBe(0)
    lastOf(screen.follows).reply({ kind: 'snapshot', position: last, state })
    await settled()
    expect(screen.client.view()).toMatchObject({ position: last, link: 'live' })
  })
})

describe('a screen whose connection is lost', () => {
  it('[Y8] says so, keeps what it shows, and follows from there when it is back', async () => {
    const screen = await liveScreen()
    screen.say.lost()
    expect(screen.client.view()).toMatchObject({ link: 'lost', position: last, state })
    screen.say.welcome(welcomeTo(LUNCH))
    expect(lastOf(screen.follows).message).toEqual({ service: LUNCH, position: last })
  })

  it('[Y8] does not wait for what it asked over the old connection', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    const old = lastOf(screen.follows)
    screen.say.lost()
    screen.say.welcome(welcomeTo(LUNCH))
    expect(screen.follows).toHaveLength(2)
    old.fail()
    await settled()
    expect(screen.timers.waiting()).toBe(0)
    lastOf(screen.follows).reply({ kind: 'events', events })
    await settled()
    expect(screen.client.view()).toMatchObject({ link: 'live', position: last })
  })

  it('[Y8] is not live by a reply that came over the old connection', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    screen.say.lost()
    lastOf(screen.follows).reply({ kind: 'events', events })
    await settled()
    expect(screen.client.view()).toMatchObject({ link: 'lost', position: 0 })
  })

  it('[Y9] keeps what is commanded meanwhile, and sends it when it is live again', async () => {
    const screen = await liveScreen()
    screen.say.lost()
    void screen.client.send(close)
    expect(screen.commands).toHaveLength(0)
    expect(screen.client.view().pending).toEqual([{ id: 'c-1', service: LUNCH, command: close }])
    screen.say.welcome(welcomeTo(LUNCH))
    expect(screen.commands).toHaveLength(0)
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    expect(screen.commands.map((one) => one.message)).toEqual([
      { protocol: PROTOCOL, id: 'c-1', service: LUNCH, command: close },
    ])
  })
})
