import { describe, expect, test, vi } from 'vitest'
import { CREW, type CrewRole, isSent, sightOf } from '#lib/access/seen/classes.ts'
import { project, projectForecast, projectState } from '#lib/access/seen/project.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { EventsMessage, Followed } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { usual } from '#tests/support/orders.ts'
import { settle } from '#tests/support/rail-room.ts'
import { connectScreen, createSocketRoom, type Screen } from '#tests/support/socket-room.ts'

/** An order with something of every class that a screen may not be sent. */
const PRIVATE: Command = {
  type: 'send',
  builds: [
    {
      ...usual('harbor-tuna'),
      base: 'rice',
      parts: { cheddar: { placement: 'no', portions: 0, because: 'need' } },
      asked: 'needs',
      needs: [{ code: 'peanut', handling: 'leave-out', reason: 'faith' }],
    },
  ],
  paid: true,
  readBack: true,
  name: 'Ada',
}

const SIGNED: Command = {
  type: 'throwOut',
  what: 'pan',
  id: 'pan-cheddar',
  reason: 'quality',
  initials: 'QXZ',
}

const FORECAST: StationForecast = {
  service: 's-lunch',
  position: 12,
  at: 1,
  closesAt: 2,
  closesSaid: false,
  rushUntil: null,
  components: {},
  wait: null,
  candidates: [
    {
      key: 'measure/rice',
      kind: 'measure',
      saves: 98_765,
      reason: { why: 'measure', component: 'rice', chance: 0.5, left: 3, sd: 1, lookedAt: 1 },
    },
  ],
  doNext: [],
}

const heardAll = async (screen: Screen): Promise<void> => {
  await settle()
  await screen.socket.timeout(5_000).emitWithAck('command', null)
}

const eventsOf = (screen: Screen, followed: Followed): readonly Recorded[] => [
  ...(followed.kind === 'events' ? followed.events : []),
  ...(screen.of('events') as EventsMessage[]).flatMap(({ events }) => events),
]

describe('over the wire', () => {
  test.each(CREW)('[V7] to %s goes what its role is sent, and nothing else', async (role) => {
    const { url, services, forecast } = await createSocketRoom()
    const screen = await connectScreen(url, role)
    const lead = await connectScreen(url, 'lead')
    const followed = await screen.follow(0)
    expect(await lead.give('order', PRIVATE)).toMatchObject({ answer: 'accepted' })
    expect(await lead.give('thrown-out', SIGNED)).toMatchObject({ answer: 'accepted' })
    forecast(FORECAST)
    await heardAll(screen)
    const late = await connectScreen(url, role)
    const again = await late.follow(0)
    const snapshot = await late.follow(9_999)
    await heardAll(late)

    const rail = services.current('alder-hall')
    const log = rail?.eventsAfter(0) ?? []
    const state = rail?.state() ?? NOT_OPENED
    expect(log.length).toBeGreaterThan(12)
    const events = log.map((event) => project(role, event))
    expect(eventsOf(screen, followed)).toEqual(events)
    expect(again).toEqual({ kind: 'events', events })
    expect(snapshot).toEqual({
      kind: 'snapshot',
      position: state.position,
      state: projectState(role, state),
    })
    expect(stateHash(eventsOf(screen, followed).reduce(evolve, NOT_OPENED))).toBe(
      stateHash(projectState(role, state)),
    )
    const told = { service: 's-lunch', forecast: projectForecast(role, FORECAST) }
    expect([...screen.of('forecast'), ...late.of('forecast')]).toEqual([told, told, told])

    const all = JSON.stringify([followed, screen.heard, again, snapshot, late.heard])
    expect(all).toContain('peanut')
    expect(all.includes('Ada')).toBe(isSent(role, 'name'))
    expect(all.includes('"named":true')).toBe(isSent(role, 'name'))
    expect(all.includes('"paid":true')).toBe(isSent(role, 'money'))
    expect(all.includes('98765')).toBe(isSent(role, 'cost'))
    expect(all.includes('QXZ')).toBe(false)
    expect(all.includes('faith')).toBe(false)
  })

  test('[V7] whoever follows another service is told of the one before no more', async () => {
    const { url } = await createSocketRoom()
    const screen = await connectScreen(url, 'lead')
    await screen.follow()
    await screen.give('close', { type: 'close' })
    await screen.give(
      'open-2',
      { type: 'open', station: 'alder-hall', kind: 'real' },
      {
        service: 's-supper',
      },
    )
    await screen.follow(0, 's-supper')
    const before = screen.of('events').length
    await screen.give('pay', { type: 'pay', ticket: 1, paid: true })
    await heardAll(screen)
    expect(screen.of('events')).toHaveLength(before)
  })

  test('[V5] forty screens cost no more than one of each that is sent the same', async () => {
    const { url, services } = await createSocketRoom()
    const screens = await Promise.all(
      Array.from({ length: 20 }, (_, index) =>
        connectScreen(url, CREW[index % CREW.length] as CrewRole),
      ),
    )
    await Promise.all(screens.map((screen) => screen.follow()))
    const [first] = screens
    if (!first) throw new Error('no screens')
    const written = vi.spyOn(JSON, 'stringify')
    const lead = await connectScreen(url, 'lead')
    written.mockClear()
    await lead.give('order', PRIVATE)
    await Promise.all(screens.map(heardAll))
    const packets = written.mock.calls.filter(
      ([value]) => Array.isArray(value) && value[0] === 'events',
    ).length
    written.mockRestore()
    const sights = new Set(CREW.map(sightOf)).size
    expect(packets).toBe(sights)
    expect(services.current('alder-hall')?.position()).toBe(12)
  })
})
