import { describe, expect, it } from 'vitest'
import { coolingState } from '#lib/safety/cooling.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { at, read } from '#tests/support/readings.ts'

const run = (now: string, ...rows: readonly (readonly [value: number, time: string])[]) =>
  coolingState(
    rows.map(([value, time]) => read(value, time)),
    'cooked',
    at(now),
    limits,
    null,
  )

describe('FDA Food Code 2022, 3-501.14, in the adoption of Delaware', () => {
  it('[F23] 135 °F at 12:00, 70 °F at 13:00, 41 °F at 17:45: 5 h 45 min in all, cooled', () => {
    expect(run('17:45', [135, '12:00'], [70, '13:00'], [41, '17:45'])).toEqual({
      state: 'cooled',
      startedAt: at('12:00'),
      at: at('17:45'),
    })
  })

  it('[F23] the total of 6 h and not 4 h more: a fast first stage lends time to the second', () => {
    const rows = [
      [135, '12:00'],
      [70, '12:30'],
      [41, '18:00'],
    ] as const
    expect(run('18:00', ...rows).state).toBe('cooled')
    expect(run('18:01', [135, '12:00'], [70, '12:30'], [41, '18:01'])).toMatchObject({ stage: 2 })
  })

  it('[F23] 135 °F at 12:00 and 71 °F at 14:00 misses the first stage', () => {
    expect(run('14:01', [135, '12:00'], [71, '14:00'])).toMatchObject({ state: 'missed', stage: 1 })
    expect(run('14:01', [135, '12:00'], [70, '14:00']).state).toBe('second-stage')
  })

  it('[F23] on the scale of °C: 57 to 21 within 2 h, to 5 within 6 h', () => {
    const readings = [
      read(57, '12:00', { in: 'C' }),
      read(21, '14:00', { in: 'C' }),
      read(5, '18:00', { in: 'C' }),
    ]
    expect(coolingState(readings, 'cooked', at('18:00'), limits, null).state).toBe('cooled')
    const warm = [...readings.slice(0, 1), read(21.1, '14:00', { in: 'C' })]
    expect(coolingState(warm, 'cooked', at('14:01'), limits, null)).toMatchObject({ stage: 1 })
  })

  it('[F23] (B) from ingredients at room temperature to 41 °F within 4 h', () => {
    const room = [read(72, '09:00'), read(41, '13:00')]
    expect(coolingState(room, 'room', at('13:00'), limits, null).state).toBe('cooled')
    const late = [read(72, '09:00'), read(41, '13:01')]
    expect(coolingState(late, 'room', at('13:01'), limits, null).state).toBe('missed')
  })

  it('[F23] (B) made at 09:00 and first read at 10:58, it has until 13:00 all the same', () => {
    const made = at('09:00')
    const room = [read(65, '10:58'), read(41, '13:00')]
    expect(coolingState(room, 'room', at('13:00'), limits, made).state).toBe('cooled')
    // 3 h 2 min after its first reading, 5 h after it was made.
    const late = [read(65, '10:58'), read(40, '14:00')]
    expect(coolingState(late, 'room', at('14:00'), limits, made)).toMatchObject({
      state: 'missed',
      startedAt: made,
    })
  })
})
