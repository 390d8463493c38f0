import { describe, expect, it } from 'vitest'
import { type Cooking, cookedTo, FOOD_KINDS, heatedTo } from '#lib/safety/cooking.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { at, heat } from '#tests/support/readings.ts'

const cooked = (kind: Cooking['kind'], ...readings: Cooking['readings']) =>
  cookedTo({ kind, cookedIn: 'usual', readings }, limits)

describe('cooking', () => {
  it('[F8] without a reading nothing that is cooked passes', () => {
    for (const kind of FOOD_KINDS)
      expect(cooked(kind)).toEqual(kind === 'not-cooked' ? null : { met: false, why: 'no-reading' })
  })

  it('[F8] a reading that lacks something is none', () => {
    for (const lacking of [{ probe: null }, { where: 'surface' as const }, { initialled: false }])
      expect(cooked('poultry-or-stuffed', heat(180, 60, lacking))).toEqual({
        met: false,
        why: 'no-reading',
      })
  })

  it('[F7] seconds that nobody timed count as none', () => {
    expect(cooked('ground-meat', heat(157.9, null))).toEqual({ met: false, why: 'not-long-enough' })
    expect(cooked('ground-meat', heat(158, null))?.met).toBe(true)
  })

  it('[F7] one check that meets is enough, whatever was read before it', () => {
    const verdict = cooked(
      'poultry-or-stuffed',
      heat(158, 60, { time: '09:00' }),
      heat(165, 0, { time: '09:05' }),
    )
    expect(verdict).toEqual({
      met: true,
      by: { tenths: { F: 1650, C: 740 }, seconds: 0 },
      at: at('09:05'),
    })
  })

  it('[F9] of spots read at one moment every one must meet', () => {
    const cold = heat(150, 0)
    const hot = heat(170, 0)
    expect(cooked('poultry-or-stuffed', hot, cold)).toEqual({ met: false, why: 'too-low' })
    expect(cooked('poultry-or-stuffed', cold, hot)).toEqual({ met: false, why: 'too-low' })
  })

  it('[F7] the microwave has a limit of its own for raw animal food, with its time to stand', () => {
    const inIt = (kind: Cooking['kind'], ...readings: Cooking['readings']) =>
      cookedTo({ kind, cookedIn: 'microwave', readings }, limits)
    expect(inIt('fish-or-meat', heat(150, 600))).toEqual({ met: false, why: 'too-low' })
    expect(inIt('fish-or-meat', heat(165, 0))).toEqual({ met: false, why: 'not-stood' })
    expect(inIt('fish-or-meat', heat(165, 0, { stoodSeconds: 119 }))?.met).toBe(false)
    expect(inIt('fish-or-meat', heat(165, 0, { stoodSeconds: 120 }))?.met).toBe(true)
    expect(inIt('plant', heat(135, 0))?.met).toBe(true)
  })

  it('[F7] the verdict says by which combination, on the scale that was read', () => {
    expect(heatedTo([heat(66, 60, { in: 'C' })], limits.cookGroundMeat)).toMatchObject({
      met: true,
      by: { seconds: 60 },
    })
    expect(heatedTo([heat(66, 60)], limits.cookGroundMeat).met).toBe(false)
  })
})
