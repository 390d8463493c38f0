import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import outer from '#fixtures/reference/pan-outer-sizes.json' with { type: 'json' }
import { PAN_SIZES, type PanSize } from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'
import { type Stand, sizesThatFit, WELL_IN, wellFromAbove } from '#lib/measure/well-layout.ts'

const named = (sizes: readonly PanSize[]) => sizes.map((size, at) => ({ pan: `pan-${at}`, size }))

const overlap = (one: Stand, other: Stand): boolean =>
  one.left < other.left + other.along - 1e-9 &&
  other.left < one.left + one.along - 1e-9 &&
  one.top < other.top + other.across - 1e-9 &&
  other.top < one.top + one.across - 1e-9

const anyPans = fc.array(fc.constantFrom(...PAN_SIZES), { maxLength: 9 })

describe('a well from above', () => {
  it('[Q18] pans are drawn by their outer sizes, each of them', () => {
    fc.assert(
      fc.property(anyPans, (sizes) => {
        const { stands } = wellFromAbove(named(sizes))
        expect(stands.map(({ pan }) => pan).toSorted()).toEqual(
          named(sizes)
            .map(({ pan }) => pan)
            .toSorted(),
        )
        for (const { pan, size } of named(sizes)) {
          const row = outer.rows.find((one) => one.size === size)
          const stand = stands.find((one) => one.pan === pan)
          expect(stand?.along).toBe(row?.alongIn)
          expect(stand?.across).toBe(row?.acrossIn)
        }
      }),
    )
  })

  it('[Q18] none stands over another, nor over what is left bare', () => {
    fc.assert(
      fc.property(anyPans, (sizes) => {
        const { stands, gaps } = wellFromAbove(named(sizes))
        const all = [...stands, ...gaps]
        for (const [at, one] of all.entries())
          for (const other of all.slice(at + 1)) expect(overlap(one, other)).toBe(false)
      }),
    )
  })

  it('[Q18] they reach beyond the well exactly where they do not fit', () => {
    fc.assert(
      fc.property(anyPans, (sizes) => {
        const { stands, fits, reach } = wellFromAbove(named(sizes))
        expect(fits).toBe(fitsOneWell(sizes))
        expect(reach <= WELL_IN.along).toBe(fits)
        for (const { top, across } of stands)
          expect(top + across).toBeLessThanOrEqual(WELL_IN.across + 1e-9)
      }),
    )
  })

  it('[Q18] stands in building order, smaller ones behind each other', () => {
    const { stands, gaps } = wellFromAbove(named(['sixth', 'third', 'sixth', 'third']))
    expect(stands.map(({ pan, left, top }) => [pan, left, top])).toEqual([
      ['pan-0', 0, 0],
      ['pan-2', 0, 6.25],
      ['pan-1', 6.875, 0],
      ['pan-3', 13.75, 0],
    ])
    expect(gaps).toEqual([])
  })

  it('[Q18] says what is bare, and what would fit', () => {
    expect(wellFromAbove([]).gaps).toEqual([{ left: 0, top: 0, ...WELL_IN }])
    expect(sizesThatFit([])).toEqual(PAN_SIZES)
    const half = wellFromAbove(named(['half', 'third', 'ninth']))
    expect(half.fits).toBe(false)
    expect(wellFromAbove(named(['half'])).gaps).toHaveLength(1)
    expect(wellFromAbove(named(['half', 'third'])).gaps).toEqual([])
    expect(sizesThatFit(['half', 'third'])).toEqual([])
    expect(sizesThatFit(['third', 'third'])).toEqual(['third', 'sixth', 'ninth'])
    expect(sizesThatFit(['third', 'third', 'sixth'])).toEqual(['sixth', 'ninth'])
    expect(sizesThatFit(['half', 'quarter'])).toEqual(['quarter'])
  })
})
