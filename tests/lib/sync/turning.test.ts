import { describe, expect, it } from 'vitest'
import type { PulseMessage } from '#lib/protocol/wire.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { createScreen, settled, welcomeTo } from '#tests/support/crew.ts'
import {
  DINNER,
  events,
  LUNCH,
  last,
  lastOf,
  liveScreen,
  state,
} from '#tests/support/live-screen.ts'

const close: Command = { type: 'close' }
const pulse = (position: number, service: string | null = LUNCH): PulseMessage => ({
  at: 9_000,
  service,
  position,
})

describe('a screen of another service', () => {
  it('[Y17] turns to the service that a pulse names, and begins it anew', async () => {
    const screen = await liveScreen()
    screen.say.guests({ service: LUNCH, names: { 'c-9': 'Kim' } })
    expect(screen.client.view().names).toEqual({ 'c-9': 'Kim' })
    screen.say.pulse(pulse(1, DINNER))
    expect(screen.client.view()).toMatchObject({
      service: DINNER,
      position: 0,
      state: NOT_OPENED,
      names: {},
    })
    expect(lastOf(screen.follows).message).toEqual({ service: DINNER, position: 0 })
    screen.say.guests({ service: LUNCH, names: { 'c-9': 'Kim' } })
    expect(screen.client.view().names).toEqual({})
  })

  it('[G6] forgets a name that the server says is to be forgotten', async () => {
    const screen = await liveScreen()
    screen.say.guests({ service: LUNCH, names: { 'c-9': 'Kim', 'c-8': 'Ada' } })
    screen.say.guests({ service: LUNCH, names: { 'c-9': '' } })
    expect(screen.client.view().names).toEqual({ 'c-8': 'Ada' })
  })

  it('[X8] keeps no names of a service that was closed, also not late ones', async () => {
    const screen = await liveScreen()
    screen.say.guests({ service: LUNCH, names: { 'c-9': 'Kim' } })
    const { position } = screen.client.view()
    const closed = {
      type: 'serviceClosed',
      why: 'by-hand',
      position: position + 1,
      at: 9_000,
      command: 'c-99',
    } as const
    screen.say.events({ service: LUNCH, events: [closed] })
    expect(screen.client.view()).toMatchObject({ state: { stage: 'closed' }, names: {} })
    screen.say.guests({ service: LUNCH, names: { 'c-9': 'Kim' } })
    expect(screen.client.view().names).toEqual({})
  })

  it('[Y17] never folds into it what it had asked of the one before', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    const old = lastOf(screen.follows)
    screen.say.pulse(pulse(1, DINNER))
    old.reply({ kind: 'snapshot', position: last, state })
    await settled()
    expect(screen.client.view()).toMatchObject({ service: DINNER, position: 0, state: NOT_OPENED })
    expect(lastOf(screen.follows).message).toEqual({ service: DINNER, position: 0 })
  })

  it('[Y17] keeps a waiting command for the service that it was for', async () => {
    const screen = await liveScreen()
    screen.say.lost()
    void screen.client.send(close)
    screen.say.welcome(welcomeTo(DINNER))
    lastOf(screen.follows).reply({ kind: 'events', events: [] })
    await settled()
    expect(lastOf(screen.commands).message.service).toBe(LUNCH)
  })
})

describe('the pick-up screen', () => {
  it('[Y18] is sent pictures, asks for no position, and folds nothing', async () => {
    const screen = createScreen({ folds: false })
    screen.say.welcome(welcomeTo(LUNCH))
    expect(lastOf(screen.follows).message).toEqual({ service: LUNCH, position: 0 })
    const picture = { open: true, station: 'Alder Hall lunch line', wells: [], builds: [] }
    lastOf(screen.follows).reply({ kind: 'picture', picture })
    await settled()
    screen.say.events({ service: LUNCH, events })
    screen.say.pulse(pulse(last))
    expect(screen.client.view()).toMatchObject({
      link: 'live',
      picture,
      position: 0,
      state: NOT_OPENED,
    })
    screen.say.picture({ service: DINNER, picture: { ...picture, open: false } })
    expect(screen.client.view().picture?.open).toBe(true)
    screen.say.picture({ service: LUNCH, picture: { ...picture, open: false } })
    expect(screen.client.view().picture?.open).toBe(false)
    expect(screen.follows).toHaveLength(1)
  })
})

describe('a screen that is closed', () => {
  it('[Y19] asks and sends nothing any more, and leaves no timer behind', async () => {
    const screen = await liveScreen()
    void screen.client.send(close)
    void screen.client.send(close)
    for (const asked of screen.commands) asked.fail()
    screen.say.pulse(pulse(last + 1))
    lastOf(screen.follows).fail()
    await settled()
    expect(screen.timers.waiting()).toBe(2)
    screen.client.close()
    expect(screen.timers.waiting()).toBe(0)
    expect(screen.isClosed()).toBe(true)
    screen.say.pulse(pulse(last + 2))
    void screen.client.send(close)
    await settled()
    expect([screen.follows.length, screen.commands.length]).toEqual([2, 2])
  })

  it('[Y19] tells whoever subscribed, until they stop', async () => {
    const screen = await liveScreen()
    let told = 0
    const stop = screen.client.subscribe(() => {
      told += 1
    })
    screen.say.pulse(pulse(last))
    expect(told).toBe(1)
    stop()
    screen.say.pulse(pulse(last))
    expect(told).toBe(1)
  })
})
