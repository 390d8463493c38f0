import { describe, expect, it } from 'vitest'
import { isRunning } from '#lib/service/state.ts'
import { fallDue, nextDue } from '#lib/spine/due.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { evolveOpen } from '#lib/spine/evolve-open.ts'
import { fahrenheit, read } from '#tests/support/food.ts'
import { OPEN_PLANNED, PLAN, plannedService, RICE } from '#tests/support/plans.ts'
import {
  codeOf,
  eventsOf,
  type Given,
  NOTHING,
  OPENED_AT,
  onward,
  running,
  when,
} from '#tests/support/service.ts'

const HOUR = 3_600_000
const ELEVEN = Date.parse('2026-11-26T17:00:00Z')

const cooked: Given[] = [
  RICE,
  {
    type: 'recordCooking',
    batch: 'b1',
    reading: { ...fahrenheit(166), heldSeconds: 15 },
    initials: 'KT',
  },
  { type: 'finishBatch', batch: 'b1', amount: 4_000_000, preparedOn: '2026-11-25' },
]
const cooling: Given = {
  type: 'recordCooling',
  batch: 'b1',
  ...read(150),
  presentUntil: OPENED_AT + 8 * HOUR,
}
const morning = { now: ELEVEN - 30 * 60_000 }

describe('a service that is planned', () => {
  it('[PL1] says when its doors open and close, and what is expected', () => {
    const { state } = plannedService()
    expect(state).toMatchObject({
      stage: 'planned',
      kind: 'real',
      service: 's-lunch',
      expected: 60,
      closesAt: Date.parse('2026-11-26T19:00:00Z'),
      openedAt: ELEVEN,
      openedMinute: 660,
      at: OPENED_AT,
      position: 1,
    })
    expect(state.plan).toMatchObject({ on: '2026-11-26', doorsOpen: '11:00', opensAt: ELEVEN })
  })

  it('[PL9] knows its crew by number, and the day that they are there', () => {
    expect(plannedService().state.plan?.crew).toEqual([
      { id: 'c1', adult: true, on: '2026-11-26', from: '07:00', to: '14:00' },
      { id: 'c2', adult: false, on: '2026-11-25', from: '13:00', to: '16:00' },
    ])
  })

  it('[PL1] takes what is prepared, and no order', () => {
    const told = plannedService(...cooked)
    expect(told.state.batches.b1).toMatchObject({ cooked: true, amount: 4_000_000 })
    const refused: Given[] = [
      { type: 'load', pan: 'pan-rice', amount: 1, batch: 'b1' },
      { type: 'wantedGone', item: 'harbor-tuna' },
      { type: 'setDay', assemblers: 2 },
      { type: 'close' },
    ]
    for (const command of refused) expect(codeOf(when(told, command))).toBe('service-not-open')
  })

  it('[PL4] that is planned again keeps what was prepared', () => {
    const before = running(plannedService(...cooked, cooling))
    const after = running(plannedService(...cooked, cooling, { ...PLAN, doorsOpen: '11:30' }))
    expect(after.plan?.doorsOpen).toBe('11:30')
    expect(after.openedMinute).toBe(690)
    expect(after.batches).toEqual(before.batches)
    expect(codeOf(when(plannedService(), PLAN))).toBe('already-so')
  })

  it('[PL8] opens with the guests and the closing of its plan, and without what it doesn’t sell', () => {
    const plan = { ...PLAN, items: ['harbor-tuna'], kind: 'practice' as const }
    const told = onward(NOTHING, plan)
    const [opened] = eventsOf(when(told, OPEN_PLANNED, morning))
    expect(opened).toMatchObject({
      type: 'serviceOpened',
      kind: 'practice',
      guestsExpected: 60,
      closesAt: Date.parse('2026-11-26T19:00:00Z'),
    })
    const state = onward(told, OPEN_PLANNED).state
    expect(Object.keys(state.notSelling.item).sort()).toEqual(['bean-and-pepper', 'garden-chicken'])
    expect(state).toMatchObject({ stage: 'open', kind: 'practice', plan: told.state.plan })
    const said = { ...OPEN_PLANNED, guestsExpected: 12, closesAt: '12:30' }
    expect(eventsOf(when(told, said, morning))[0]).toMatchObject({
      guestsExpected: 12,
      closesAt: Date.parse('2026-11-26T18:30:00Z'),
    })
  })

  it('[PL4] opens with all that was prepared: what was cooked the day before is loaded', () => {
    const told = plannedService(...cooked, { ...cooling })
    const open = onward(told, OPEN_PLANNED)
    expect(running(open).batches).toEqual(running(told).batches)
    expect(running(open).probes).toEqual(running(told).probes)
    const loaded = onward(plannedService(...cooked), OPEN_PLANNED, {
      type: 'load',
      pan: 'pan-rice',
      amount: 1_000_000,
      batch: 'b1',
      ...read(150),
    })
    expect(loaded.state.pans['pan-rice']?.amount).toBe(1_000_000)
    expect(loaded.state.batches.b1?.loaded).toBe(1_000_000)
  })

  it('[PL6] is dropped once no food is left in it, and then nothing happens in it', () => {
    const thrownOut: Given = {
      type: 'throwOut',
      what: 'batch',
      id: 'b1',
      reason: 'quality',
      initials: 'KT',
    }
    expect(codeOf(when(plannedService(...cooked), { type: 'dropPlan' }))).toBe('food-unanswered')
    const dropped = plannedService(...cooked, thrownOut, { type: 'dropPlan' })
    expect(dropped.state).toMatchObject({ stage: 'closed', closedAt: dropped.state.at })
    expect(codeOf(when(dropped, RICE))).toBe('service-closed')
    expect(codeOf(when(dropped, OPEN_PLANNED))).toBe('service-closed')
    expect(nextDue(dropped.state)).toBeNull()
  })

  it('[PL7] has things fall due as an open one: a cooling that nobody read', () => {
    const { state, events } = plannedService(...cooked, cooling)
    const due = nextDue(state)
    expect(due).not.toBeNull()
    const led = fallDue(state, OPENED_AT + 12 * HOUR, events.length)
    expect(led.recorded.map(({ type }) => type)).toContain('coolingMissed')
    expect(led.state.batches.b1?.offSale?.why).toBe('cooling-missed')
  })

  it('[PL1] is folded whole by evolve, and begun anew by screens that know of no plan', () => {
    const { state, events } = plannedService(...cooked)
    expect(events.reduce(evolve, NOTHING.state)).toEqual(state)
    const [first, second] = events
    if (!first || !second || !isRunning(state)) throw new Error('nothing happened')
    expect(() => evolveOpen(NOTHING.state, first)).toThrow('before the service opened')
    expect(() => evolveOpen(state, second)).toThrow('batchStarted')
    expect(() => evolve(onward(NOTHING, OPEN_PLANNED).state, { ...first, position: 2 })).toThrow(
      'isn’t planned',
    )
  })
})
