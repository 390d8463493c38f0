import { describe, expect, it } from 'vitest'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { mayReheatOn, type Reheating, reheated } from '#lib/safety/reheating.ts'
import { at, heat } from '#tests/support/readings.ts'

const run = (other: Partial<Reheating>, now = '11:00', allowed?: readonly Reheating['place'][]) =>
  reheated(
    { what: 'cooked-here', place: 'range', startedAt: at('10:00'), readings: [], ...other },
    at(now),
    limits,
    allowed,
  )

describe('reheating', () => {
  it('[F26] for hot holding to 165 °F for 15 s', () => {
    const to = (value: number, seconds: number | null) =>
      run({ readings: [heat(value, seconds, { time: '10:50' })] })
    expect(to(165, 15).ok).toBe(true)
    expect(to(164.9, 60)).toEqual({ ok: false, why: 'too-low' })
    expect(to(165, 14)).toEqual({ ok: false, why: 'not-long-enough' })
    expect(to(180, null)).toEqual({ ok: false, why: 'not-long-enough' })
    expect(run({})).toEqual({ ok: false, why: 'no-reading' })
  })

  it('[F26] within 2 hours of leaving cold, the last millisecond counting', () => {
    expect(run({ readings: [heat(165, 15, { time: '12:00' })] }, '12:30').ok).toBe(true)
    const late = heat(165, 15, { at: at('12:00') + 1 })
    expect(run({ readings: [late] }, '12:30')).toEqual({ ok: false, why: 'too-late' })
    expect(run({ readings: [heat(150, 0, { time: '11:30' })] }, '12:00')).toMatchObject({
      why: 'too-low',
    })
    const before = heat(165, 15, { time: '09:59' })
    expect(run({ readings: [before] })).toEqual({ ok: false, why: 'no-reading' })
    const notYet = heat(165, 15, { time: '11:30' })
    expect(run({ readings: [notYet] })).toEqual({ ok: false, why: 'no-reading' })
  })

  it('[F26] on the range only, unless a setting names more; never in the hot well', () => {
    const readings = [heat(180, 60, { time: '10:50', stoodSeconds: 180 })]
    for (const place of ['oven', 'microwave', 'hot-well'] as const)
      expect(run({ place, readings })).toEqual({ ok: false, why: 'not-there' })
    expect(run({ place: 'oven', readings }, '11:00', ['range', 'oven']).ok).toBe(true)
    expect(mayReheatOn('hot-well', ['range', 'hot-well'])).toBe(false)
  })

  it('[F26] a commercial pack to 135 °F, and the microwave with its time to stand', () => {
    const pack = { what: 'commercial-pack', readings: [heat(135, 0, { time: '10:50' })] } as const
    expect(run(pack).ok).toBe(true)
    expect(run({ ...pack, what: 'cooked-here' }).ok).toBe(false)
    const wave = (stoodSeconds: number) =>
      run(
        { place: 'microwave', readings: [heat(165, 0, { time: '10:50', stoodSeconds })] },
        '11:00',
        ['microwave'],
      )
    expect(wave(119)).toEqual({ ok: false, why: 'not-stood' })
    expect(wave(120).ok).toBe(true)
  })
})
