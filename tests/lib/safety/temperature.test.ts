import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareTemperatures, isTemperature, keeps } from '#lib/safety/temperature.ts'
import { degrees } from '#tests/support/readings.ts'

const HOT = { F: 1350, C: 570 }
const COLD = { F: 410, C: 50 }

describe('temperatures', () => {
  it.each([
    [135, 'F', true],
    [134.9, 'F', false],
    [57, 'C', true],
    [56.9, 'C', false],
    [135, 'C', true],
    [57, 'F', false],
  ] as const)('[F1] %s °%s at least 135 °F / 57 °C: %s', (value, scale, kept) => {
    expect(keeps(degrees(value, scale), 'at-least', HOT)).toBe(kept)
  })

  it.each([
    [41, 'F', true],
    [41.1, 'F', false],
    [5, 'C', true],
    [5.1, 'C', false],
    [-18, 'C', true],
  ] as const)('[F1] %s °%s at most 41 °F / 5 °C: %s', (value, scale, kept) => {
    expect(keeps(degrees(value, scale), 'at-most', COLD)).toBe(kept)
  })

  it('[F1] 57.0 °C keeps the limit on its own scale though it is 134.6 °F, which does not', () => {
    expect(compareTemperatures(degrees(57, 'C'), degrees(134.6))).toBe(0)
    expect(keeps(degrees(57, 'C'), 'at-least', HOT)).toBe(true)
    expect(keeps(degrees(134.6), 'at-least', HOT)).toBe(false)
  })

  it('[F1] readings of two scales compare exactly', () => {
    expect(compareTemperatures(degrees(100, 'C'), degrees(212))).toBe(0)
    expect(compareTemperatures(degrees(-40, 'C'), degrees(-40))).toBe(0)
    expect(compareTemperatures(degrees(21, 'C'), degrees(70))).toBeLessThan(0)
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 2000 }), (tenthsC) => {
        const asF = { tenths: (tenthsC * 9) / 5 + 320, scale: 'F' as const }
        const c = { tenths: tenthsC, scale: 'C' as const }
        if (Number.isInteger(asF.tenths)) expect(compareTemperatures(c, asF)).toBe(0)
        const above = { tenths: Math.floor(asF.tenths) + 1, scale: 'F' as const }
        expect(compareTemperatures(c, above)).toBeLessThan(0)
      }),
      { seed: 17 },
    )
  })

  it('[F1] what is no temperature is refused', () => {
    expect(isTemperature({ tenths: 1350.5, scale: 'F' })).toBe(false)
    expect(isTemperature({ tenths: Number.NaN, scale: 'F' })).toBe(false)
    expect(isTemperature({ tenths: -2732, scale: 'C' })).toBe(false)
    expect(() => keeps({ tenths: Number.NaN, scale: 'F' }, 'at-most', COLD)).toThrow(RangeError)
  })
})
