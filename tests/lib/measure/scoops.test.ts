import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mlFrom, VOLUME_ML } from '#lib/measure/kitchen-units.ts'
import { ladleVolumeMl, SCOOP_HANDLES, scoopHandle, scoopVolumeMl } from '#lib/measure/scoops.ts'
import { wholeScoops } from '#tests/support/kitchen-units.ts'

const SEED = { seed: 17 }
const numbers = Array.from({ length: 97 }, (_, at) => at + 4)

describe('scoops', () => {
  it('[Q3] a #16 scoop holds 1/16 quart', () => {
    expect(scoopVolumeMl(16)).toBe(946.352946 / 16)
    expect(scoopVolumeMl(16)).toBe(mlFrom(0.25, 'cup'))
  })

  it('[Q3] as many scoops as the number make a quart, and a higher number is a smaller scoop', () => {
    for (const number of numbers) {
      expect(scoopVolumeMl(number) * number, `#${number}`).toBeCloseTo(VOLUME_ML.quart, 10)
      expect(wholeScoops(VOLUME_ML.quart, number), `#${number}`).toBe(number)
      if (number > 4) expect(scoopVolumeMl(number)).toBeLessThan(scoopVolumeMl(number - 1))
    }
  })

  it('[Q3] a number outside 4 to 100, a fraction or no number is refused', () => {
    for (const bad of [3, 101, 0, -16, 16.5, Number.NaN, Infinity]) {
      expect(() => scoopVolumeMl(bad), String(bad)).toThrow(RangeError)
      expect(() => wholeScoops(100, bad), String(bad)).toThrow(RangeError)
    }
  })

  it('[Q7] a pan of whole quarts gives its number of scoops a quart, and a drop less gives one less', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom(...numbers),
        (quarts, number) => {
          const ml = mlFrom(quarts, 'quart')
          expect(wholeScoops(ml, number)).toBe(quarts * number)
          expect(wholeScoops(ml - 0.01, number)).toBe(quarts * number - 1)
        },
      ),
      SEED,
    )
  })

  it('[Q5] each handle names its token, and those that read as purple are marked', () => {
    for (const { colour, token } of SCOOP_HANDLES) expect(token).toBe(`--scoop-${colour}`)
    expect(SCOOP_HANDLES.filter((one) => one.purplish).map((one) => one.number)).toEqual([40, 70])
    expect(scoopHandle(14)).toBeNull()
  })

  it('[Q17] a 2 oz ladle holds 2 fl oz, and a size that is not sold is refused', () => {
    expect(ladleVolumeMl(2)).toBe(mlFrom(2, 'flOz'))
    for (const bad of [0, 5, 2.5, Number.NaN]) {
      expect(() => ladleVolumeMl(bad), String(bad)).toThrow(RangeError)
    }
  })
})
