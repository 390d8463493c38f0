import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stepsHalfUp, wholeTimes } from '#lib/measure/rounding.ts'
import { roundHalfUp } from '#tests/support/kitchen-units.ts'

const SEED = { seed: 17 }

describe('rounding', () => {
  it('[Q16] every half of a hundredth goes up, as on paper, up to a thousand', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (hundredths) => {
        const half = (hundredths * 10 + 5) / 1000
        expect(roundHalfUp(half, 2)).toBe((hundredths + 1) / 100)
      }),
      SEED,
    )
    expect(roundHalfUp(1.005, 2)).toBe(1.01)
    expect(roundHalfUp(1.0049, 2)).toBe(1)
  })

  it('[Q16] what is rounded is at most half a step off, whole, and the same below zero', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e9, noNaN: true }),
        fc.constantFrom(0.1, 0.25, 1, 3, 5, 12, 50),
        (amount, step) => {
          const steps = stepsHalfUp(amount, step)
          expect(Number.isSafeInteger(steps)).toBe(true)
          expect(Math.abs(steps * step - amount)).toBeLessThanOrEqual(step / 2 + amount * 1e-11)
          expect(Math.abs(stepsHalfUp(-amount, step))).toBe(steps)
        },
      ),
      SEED,
    )
  })

  it('[Q16] a rounding that would be nonsense is an error, never NaN', () => {
    for (const bad of [Number.NaN, Infinity, -Infinity]) {
      expect(() => stepsHalfUp(bad, 1)).toThrow(RangeError)
      expect(() => stepsHalfUp(1, bad)).toThrow(RangeError)
      expect(() => roundHalfUp(bad, 1)).toThrow(RangeError)
      expect(() => wholeTimes(bad, 1)).toThrow(RangeError)
      expect(() => wholeTimes(1, bad)).toThrow(RangeError)
    }
    expect(() => stepsHalfUp(1, 0)).toThrow(RangeError)
    expect(() => stepsHalfUp(1e300, 1)).toThrow(RangeError)
    expect(() => wholeTimes(-1, 1)).toThrow(RangeError)
    expect(() => wholeTimes(1, 0)).toThrow(RangeError)
    expect(() => wholeTimes(1e300, 1)).toThrow(RangeError)
    expect(Object.is(stepsHalfUp(-0.2, 1), 0)).toBe(true)
  })
})
