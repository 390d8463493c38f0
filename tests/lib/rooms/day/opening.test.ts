import { describe, expect, it } from 'vitest'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { nextDue } from '#lib/spine/due.ts'
import { withoutReaders } from '#lib/station/label.ts'
import { due } from '#tests/support/due.ts'
import { readAll } from '#tests/support/food.ts'
import {
  at,
  changePan,
  choose,
  circumstances,
  codeOf,
  cookedService,
  demoStation,
  eventsOf,
  type Given,
  given,
  happening,
  load,
  NOTHING,
  OPENED_AT,
  onward,
  openedService,
  portions,
  refusalOf,
  running,
  send,
  when,
} from '#tests/support/service.ts'

const open: Given = { type: 'open', station: 'alder-hall', kind: 'real' }
const openDemo: Given = { ...open, kind: 'demo' }
const HOUR = 3_600_000
const jumped = (byMs: number): ServiceEvent => ({ type: 'clockJumped', byMs })

const EVERY_OTHER: readonly Given[] = [
  load('pan-rice', 101_000),
  changePan('pan-rice', 101_000),
  { type: 'correct', pan: 'pan-rice', amount: 0 },
  send(choose('garden-chicken')),
  { type: 'change', readBack: true, ...at('1A'), to: choose('garden-chicken') },
  { type: 'cancel', ...at('1A') },
  { type: 'acknowledge', ...at('1A'), foodInIt: false },
  { type: 'start', ...at('1A') },
  { type: 'finish', ...at('1A') },
  { type: 'takeBack', ...at('1A'), made: false },
  { type: 'remake', ...at('1A') },
  { type: 'handOver', ...at('1A') },
  { type: 'pay', ticket: 1, paid: true },
  { type: 'stopSelling', what: 'component', id: 'rice' },
  { type: 'resumeSelling', what: 'component', id: 'rice' },
  { type: 'confirmClock' },
  { type: 'close' },
]

describe('a service that is not opened', () => {
  it('[S1] is opened from the newest document of its station, of which the event keeps a copy', () => {
    expect(eventsOf(when(NOTHING, open))).toMatchObject([
      {
        type: 'serviceOpened',
        service: 's-lunch',
        kind: 'real',
        revision: 3,
        station: withoutReaders(demoStation),
        portions,
        closesItselfAt: null,
      },
    ])
    const { state } = openedService()
    expect(state).toMatchObject({ stage: 'open', nextTicket: 1, openedAt: OPENED_AT, revision: 3 })
    expect(Object.keys(state.pans)).toHaveLength(10)
    expect(Object.keys(state.accounts)).toHaveLength(10)
  })

  it('[S2] is not opened for a station that nobody knows', () => {
    expect(refusalOf(when(NOTHING, { ...open, station: 'birch-hall' }))).toEqual({
      code: 'unknown',
      what: 'station',
      id: 'birch-hall',
    })
  })

  it('[S3] is not opened while the station has another that is open', () => {
    expect(codeOf(when(NOTHING, open, { otherIsOpen: true }))).toBe('service-already-open')
  })

  it.each(EVERY_OTHER)('[S4] takes no $type', (command) => {
    expect(refusalOf(when(NOTHING, command))).toEqual({ code: 'service-not-open' })
  })
})

describe('an open service', () => {
  it('[S3] is opened once', () => {
    expect(codeOf(when(openedService(), open))).toBe('service-already-open')
  })

  it('[S5] is closed by hand when no guest stands any more', () => {
    const handed = given(
      send(choose('garden-chicken'), choose('harbor-tuna')),
      ...(['start', 'finish', 'handOver'] as const).map((type): Given => ({ type, ...at('1A') })),
    )
    expect(refusalOf(when(handed, { type: 'close' }))).toEqual({ code: 'builds-open', count: 1 })
    const cancelled = onward(handed, { type: 'cancel', ...at('1B') })
    expect(eventsOf(when(cancelled, { type: 'close' }))).toEqual([
      { type: 'serviceClosed', why: 'by-hand' },
    ])
    expect(onward(cancelled, { type: 'close' }).state).toMatchObject({ stage: 'closed' })
  })

  it.each(['waiting', 'making', 'made'])('[S5] is not closed while a build is %s', (state) => {
    const steps: Given[] = [
      { type: 'start', ...at('1A') },
      { type: 'finish', ...at('1A') },
    ]
    const told = given(
      send(choose('harbor-tuna')),
      ...steps.slice(0, ['waiting', 'making', 'made'].indexOf(state)),
    )
    expect(codeOf(when(told, { type: 'close' }))).toBe('builds-open')
  })
})

describe('a closed service', () => {
  const closed = given({ type: 'close' })

  it.each([open, ...EVERY_OTHER.filter(({ type }) => type !== 'pay')])(
    '[S6] takes no $type',
    (command) => {
      expect(refusalOf(when(closed, command))).toEqual({ code: 'service-closed' })
    },
  )

  it('[S6] lets nothing happen to it', () => {
    expect(() => happening(closed, [{ type: 'clockConfirmed' }])).toThrow(
      'after the service closed',
    )
  })
})

describe('a demo service', () => {
  const opened = (now: string) => {
    const at = Date.parse(now)
    const events = eventsOf(when(NOTHING, openDemo, circumstances({ now: at })))
    return happening(NOTHING, events)
  }
  const closesAt = (now: string) => {
    const next = nextDue(opened(now).state)
    return next === null ? null : new Date(next).toISOString()
  }

  it('[S7] that was left open closes itself when the next day starts at its station', () => {
    expect(closesAt('2026-11-25T16:00:00Z')).toBe('2026-11-26T06:00:00.000Z')
    expect(closesAt('2026-11-26T02:00:00Z')).toBe('2026-11-26T06:00:00.000Z')
    // The days on which the US clocks change have 23 and 25 hours.
    expect(closesAt('2026-03-08T06:30:00Z')).toBe('2026-03-09T05:00:00.000Z')
    expect(closesAt('2026-11-01T05:30:00Z')).toBe('2026-11-02T06:00:00.000Z')
  })

  it('[S7] is closed by what falls due, with the moment at which it did, and once', () => {
    const { state } = opened('2026-11-25T16:00:00Z')
    const midnight = Date.parse('2026-11-26T06:00:00Z')
    expect(due(state, midnight - 1)).toEqual([])
    const fallen = due(state, midnight + 9 * HOUR)
    expect(fallen).toEqual([
      { due: midnight, event: { type: 'serviceClosed', why: 'demo-left-open' } },
    ])
    const closed = happening(
      { state, events: [] },
      fallen.map((one) => one.event),
      null,
    ).state
    expect(closed.stage).toBe('closed')
    expect(nextDue(closed)).toBeNull()
    expect(due(closed, midnight + 10 * HOUR)).toEqual([])
  })

  it('[S7] closes with guests still standing: nobody is there any more', () => {
    const told = onward(cookedService('demo'), load('pan-rice', 101_000))
    const closed = happening(
      told,
      due(told.state, OPENED_AT + 48 * HOUR).map((one) => one.event),
      null,
    )
    expect(closed.state.stage).toBe('closed')
  })

  it('[S8] a real service never falls due to close', () => {
    expect(nextDue(openedService('real').state)).toBeNull()
    expect(due(openedService('real').state, OPENED_AT + 1_000 * HOUR)).toEqual([])
    expect(nextDue(NOTHING.state)).toBeNull()
  })

  it('[S9] lets nothing fall due by a clock that jumped, until the jump is confirmed', () => {
    const jump = happening(openedService('demo'), [jumped(20 * HOUR)], null)
    expect(jump.state.clockJump).toMatchObject({ byMs: 20 * HOUR })
    expect(nextDue(jump.state)).toBeNull()
    expect(due(jump.state, OPENED_AT + 48 * HOUR)).toEqual([])
    const confirmed = onward(jump, { type: 'confirmClock' })
    expect(confirmed.state.clockJump).toBeNull()
    expect(due(confirmed.state, OPENED_AT + 48 * HOUR)).toHaveLength(1)
  })

  it('[S9] confirms no jump that there was not', () => {
    expect(codeOf(when(openedService('demo'), { type: 'confirmClock' }))).toBe('already-so')
  })

  it('goes on while a jump is not confirmed', () => {
    const jump = happening(given(), [jumped(-2 * HOUR)], null)
    const read = onward(jump, ...readAll(jump))
    expect(running(onward(read, send(choose('harbor-tuna', { cheddar: 'no' })))).nextTicket).toBe(2)
  })
})
