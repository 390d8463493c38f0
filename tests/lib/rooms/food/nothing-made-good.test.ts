/** What doesn't make good that nobody knows how food was kept. */
import { describe, expect, it } from 'vitest'
import { batchSteps } from '#lib/rooms/food/views/batch-steps.ts'
import { at, cooledBefore, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  type Given,
  given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

const quiet = (told: Told): Told => ({ ...told, state: { ...running(told), rushes: [] } })
const chicken = (count: number) => ofPortions('chicken', count)
const tuna = (count: number) => ofPortions('tuna', count)
const of = ({ state }: Told) => state.batches.b1
const offSale = (told: Told) => of(told)?.offSale?.why ?? null

const heat = (type: 'cook' | 'reheat', degrees: number, minutes: number): Given => {
  const told = {
    batch: 'b1',
    reading: { ...fahrenheit(degrees, { at: minute(minutes) }), heldSeconds: 20 },
    initials: 'KT',
  }
  return type === 'cook'
    ? { type: 'recordCooking', ...told }
    : { type: 'recordReheating', place: 'range', startedAt: minute(minutes - 10), ...told }
}
const cookedAt = (minutes: number, loads = 1): readonly Given[] => [
  { type: 'startBatch', component: 'chicken', loads, startedAt: minute(minutes - 40) },
  heat('cook', 168, minutes),
  {
    type: 'finishBatch',
    batch: 'b1',
    amount: chicken(40),
    finishedAt: minute(minutes),
    ...(loads > 1 ? { loads: 1 } : {}),
  },
]
const cutAt = (minutes: number, startedAt = minutes): readonly Given[] => [
  { type: 'startBatch', component: 'tuna', loads: 1, startedAt: minute(startedAt) },
  { type: 'finishBatch', batch: 'b1', amount: tuna(40), finishedAt: minute(minutes) },
]
const readBatch = (degrees: number): Given => ({
  type: 'readTemperature',
  what: 'batch',
  id: 'b1',
  ...read(degrees),
})
const clock = (over: Partial<Extract<Given, { type: 'startTimeClock' }>>): Given => ({
  type: 'startTimeClock',
  what: 'batch',
  id: 'b1',
  leftAt: minute(5),
  from: 'hot',
  rule: '4h',
  ...read(150),
  ...over,
})
const load: Given = {
  type: 'load',
  pan: 'pan-chicken',
  amount: chicken(20),
  batch: 'b1',
  ...read(150),
}
const open = quiet(openedService())

describe('food that nobody read for hours', () => {
  it.each([
    ['hot', cookedAt(0), 150],
    ['cold', cutAt(0), 39],
  ] as const)(
    '[B14][B28] a %s batch stays off sale, however often it is read',
    (_, made, degrees) => {
      let told = until(at(open, 1, ...made), 400)
      expect(offSale(told)).toBe('reading-missed')
      for (const minutes of [400, 401, 402]) {
        told = at(told, minutes, readBatch(degrees))
        expect(offSale(told)).toBe('reading-missed')
      }
      const put = { ...load, pan: `pan-${of(told)?.component}`, ...read(degrees) } as Given
      expect(refusalOf(whenAt(told, 403, put))).toMatchObject({ problem: { code: 'off-sale' } })
    },
  )

  it('[B14][B28] neither is it found good where it was told late, and read twice', () => {
    const late = at(open, 1, ...cookedAt(-390))
    const twice = at(at(late, 5, readBatch(150)), 6, readBatch(150))
    expect(of(twice)?.offSale).toMatchObject({ why: 'reading-missed', lastGoodAt: minute(-390) })
  })

  it('[B14] a pan stays off sale too, and within 4 hours the second reading lifts as the first', () => {
    const pan: Given = { type: 'readTemperature', what: 'pan', id: 'pan-chicken', ...read(150) }
    const twice = at(at(until(quiet(given()), 400), 400, pan), 401, pan)
    expect(twice.state.pans['pan-chicken']?.offSale).not.toBeNull()
    const soon = at(until(at(open, 1, ...cookedAt(0)), 130), 130, readBatch(150))
    expect(offSale(soon)).toBeNull()
  })

  it('[B15] begins no clock: the reading takes it off sale instead', () => {
    const late = at(open, 1, ...cookedAt(-390))
    const tried = whenAt(late, 5, clock({}))
    expect(refusalOf(tried)).toEqual({ code: 'off-sale', component: 'chicken' })
    expect('also' in tried ? tried.also : []).toMatchObject([
      { type: 'temperatureRead', what: 'batch', id: 'b1', inLimits: true },
      { type: 'takenOffSale', why: 'reading-missed', lastGoodAt: minute(-390) },
    ])
    const soon = at(open, 1, ...cookedAt(-150))
    expect(codeOf(whenAt(soon, 5, clock({})))).toBeNull()
  })

  it('[B19] begins no cooling either', () => {
    const cool: Given = {
      type: 'recordCooling',
      batch: 'b1',
      ...read(140),
      presentUntil: minute(500),
    }
    const late = at(open, 1, ...cookedAt(-390))
    expect(refusalOf(whenAt(late, 5, cool))).toEqual({ code: 'off-sale', component: 'chicken' })
    expect(codeOf(whenAt(at(open, 1, ...cookedAt(-60)), 5, cool))).toBeNull()
  })

  it('[B15] cut food runs from when it was cut, and not from later', () => {
    const cut = at(open, 1, ...cutAt(-180, -200))
    const room = (leftAt: number) =>
      codeOf(
        whenAt(
          cut,
          2,
          clock({ leftAt: minute(leftAt), from: 'room', rule: '4h-cool', ...read(69) }),
        ),
      )
    expect([room(2), room(-179)]).toEqual(['cannot-start-clock', 'cannot-start-clock'])
    expect([room(-180), room(-190)]).toEqual([null, null])
    const begun = at(open, 1, cutAt(0, -30)[0] as Given)
    const from = (leftAt: number) =>
      codeOf(
        whenAt(
          begun,
          2,
          clock({ leftAt: minute(leftAt), from: 'room', rule: '4h-cool', ...read(69) }),
        ),
      )
    expect([from(-29), from(-30)]).toEqual(['cannot-start-clock', null])
  })
})

describe('cooking and reheating', () => {
  const hot = at(open, 1, ...cookedAt(0))

  it('[B36] are no readings of hot food that waits, on sale or off it', () => {
    expect(codeOf(whenAt(hot, 110, heat('cook', 168, 110)))).toBe('already-so')
    expect(codeOf(whenAt(hot, 110, heat('cook', 105, 110)))).toBe('already-so')
    expect(refusalOf(whenAt(hot, 110, heat('reheat', 168, 110)))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'not-cooled' },
    })
    const missed = until(hot, 121)
    for (const type of ['cook', 'reheat'] as const)
      expect(codeOf(whenAt(missed, 130, heat(type, 168, 130)))).toBe('off-sale')
    expect(batchSteps(running(hot), 'b1')).not.toContain('reheat')
  })

  it('[B36] what is read of the next load, or doesn’t reach its limit, is no reading of what waits', () => {
    const two = at(open, 1, ...cookedAt(0, 2))
    for (const degrees of [168, 120]) {
      const next = at(two, 110, heat('cook', degrees, 110))
      expect(codeOf(whenAt(next, 119, load))).toBeNull()
      expect(of(until(next, 119))?.offSale).toBeNull()
      expect(of(until(next, 120))?.offSale).toMatchObject({ lastGoodAt: minute(0) })
    }
    const [start, , finish] = cookedAt(0) as [Given, Given, Given]
    const early = at(open, 1, start, heat('cook', 168, -10), heat('cook', 105, 0), finish)
    expect(offSale(until(early, 109))).toBeNull()
    expect(of(until(early, 110))?.offSale).toMatchObject({ lastGoodAt: minute(-10) })
  })

  it('[B36] reheated once it is hot, and reheated no more while it waits', () => {
    const cold = at(open, 1, ...cooledBefore('b1', 'chicken'))
    expect(batchSteps(running(cold), 'b1')).toContain('reheat')
    const again = at(cold, 20, heat('reheat', 168, 20))
    expect(batchSteps(running(again), 'b1')).not.toContain('reheat')
    expect(codeOf(whenAt(again, 100, heat('reheat', 105, 100)))).toBe('already-so')
  })
})

describe('food over midnight', () => {
  it('[B30] cut before it and loaded after, it carries the day on which it was cut', () => {
    const late = 13 * 60 + 30
    const told = at(open, late, ...cutAt(late))
    const put: Given = { type: 'load', pan: 'pan-tuna', amount: tuna(20), batch: 'b1', ...read(38) }
    const foodOf = (told: Told) => told.state.pans['pan-tuna']?.food
    const after = foodOf(at(told, late + 50, put))
    expect(after).toMatchObject({ dateMark: { lastDay: '2026-12-01' } })
    expect(after).not.toHaveProperty('dayEndsAt')
    const before = foodOf(at(told, late + 20, put))
    expect(before).toMatchObject({ dateMark: null, dayEndsAt: minute(14 * 60) })
    const said = foodOf(at(told, late + 50, { ...put, preparedOn: '2026-11-24' } as Given))
    expect(said).toMatchObject({ dateMark: { lastDay: '2026-11-30' } })
  })
})

describe('a back-up pan on the 6-hour rule', () => {
  it('[B15][B8] takes its last reading along to the line', () => {
    const ready = at(
      open,
      1,
      ...cutAt(0, -10),
      readBatch(38),
      clock({ leftAt: minute(1), from: 'cold', rule: '6h', ...read(38) }),
    )
    const backup = at(ready, 2, {
      type: 'setBackup',
      component: 'tuna',
      backup: 'back-up-tuna',
      ready: true,
      amount: tuna(20),
      batch: 'b1',
      heldBy: 'time',
    })
    const readAt = (told: Told, minutes: number) =>
      at(told, minutes, {
        type: 'readTemperature',
        what: 'backup',
        id: 'back-up-tuna',
        ...read(50),
      })
    const put: Given = { type: 'changePan', pan: 'pan-tuna', from: 'back-up-tuna' }
    const line = at(readAt(readAt(backup, 50), 100), 101, put)
    expect(until(line, 159).state.pans['pan-tuna']?.offSale).toBeNull()
    expect(until(line, 160).state.pans['pan-tuna']?.offSale).toMatchObject({
      why: 'monitoring-missed',
      lastGoodAt: minute(100),
    })
  })
})
