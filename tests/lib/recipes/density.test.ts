import { describe, expect, it } from 'vitest'
import {
  densityOfCard,
  densityOfFood,
  densityOfPan,
  densityOfScoops,
} from '#lib/recipes/density.ts'
import { fromNumber, ratio, times, toNumber } from '#lib/recipes/rational.ts'
import { scoopMl } from '#lib/recipes/units.ts'

describe('densities', () => {
  it('[RC8] ten level #16 scoops that weigh 395 g are rice at 158 g a cup', () => {
    const found = densityOfScoops(scoopMl(16), 10, ratio(395))
    expect(found.ok && toNumber(times(found.density.gPerMl, fromNumber(236.5882365)))).toBeCloseTo(
      158,
      9,
    )
    expect(found).toMatchObject({ density: { by: 'measured' } })
  })

  it('[RC8] one scoop may be off by 5 percent, ten by 1.6, and a light one by the scale too', () => {
    const offBy = (count: number, g: number) => {
      const found = densityOfScoops(scoopMl(16), count, ratio(g))
      return found.ok ? found.density.offBy : null
    }
    expect(offBy(1, 55)).toBeCloseTo(0.0676, 3)
    expect(offBy(10, 500)).toBeCloseTo(0.0166, 3)
    expect(offBy(10, 50)).toBeCloseTo(0.0524, 3)
  })

  it('[RC8] a pan that was weighed is known no better than its capacity, 10 percent', () => {
    const found = densityOfPan(fromNumber(1000), ratio(1500), ratio(700))
    expect(found).toEqual({
      ok: true,
      density: { gPerMl: ratio(4, 5), by: 'pan', offBy: 0.1 },
    })
  })

  it('[RC8] what nobody measured, or what can’t be, is no density', () => {
    const code = (found: ReturnType<typeof densityOfPan>) => !found.ok && found.problem.code
    expect(code(densityOfScoops(scoopMl(16), 10, ratio(0)))).toBe('no-weight')
    expect(code(densityOfScoops(scoopMl(16), 10, ratio(5)))).toBe('unlikely')
    expect(code(densityOfScoops(scoopMl(16), 10, ratio(9000)))).toBe('unlikely')
    expect(code(densityOfPan(ratio(0), ratio(9), ratio(1)))).toBe('no-volume')
    expect(code(densityOfPan(ratio(100), ratio(9), ratio(10)))).toBe('below-tare')
    expect(code(densityOfFood('moon-dust'))).toBe('not-in-the-table')
    expect(() => densityOfScoops(scoopMl(16), 0, ratio(9))).toThrow(RangeError)
    const lb = { kind: 'weight', size: ratio(454), written: 'us' } as const
    expect(densityOfCard(lb, null)).toBeNull()
    expect(densityOfCard(lb, lb)).toBeNull()
  })
})
