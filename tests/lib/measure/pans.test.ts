import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import {
  PAN_CAPACITIES,
  PAN_DEPTHS_IN,
  PAN_SIZES,
  panCapacity,
  panUsableMl,
} from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'

const SEED = { seed: 17 }
const pans = fc.array(fc.constantFrom(...PAN_SIZES), { maxLength: 10 })

describe('pans', () => {
  it('[Q8] a third pan of 4 in serves 125 fl oz', () => {
    expect(panUsableMl('third', 4)).toBe(mlFrom(125, 'flOz'))
  })

  it('[Q8] each size and depth has one capacity at most, larger when larger or deeper', () => {
    const keys = PAN_CAPACITIES.map((row) => `${row.size} ${row.depthIn}`)
    expect(new Set(keys).size).toBe(keys.length)
    for (const depth of PAN_DEPTHS_IN) {
      const bySize = PAN_SIZES.flatMap((size) => panUsableMl(size, depth) ?? [])
      expect(bySize).toEqual(bySize.toSorted((a, b) => b - a))
    }
    for (const size of PAN_SIZES) {
      const byDepth = PAN_DEPTHS_IN.flatMap((depth) => panUsableMl(size, depth) ?? [])
      expect(byDepth).toEqual(byDepth.toSorted((a, b) => a - b))
      expect(byDepth.length).toBeGreaterThanOrEqual(2)
    }
  })

  it('[Q8] a capacity that nobody stated is unknown, not zero', () => {
    expect(panCapacity('ninth', 6)).toBeNull()
    expect(panUsableMl('ninth', 6)).toBeNull()
  })
})

/** By the sizes' own names; common practice, no source. */
const IN_ONE_WELL = { full: 1, half: 2, third: 3, quarter: 4, sixth: 6, ninth: 9 }

describe('wells', () => {
  it('[Q9] pans of one size fill a well by the number in their name', () => {
    for (const size of PAN_SIZES) {
      expect(fitsOneWell(Array.from({ length: IN_ONE_WELL[size] }, () => size))).toBe(true)
      expect(fitsOneWell(Array.from({ length: IN_ONE_WELL[size] + 1 }, () => size))).toBe(false)
    }
  })

  it('[Q9] mixed pans fit by their rows', () => {
    expect(fitsOneWell(['half', 'quarter', 'quarter'])).toBe(true)
    expect(fitsOneWell(['third', 'third', 'sixth', 'sixth'])).toBe(true)
    expect(fitsOneWell(['third', 'sixth', 'ninth', 'ninth', 'ninth', 'ninth'])).toBe(true)
    expect(fitsOneWell([])).toBe(true)
  })

  it('[Q9] shares that add up to a well may still not fit it', () => {
    expect(fitsOneWell(['half', 'third', 'sixth'])).toBe(false)
    expect(fitsOneWell(['quarter', 'third', 'third'])).toBe(false)
    expect(fitsOneWell(['full', 'ninth'])).toBe(false)
  })

  it('[Q9] what fits never takes more than the well, in any order, and still fits with one less', () => {
    fc.assert(
      fc.property(pans, (row) => {
        const parts = row.reduce((sum, size) => sum + 36 / IN_ONE_WELL[size], 0)
        const fits = fitsOneWell(row)
        if (fits) expect(parts).toBeLessThanOrEqual(36)
        expect(fitsOneWell(row.toReversed())).toBe(fits)
        if (fits) expect(fitsOneWell(row.slice(1))).toBe(true)
      }),
      { ...SEED, numRuns: 500 },
    )
  })
})
