import { describe, expect, it } from 'vitest'
import { hoursToStay, stagesFrom } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { componentOf } from '#lib/station/find.ts'
import { at, minute, read, until, whenAt } from '#tests/support/food.ts'
import { codeOf, type Given, given, refusalOf, running, type Told } from '#tests/support/service.ts'

const stays = { presentUntil: minute(600) }
const start = (startedAt: number, loads = 1): Given => ({
  type: 'startBatch',
  batch: 'b1',
  component: 'tuna',
  loads,
  startedAt: minute(startedAt),
})
const finish = (finishedAt: number, more: object = {}): Given => ({
  type: 'finishBatch',
  batch: 'b1',
  amount: 900_000,
  finishedAt: minute(finishedAt),
  ...more,
})
const cooling = (degrees: number, readAt: number): Given => ({
  type: 'recordCooling',
  batch: 'b1',
  ...read(degrees, { at: minute(readAt) }),
  ...stays,
})
const setAside: Given = {
  type: 'endFood',
  what: 'batch',
  id: 'b1',
  end: 'cold',
  amount: 900_000,
  how: 'weighed',
  lot: 'lot-b',
  initials: 'KT',
}
const b1 = (told: Told) => running(told).batches.b1
const off = (told: Told) => b1(told)?.offSale?.why ?? null
const dueAt = (told: Told, minutes: number) => {
  const { station, batches } = running(told)
  const state = batches.b1 && coolingOf(station, batches.b1, minute(minutes))
  return state && 'dueAt' in state ? state.dueAt : null
}

describe('food that is mixed from what stood at room temperature', () => {
  const mixed = at(given(), 1, start(0), finish(1))

  it('[F23] is at 41 °F within 4 hours of when it was made, however late it was first read', () => {
    const first = at(mixed, 119, cooling(65, 119))
    expect(dueAt(first, 119)).toBe(minute(241))
    const cold = at(first, 241, cooling(40, 241))
    expect(off(cold)).toBeNull()
    expect(codeOf(whenAt(cold, 242, setAside))).toBeNull()
    expect(off(until(first, 242))).toBe('cooling-missed')
    expect(codeOf(whenAt(first, 358, cooling(40, 358)))).toBe('off-sale')
    expect(codeOf(whenAt(until(first, 358), 359, setAside))).not.toBeNull()
  })

  it('[F23] [B29] told late it is counted from the moment that is told', () => {
    const told = at(given(), 1, start(-200), finish(-180), cooling(65, 1))
    expect(dueAt(told, 1)).toBe(minute(60))
    expect(off(until(told, 60))).toBeNull()
    expect(off(until(told, 61))).toBe('cooling-missed')
    // Nobody read it in its 4 hours: that it is cold now doesn't show when it became so.
    expect(off(at(given(), 1, start(-300), finish(-270), cooling(40, 1)))).toBe('cooling-missed')
  })

  it('[F23] read before it is finished, it is counted from that reading', () => {
    const early = at(given(), 1, start(-10), cooling(70, 1))
    expect(dueAt(at(early, 30, finish(30)), 31)).toBe(minute(241))
  })

  it('[F23] the first of several loads has waited longest, and a later finish moves nothing', () => {
    const loads = at(mixedOf(2), 60, finish(60, { amount: 1_800_000 }))
    expect(b1(loads)).toMatchObject({ finishedAt: minute(60), firstDone: minute(1) })
    expect(dueAt(at(loads, 90, cooling(65, 90)), 90)).toBe(minute(241))
    const again = at(mixed, 110, finish(100))
    expect(dueAt(at(again, 115, cooling(65, 115)), 115)).toBe(minute(241))
    // The other way round the earlier moment counts, and needs no field of its own.
    const earlier = at(mixed, 20, finish(0))
    expect(b1(earlier)).not.toHaveProperty('firstDone')
    expect(dueAt(at(earlier, 30, cooling(65, 30)), 30)).toBe(minute(240))
  })
})

describe('who stays while it cools', () => {
  const mixed = at(given(), 1, start(0), finish(1))
  const unattended = (degrees: number, readAt: number, more: object = {}): Given => ({
    ...{ type: 'recordCooling', batch: 'b1', ...read(degrees, { at: minute(readAt) }), ...more },
  })
  const until = (minutes: number) => ({ presentUntil: minute(minutes) })

  it('[B80] is asked by the 4 hours from when it was made (3-501.14(B)), and by neither stage of cooked food', () => {
    const refused = (more: object) => refusalOf(whenAt(mixed, 60, unattended(65, 60, more)))
    const by = { code: 'cannot-cool', batch: 'b1', stage: 2, why: 'nobody-there', by: minute(241) }
    expect(refused({})).toEqual(by)
    expect(refused(until(60))).toEqual(by)
    expect(refused(until(61))).toBeNull()
  })

  it('[B80] isn’t asked where nothing is left to read: it is cold in time, or too late', () => {
    expect(codeOf(whenAt(mixed, 60, unattended(41, 60)))).toBeNull()
    expect(off(at(mixed, 60, unattended(41, 60)))).toBeNull()
    const late = at(given(), 1, start(-300), finish(-270), unattended(65, 1))
    expect(off(late)).toBe('cooling-missed')
  })

  it('[B80] proposes the hours to the end of its own last stage', () => {
    const { station, batches } = running(mixed)
    const [tuna, rice] = ['tuna', 'rice'].map((id) => componentOf(station, id))
    if (!tuna || !rice) throw new Error('the demo has both')
    const b1 = batches.b1 ?? null
    const hours = (component: typeof tuna, now: number, readAt = now) =>
      hoursToStay(stagesFrom(station, component, b1, minute(readAt)), minute(now))
    expect(hours(tuna, 1)).toBe(4)
    expect(hours(tuna, 60)).toBe(4)
    expect(hours(tuna, 61)).toBe(3)
    expect(hours(tuna, 300)).toBe(1)
    expect(hours(rice, 60)).toBe(6)
    expect(hours(rice, 120, 60)).toBe(5)
  })

  it('[B80] is asked again at the close, by what is to come, from then on', () => {
    const cools = at(mixed, 60, unattended(65, 60, until(90)))
    const cool = (more: object = {}): Given => ({ ...setAside, end: 'cool', ...more }) as Given
    const refused = (minutes: number, more: object = {}) =>
      refusalOf(whenAt(cools, minutes, cool(more)))
    expect(refused(80)).toBeNull()
    expect(refused(100)).toMatchObject({ code: 'cannot-cool', stage: 2, by: minute(241) })
    expect(refused(100, until(99))).toMatchObject({ code: 'cannot-cool', stage: 2 })
    expect(refused(100, until(240))).toBeNull()
  })
})

const mixedOf = (loads: number) => at(given(), 1, start(0, loads), finish(1, { loads: 1 }))
