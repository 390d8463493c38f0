import { describe, expect, it } from 'vitest'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import {
  type ClockStart,
  earliestThrowOut,
  madeUntil,
  mayTake,
  nextMonitoring,
  startClock,
  throwOutMoment,
} from '#lib/safety/time-control.ts'
import { at, read } from '#tests/support/readings.ts'

const fromHot: ClockStart = {
  rule: '4h',
  from: 'hot',
  leftAt: at('11:10'),
  readings: [read(150, '11:08')],
  procedure: true,
}
const started = (start: Partial<ClockStart>, now = '11:30') =>
  startClock({ ...fromHot, ...start }, at(now), limits)
const refused = (why: string) => ({ ok: false, why })
const six = { rule: '6h', startedAt: at('08:00'), throwOutAt: at('14:00') } as const
const four = { rule: '4h', startedAt: at('11:10'), throwOutAt: at('15:10') } as const

describe('time alone', () => {
  it('[F16] the clock runs from when it left heat or cold, not from when that was told', () => {
    for (const now of ['11:10', '11:30', '14:00'])
      expect(started({}, now)).toEqual({ ok: true, clock: four })
  })

  it('[F16] it needs a procedure and a reading that counts, taken as it left', () => {
    expect(started({ procedure: false })).toEqual(refused('no-procedure'))
    expect(started({ readings: [] })).toEqual(refused('no-start-reading'))
    const lacking = [read(150, '11:08', { initialled: false })]
    expect(started({ readings: lacking })).toEqual(refused('no-start-reading'))
    expect(started({ readings: [read(150, '10:54')] })).toEqual(refused('no-start-reading'))
    expect(started({ readings: [read(150, '10:55')] }).ok).toBe(true)
    expect(started({ readings: [read(150, '11:31')] })).toEqual(refused('no-start-reading'))
  })

  it('[F16] the start reading is in limits: hot, cold, or at most 70 °F where cut or opened', () => {
    expect(started({ readings: [read(134.9, '11:08')] })).toEqual(refused('start-out-of-limits'))
    expect(started({ readings: [read(135, '11:08')] }).ok).toBe(true)
    const cold = (value: number) => started({ from: 'cold', readings: [read(value, '11:08')] }).ok
    expect([41, 41.1].map(cold)).toEqual([true, false])
    const room = (value: number) =>
      started({ rule: '4h-cool', from: 'room', readings: [read(value, '11:08')] }).ok
    expect([70, 70.1].map(room)).toEqual([true, false])
  })

  it('[F16] a reading out of limits before it left isn’t mended by another, one after it is no matter', () => {
    const mixed = [read(120, '11:05'), read(150, '11:08')]
    expect(started({ readings: mixed })).toEqual(refused('start-out-of-limits'))
    expect(started({ readings: [read(150, '11:08'), read(120, '11:25')] }).ok).toBe(true)
  })

  it('[F16] each rule starts only from where the code says', () => {
    expect(started({ rule: '6h' })).toEqual(refused('rule-not-from-there'))
    expect(started({ rule: '4h-cool' })).toEqual(refused('rule-not-from-there'))
    expect(started({ rule: '6h', from: 'cold', readings: [read(40, '11:08')] })).toEqual({
      ok: true,
      clock: { rule: '6h', startedAt: at('11:10'), throwOutAt: at('17:10') },
    })
  })

  it('[F16] it can’t have left later than now, and not so long ago that its time is over', () => {
    expect(started({}, '11:09')).toEqual(refused('in-the-future'))
    expect(started({}, '15:09').ok).toBe(true)
    expect(started({}, '15:10')).toEqual(refused('past-throw-out'))
  })

  it('[F17] a rule with a warmest throws out at the first reading above it, the other doesn’t', () => {
    const readings = [read(70, '10:00'), read(70.1, '11:00'), read(72, '10:30')]
    expect(throwOutMoment(six, readings, limits)).toBe(at('10:30'))
    expect(throwOutMoment({ ...six, rule: '4h-cool' }, readings, limits)).toBe(at('10:30'))
    expect(throwOutMoment({ ...six, rule: '4h' }, readings, limits)).toBe(at('14:00'))
    expect(throwOutMoment(six, [read(80, '15:00')], limits)).toBe(at('14:00'))
    expect(throwOutMoment(six, [read(21.1, '09:00', { in: 'C' })], limits)).toBe(at('09:00'))
  })

  it('[F17] a reading that lacks something condemns all the same', () => {
    const bare = read(75, '09:00', { initialled: false, probe: null, where: 'surface' })
    expect(throwOutMoment(six, [bare], limits)).toBe(at('09:00'))
  })

  it('[F32] under the 6-hour rule a reading is due every hour, and a missing one doesn’t pass', () => {
    expect(nextMonitoring(four, [])).toBeNull()
    expect(nextMonitoring(six, [])).toBe(at('09:00'))
    expect(nextMonitoring(six, [read(40, '07:58')])).toBe(at('09:00'))
    expect(nextMonitoring(six, [read(50, '09:30')])).toBe(at('10:30'))
    expect(nextMonitoring(six, [read(50, '09:30', { probe: null })])).toBe(at('09:00'))
  })

  it('[F18] it is never sold past its time, nor in a build that would be finished at it or after', () => {
    const over = four.throwOutAt
    expect(mayTake(over, over - 1, over - 1)).toBe(true)
    expect(mayTake(over, over - 600_000, over)).toBe(false)
    expect(mayTake(over, over, over)).toBe(false)
    expect(mayTake(over, over + 1, over - 60_000)).toBe(false)
  })

  const made = {
    madeAt: at('12:00'),
    taken: [null, at('12:40'), at('13:00')],
    shelfHeld: 'none',
    collectWithinMs: 30 * 60_000,
  } as const

  it('[F21] made food is bound by the earliest clock of what it took', () => {
    expect(madeUntil(made, limits)).toEqual({ collectBy: at('12:30'), throwOutAt: at('12:40') })
    expect(madeUntil({ ...made, shelfHeld: 'hot' }, limits).throwOutAt).toBe(at('12:40'))
    expect(earliestThrowOut([])).toBeNull()
  })

  it('[F21] its collect-by is never later than that', () => {
    const soon = { ...made, taken: [at('12:10')] }
    expect(madeUntil(soon, limits)).toEqual({ collectBy: at('12:10'), throwOutAt: at('12:10') })
  })

  it('[F21] on a shelf that is neither hot nor cold a clock of its own starts when it is made', () => {
    expect(madeUntil({ ...made, taken: [null] }, limits).throwOutAt).toBe(at('16:00'))
    expect(madeUntil({ ...made, taken: [null], shelfHeld: 'hot' }, limits).throwOutAt).toBeNull()
  })
})
