import { describe, expect, it } from 'vitest'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { foodTimes } from '#lib/rooms/food/facts/food-times.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { nextDue } from '#lib/spine/due.ts'
import { at, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  eventsOf,
  type Given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

const chicken = (count: number) => ofPortions('chicken', count)
const cook: readonly Given[] = [
  { type: 'startBatch', component: 'chicken', loads: 1, startedAt: minute(-40) },
  {
    type: 'recordCooking',
    batch: 'b1',
    reading: { ...fahrenheit(168, { at: minute(0) }), heldSeconds: 20 },
    initials: 'KT',
  },
  { type: 'finishBatch', batch: 'b1', amount: chicken(24), finishedAt: minute(0) },
]
const readBatch = (degrees: number, over: Parameters<typeof fahrenheit>[1] = {}): Given => ({
  type: 'readTemperature',
  what: 'batch',
  id: 'b1',
  ...read(degrees, over),
})
const load = (over: Partial<Extract<Given, { type: 'load' }>> = {}): Given => ({
  type: 'load',
  pan: 'pan-chicken',
  amount: chicken(20),
  batch: 'b1',
  ...read(150),
  ...over,
})
const resolve = (
  way: 'discard' | 'reheat' | 'time-only',
  over: Partial<Extract<Given, { type: 'resolveOffSale' }>> = {},
): Given => ({ type: 'resolveOffSale', what: 'batch', id: 'b1', way, ...over })
const inCharge = { by: 'in-charge' } as const
const of = ({ state }: Told) => state.batches.b1
const stageAt = (told: Told, minutes: number) =>
  batchPictures(running(told), minute(minutes)).find(({ id }) => id === 'b1')?.stage
/** Of food: the sanitizer is read beside it. */
const keysAt = (told: Told, minutes: number) =>
  safetyDue(running(told), minute(minutes)).flatMap(({ key, reason }) =>
    reason.why === 'safety' && reason.of === 'sanitizer' ? [] : [key],
  )

/** With another interval of reading, and no rush. */
const everyMin = (told: Told, minutes: number): Told => {
  const state = running(told)
  const { safety } = state.station
  const readings = { ...safety.readings, everyMin: minutes }
  return {
    ...told,
    state: {
      ...state,
      rushes: [],
      station: { ...state.station, safety: { ...safety, readings } },
    },
  }
}

const opened = everyMin(openedService(), 120)
const waiting = at(opened, 1, ...cook)

describe('a hot batch that waits', () => {
  it('[B28] is asked for shortly before its reading is due, by the station’s interval', () => {
    expect(nextDue(waiting.state)).toBe(minute(120))
    expect(keysAt(waiting, 109)).toEqual([])
    expect(keysAt(waiting, 110)).toEqual(['safety reading-due batch b1'])
    expect(foodTimes(running(waiting), 'batch', 'b1', minute(111))).toMatchObject({
      readBy: minute(120),
      nextBy: minute(120),
      newest: { at: minute(0) },
    })
    expect([stageAt(waiting, 109), stageAt(waiting, 110)]).toEqual(['ready', 'to-read'])
    const often = at(everyMin(openedService(), 60), 1, ...cook)
    expect(nextDue(often.state)).toBe(minute(60))
  })

  it('[B28][F41] read in limits it is watched anew, and loaded past two hours', () => {
    const told = at(waiting, 115, readBatch(150))
    expect(of(told)?.readings).toHaveLength(1)
    expect(nextDue(told.state)).toBe(minute(235))
    expect(codeOf(whenAt(told, 200, load()))).toBeNull()
    expect(codeOf(whenAt(waiting, 119, load()))).toBeNull()
    expect(refusalOf(whenAt(waiting, 121, load()))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'off-sale' },
    })
  })

  it('[F41] the station’s interval binds the load also while nothing falls due', () => {
    const often = at(everyMin(openedService(), 60), 1, ...cook)
    const jumped = {
      ...often,
      state: { ...often.state, clockJump: { byMs: 90_000, at: minute(2), read: {} } },
    }
    expect(refusalOf(whenAt(jumped, 61, load()))).toMatchObject({
      problem: { code: 'not-watched', since: minute(0) },
    })
  })

  it('[B28] a missed reading takes it off sale; one in limits lifts that within 4 hours', () => {
    const missed = until(waiting, 120)
    expect(missed.events.at(-1)).toMatchObject({
      type: 'readingMissed',
      what: 'batch',
      id: 'b1',
      due: minute(120),
    })
    expect(of(missed)?.offSale).toMatchObject({ why: 'reading-missed', lastGoodAt: minute(0) })
    expect(keysAt(missed, 121)).toEqual(['safety reading-missed batch b1'])
    const lifted = at(missed, 130, readBatch(141))
    expect(of(lifted)?.offSale).toBeNull()
    expect(codeOf(whenAt(lifted, 131, load()))).toBeNull()
    const late = at(missed, 241, readBatch(141))
    expect(of(late)?.offSale).toMatchObject({ why: 'reading-missed' })
    expect(codeOf(whenAt(late, 242, load()))).toBe('cannot-load')
  })

  it('[B14] told after 4 hours lifts only what was read in time', () => {
    const seldom = at(everyMin(openedService(), 240), 1, ...cook)
    const missed = until(seldom, 240)
    expect(of(missed)?.offSale).not.toBeNull()
    expect(of(at(missed, 245, readBatch(141, { at: minute(239) })))?.offSale).toBeNull()
    expect(of(at(missed, 245, readBatch(141, { at: minute(240) })))?.offSale).not.toBeNull()
  })

  it('[B28] out of limits it isn’t loaded before the person in charge resolves it', () => {
    const out = at(waiting, 60, readBatch(120))
    expect(of(out)?.offSale).toMatchObject({ why: 'out-of-limits', lastGoodAt: minute(0) })
    expect(keysAt(out, 61)).toEqual(['safety out-of-limits batch b1'])
    expect(of(at(out, 61, readBatch(150)))?.offSale).not.toBeNull()
    expect(refusalOf(whenAt(out, 62, load()))).toMatchObject({ problem: { code: 'off-sale' } })
    expect(codeOf(whenAt(out, 62, resolve('discard')))).toBe('not-in-charge')
    const heat = {
      place: 'range',
      startedAt: minute(62),
      initials: 'KT',
      reading: { ...fahrenheit(166, { at: minute(70) }), heldSeconds: 15 },
    } as const
    const heated = at(out, 71, resolve('reheat', heat))
    expect(of(heated)).toMatchObject({ offSale: null, cooledAgain: false })
    expect(nextDue(heated.state)).toBe(minute(190))
    expect(codeOf(whenAt(heated, 150, load()))).toBeNull()
    const timed = at(out, 71, resolve('time-only'))
    expect(of(timed)).toMatchObject({ offSale: null, clock: { throwOutAt: minute(240) } })
    expect(codeOf(whenAt(timed, 72, load()))).toBe('cannot-load')
    const away = at(out, 71, resolve('discard'))
    expect(away.state.toThrowOut).toHaveProperty('batch/b1')
    const tooLate = whenAt(out, 200, resolve('reheat', heat), inCharge)
    expect(refusalOf(tooLate)).toEqual({ code: 'way-not-allowed', ways: ['time-only', 'discard'] })
  })

  it('[B28] nothing is asked of less than a portion, nor of what is loaded or thrown out', () => {
    const rest = at(waiting, 2, load({ amount: chicken(24) - 1 }))
    expect(foodTimes(running(rest), 'batch', 'b1', minute(3))?.nextBy).toBeNull()
    const half = at(waiting, 2, load({ amount: chicken(12) }))
    expect(foodTimes(running(half), 'batch', 'b1', minute(3))?.nextBy).toBe(minute(120))
    const thrown = at(waiting, 2, {
      type: 'throwOut',
      what: 'batch',
      id: 'b1',
      reason: 'quality',
      initials: 'KT',
    })
    expect(nextDue(thrown.state)).toBeNull()
  })

  it('[B28] of which somebody tells late may still be read, but not once it could be out for 4 hours', () => {
    const [start, heat, finish] = cook as [Given, Given, Given]
    const late = at(opened, 150, start, heat, finish)
    expect(of(late)?.offSale).toBeNull()
    expect(nextDue(late.state)).toBe(minute(210))
    expect(refusalOf(whenAt(late, 151, load()))).toMatchObject({ problem: { code: 'not-watched' } })
    expect(codeOf(whenAt(at(late, 152, readBatch(150)), 153, load()))).toBeNull()
    expect(of(until(late, 210))?.offSale).toMatchObject({ why: 'reading-missed' })
    const hours = at(opened, 250, start, heat, finish)
    expect(eventsOf(whenAt(hours, 251, readBatch(150)))).toMatchObject([
      { type: 'temperatureRead', inLimits: true },
      { type: 'takenOffSale', what: 'batch', why: 'reading-missed', lastGoodAt: minute(0) },
    ])
  })

  it('[B28] is read once it is finished and cooked, and there is some', () => {
    const [start, heat, finish] = cook as [Given, Given, Given]
    expect(refusalOf(whenAt(at(opened, 1, start, heat), 2, readBatch(150)))).toMatchObject({
      problem: { code: 'not-finished' },
    })
    expect(refusalOf(whenAt(at(opened, 1, start, finish), 2, readBatch(150)))).toMatchObject({
      problem: { code: 'not-cooked' },
    })
    const all = at(waiting, 2, load({ amount: chicken(24) }))
    expect(codeOf(whenAt(all, 3, readBatch(150)))).toBe('nothing-there')
    expect(codeOf(whenAt(waiting, 3, { ...readBatch(150), id: 'b9' } as Given))).toBe(
      'unknown batch',
    )
  })
})

describe('a cold batch that waits', () => {
  const slaw = at(
    opened,
    1,
    { type: 'startBatch', component: 'slaw', loads: 1, startedAt: minute(-900) },
    { type: 'finishBatch', batch: 'b1', amount: ofPortions('slaw', 20), finishedAt: minute(-870) },
  )

  it('[B28] is read since it is known here, and a reading in limits lifts a missed one', () => {
    expect(nextDue(slaw.state)).toBe(minute(121))
    const missed = until(slaw, 121)
    expect(of(missed)?.offSale).toMatchObject({ why: 'reading-missed', lastGoodAt: null })
    expect(of(at(missed, 130, readBatch(39)))?.offSale).toBeNull()
    expect(of(at(missed, 242, readBatch(39)))?.offSale).not.toBeNull()
    expect(of(at(slaw, 60, readBatch(48)))?.offSale).toMatchObject({ why: 'out-of-limits' })
    expect(refusalOf(whenAt(missed, 122, resolve('time-only'), inCharge))).toMatchObject({
      ways: ['discard'],
    })
  })

  it('[B28] on time alone that is read it is read every hour, and too warm it is thrown out', () => {
    const timed = at(slaw, 2, {
      type: 'startTimeClock',
      what: 'batch',
      id: 'b1',
      leftAt: minute(2),
      from: 'cold',
      rule: '6h',
      ...read(39),
    })
    expect(nextDue(timed.state)).toBe(minute(62))
    expect(nextDue(at(timed, 50, readBatch(60)).state)).toBe(minute(110))
    expect(of(until(timed, 62))?.offSale).toMatchObject({ why: 'monitoring-missed' })
    const warm = at(timed, 50, readBatch(76))
    expect(warm.state.toThrowOut['batch/b1']).toMatchObject({ because: 'too-warm' })
    const put: Given = {
      type: 'load',
      pan: 'pan-slaw',
      amount: ofPortions('slaw', 20),
      batch: 'b1',
      heldBy: 'time',
    }
    expect(nextDue(at(timed, 50, readBatch(60), put).state)).toBe(minute(110))
  })
})
