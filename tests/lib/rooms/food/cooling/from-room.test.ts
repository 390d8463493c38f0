import { describe, expect, it } from 'vitest'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { at, minute, read, until, whenAt } from '#tests/support/food.ts'
import { codeOf, type Given, given, running, type Told } from '#tests/support/service.ts'

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

const mixedOf = (loads: number) => at(given(), 1, start(0, loads), finish(1, { loads: 1 }))
