import { describe, expect, it } from 'vitest'
import { roundOf } from '#lib/rooms/food/facts/round.ts'
import { clockHours } from '#lib/rooms/pans/facts/clock-at-load.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, MINUTE, madeBefore, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  demoStation,
  eventsOf,
  type Given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

const FOUR_HOURS = 240 * MINUTE
const slaw = ofPortions('slaw', 4)

/** The demo station, its cold well on time alone, before anything is loaded. */
const timed = (over: Partial<StationDocument['safety']> = {}): Told => {
  const { state, events } = openedService()
  const wells = demoStation.line.wells.map((one) =>
    one.id === 'cold' ? { ...one, held: 'time' as const } : one,
  )
  const station = { ...demoStation, line: { wells }, safety: { ...demoStation.safety, ...over } }
  return { state: { ...state, station }, events }
}
const load = (over: object = {}): Given => ({
  type: 'load',
  pan: 'pan-slaw',
  amount: slaw,
  batch: 'b1',
  ...read(38),
  ...over,
})
const made = (over?: Parameters<typeof timed>[0]): Told =>
  at(timed(over), 0, ...madeBefore('b1', 'slaw'))
const foodIn = (told: Told) => running(told).pans['pan-slaw']?.food

describe('food that is loaded into a well by time alone', () => {
  it('[B43] is on its clock from the reading that it is loaded with, and none is asked for later', () => {
    const told = at(made(), 5, load({ ...read(38, { at: minute(2) }) }))
    expect(foodIn(told)).toMatchObject({
      heldBy: 'time',
      clock: { rule: '4h', startedAt: minute(2), throwOutAt: minute(2) + FOUR_HOURS },
    })
    const asked = roundOf(running(told), minute(120))?.places ?? []
    expect(JSON.stringify(asked)).not.toContain('pan-slaw')
    const passed = until(told, 2 + 240)
    expect(running(passed).toThrowOut).toHaveProperty(['pan/pan-slaw'])
  })

  it('[B43] is refused without that reading, out of limits, and without a procedure', () => {
    const { reading: _, ...unread } = load() as Extract<Given, { type: 'load' }>
    expect(refusalOf(whenAt(made(), 1, unread as Given))).toMatchObject({
      problem: { code: 'no-load-reading' },
    })
    expect(refusalOf(whenAt(made(), 1, load(read(48))))).toMatchObject({
      problem: { code: 'load-out-of-limits' },
    })
    expect(refusalOf(whenAt(made({ timeProcedure: false }), 1, load()))).toEqual({
      code: 'cannot-start-clock',
      why: 'no-procedure',
    })
  })

  it('[B43] lasts as long as the document says', () => {
    const { timeOnly4h } = MODEL_CODE
    const limits = {
      timeOnly4h: { ...timeOnly4h, withinMs: 120 * MINUTE, certainty: 'seen' as const },
    }
    const told = at(made({ limits }), 1, load())
    expect(clockHours(running(told).station)).toBe(2)
    expect(foodIn(told)?.clock?.throwOutAt).toBe(minute(1) + 120 * MINUTE)
  })

  it('[B43] keeps the clock that it has: it left heat or cold then', () => {
    const early = at(made(), 1, {
      type: 'startTimeClock',
      what: 'batch',
      id: 'b1',
      leftAt: minute(0),
      from: 'cold',
      rule: '4h',
      ...read(38, { at: minute(0) }),
    })
    const {
      reading: _r,
      initials: _i,
      ...unread
    } = load({ heldBy: 'time' }) as Extract<Given, { type: 'load' }>
    const told = at(early, 30, unread as Given)
    expect(foodIn(told)?.clock?.startedAt).toBe(minute(0))
  })

  it('[B44] that is added to it is read, gets a clock of its own, and the older one binds both', () => {
    const first = at(made(), 1, load())
    const more = load({ type: 'topUp', amount: ofPortions('slaw', 1) })
    const { reading: _, ...unread } = more as Extract<Given, { type: 'load' }>
    expect(refusalOf(whenAt(first, 60, unread as Given))).toMatchObject({
      problem: { code: 'no-load-reading' },
    })
    expect(foodIn(at(first, 60, more))?.clock?.startedAt).toBe(minute(1))
    // Another pan for it starts anew.
    const changed = at(first, 60, load({ type: 'changePan' }))
    expect(foodIn(changed)?.clock?.startedAt).toBe(minute(60))
  })

  it('[B44] is told by its event, so that the probe that read it is followed', () => {
    const told = made()
    const [event] = eventsOf(whenAt(told, 1, load()))
    expect(event).toMatchObject({ type: 'panLoaded', startsClock: true })
    expect(running(at(told, 1, load())).probes?.['probe 1']).toEqual([
      { component: 'slaw', behind: false },
    ])
    const cold = at(at(openedService(), 0, ...madeBefore('b1', 'slaw')), 1, load())
    expect(foodIn(cold)).toMatchObject({ heldBy: 'cold', clock: null })
    expect(cold.events.at(-1)).not.toHaveProperty('startsClock')
  })
})
