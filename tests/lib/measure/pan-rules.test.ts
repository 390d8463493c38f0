import { describe, expect, it } from 'vitest'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { fillProblem, mostMg, placeProblem, type WellPans, weigh } from '#lib/measure/pan-rules.ts'

describe('pans as they are', () => {
  it('[F37] a pan holds its usable capacity by the food’s density, or nobody knows', () => {
    expect(mostMg('third', 4, 1)).toBe(Math.floor(mlFrom(125, 'flOz') * 1000))
    expect(mostMg('third', 4, 0.5)).toBe(Math.floor(mlFrom(125, 'flOz') * 500))
    expect(mostMg('third', 4, 1, 4000)).toBe(4_000_000)
    expect(mostMg('ninth', 6, 1)).toBeNull()
    expect(mostMg('third', 4, null)).toBeNull()
  })

  it('[F37] more than it holds is refused, exactly as much is not', () => {
    expect(fillProblem(4_000_000, 4_000_000)).toBeNull()
    expect(fillProblem(4_000_001, 4_000_000)).toEqual({ code: 'overfull', most: 4_000_000 })
    expect(fillProblem(9_000_000, null)).toBeNull()
    for (const none of [0, -1, 0.5, Number.NaN])
      expect(fillProblem(none, null)).toEqual({ code: 'no-amount' })
  })

  it('[F38] a weighing is gross minus tare, and one below the tare is refused', () => {
    expect(weigh(3_500_000, 900_000, 4_000_000)).toEqual({ ok: true, netMg: 2_600_000 })
    expect(weigh(900_000, 900_000, null)).toEqual({ ok: true, netMg: 0 })
    expect(weigh(899_999, 900_000, null)).toEqual({
      ok: false,
      problem: { code: 'below-tare', tareMg: 900_000 },
    })
    expect(weigh(4_900_000, 900_000, 4_000_000).ok).toBe(true)
    expect(weigh(4_900_001, 900_000, 4_000_000)).toEqual({
      ok: false,
      problem: { code: 'overfull', most: 4_000_000 },
    })
    expect(() => weigh(0.5, 0, null)).toThrow(RangeError)
    expect(() => weigh(1, -1, null)).toThrow(RangeError)
  })

  const wells: readonly WellPans[] = [
    {
      well: 'one',
      pans: [
        { pan: 'chicken', size: 'half' },
        { pan: 'beans', size: 'third' },
      ],
    },
    { well: 'two', pans: [{ pan: 'corn', size: 'full' }] },
    { well: 'three', pans: [] },
  ]

  it('[F39] a pan that doesn’t fit its well is refused', () => {
    expect(placeProblem(wells, 'one', { pan: 'new', size: 'sixth' })).toEqual({
      code: 'does-not-fit',
      well: 'one',
    })
    expect(placeProblem(wells, 'one', { pan: 'new', size: 'half' }, 'beans')).toBeNull()
    expect(placeProblem(wells, 'two', { pan: 'new', size: 'ninth' })?.code).toBe('does-not-fit')
    expect(placeProblem(wells, 'two', { pan: 'new', size: 'full' }, 'corn')).toBeNull()
    expect(placeProblem(wells, 'three', { pan: 'new', size: 'full' })).toBeNull()
    expect(placeProblem(wells, 'four', { pan: 'new', size: 'full' })?.code).toBe('no-such-well')
  })

  it('[F39] a pan stands in one well only', () => {
    expect(placeProblem(wells, 'three', { pan: 'beans', size: 'third' })).toEqual({
      code: 'on-two-wells',
      pan: 'beans',
      well: 'one',
    })
  })
})
