import { describe, expect, it } from 'vitest'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { mayTake, startClock, throwOutMoment } from '#lib/safety/time-control.ts'
import { at, read } from '#tests/support/readings.ts'

const clockOf = (rule: '4h' | '6h', from: 'hot' | 'cold', time: string, value: number) => {
  const started = startClock(
    { rule, from, leftAt: at(time), readings: [read(value, time)], procedure: true },
    at(time),
    limits,
  )
  if (!started.ok) throw new Error(started.why)
  return started.clock
}

describe('FDA Food Code 2022, 3-501.19, in the adoptions of Wisconsin and Minnesota', () => {
  it('[F17] (B) hot food that left at 11:10 is marked 15:10 and thrown out then', () => {
    const clock = clockOf('4h', 'hot', '11:10', 135)
    expect(clock.throwOutAt).toBe(at('15:10'))
    expect(mayTake(clock.throwOutAt, at('15:09'), at('15:09'))).toBe(true)
    expect(mayTake(clock.throwOutAt, at('15:10'), at('15:10'))).toBe(false)
    expect(mayTake(clock.throwOutAt, at('15:05'), at('15:10'))).toBe(false)
  })

  it('[F17] (C) cold food that left at 08:00 has 6 hours', () => {
    expect(clockOf('6h', 'cold', '08:00', 41).throwOutAt).toBe(at('14:00'))
  })

  it('[F17] (C) cold food that left at 08:00 and is at 71 °F at 11:30 is thrown out at 11:30', () => {
    const clock = clockOf('6h', 'cold', '08:00', 41)
    const readings = [read(50, '09:00'), read(62, '10:00'), read(70, '11:00'), read(71, '11:30')]
    expect(throwOutMoment(clock, readings, limits)).toBe(at('11:30'))
    expect(throwOutMoment(clock, readings.slice(0, 3), limits)).toBe(at('14:00'))
  })

  it('[F16] (B), (C) it starts at 41 °F or less, or 135 °F or more, and 6 hours only from cold', () => {
    expect(() => clockOf('4h', 'hot', '11:10', 134.9)).toThrow('start-out-of-limits')
    expect(() => clockOf('4h', 'cold', '11:10', 41.1)).toThrow('start-out-of-limits')
    expect(() => clockOf('6h', 'hot', '11:10', 150)).toThrow('rule-not-from-there')
  })

  it('[F16] (B), newer text read in Ga. 511-6-1.04(6)(i): cut or opened, from 70 °F, never above', () => {
    const start = (value: number) =>
      startClock(
        {
          rule: '4h-cool',
          from: 'room',
          leftAt: at('11:00'),
          readings: [read(value, '11:00')],
          procedure: true,
        },
        at('11:00'),
        limits,
      )
    expect(start(70)).toMatchObject({ clock: { throwOutAt: at('15:00') } })
    expect(start(71)).toEqual({ ok: false, why: 'start-out-of-limits' })
  })

  it('[F16] (A) without the written procedure nothing is held by time alone', () => {
    const start = { rule: '4h', from: 'hot', leftAt: at('11:10'), procedure: false } as const
    const readings = [read(150, '11:10')]
    expect(startClock({ ...start, readings }, at('11:10'), limits)).toEqual({
      ok: false,
      why: 'no-procedure',
    })
  })
})
