import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sayCents } from '#lib/words/amounts-en.ts'
import { centsIn } from '#lib/words/money.ts'

describe('money', () => {
  it('[Q15] 450 cents are 4.50, or $4.50 where the currency is named', () => {
    expect(sayCents(450)).toBe('4.50')
    expect(sayCents(450, 'USD')).toBe('$4.50')
    expect(sayCents(5, 'USD')).toBe('$0.05')
    expect(sayCents(0, 'USD')).toBe('$0.00')
    expect(sayCents(-0, 'USD')).toBe('$0.00')
    expect(sayCents(-450, 'USD')).toBe('-$4.50')
    expect(sayCents(123_456_789, 'USD')).toBe('$1,234,567.89')
  })

  it('[Q15] a currency without a smaller unit is not divided', () => {
    expect(sayCents(450, 'JPY')).toBe('¥450')
    expect(sayCents(4500, 'KWD').replaceAll('\u00a0', ' ')).toBe('KWD 4.500')
  })

  it('[Q15] the locale sets the marks', () => {
    expect(centsIn('es-ES', 450, 'EUR').replaceAll('\u00a0', ' ')).toBe('4,50 €')
  })

  it('[Q15] what is read is the cents that were there', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), (cents) => {
        expect(sayCents(cents)).toMatch(/^-?[\d,]+\.\d\d$/)
        expect(Number(sayCents(cents).replace(/[.,]/g, '')) + 0).toBe(cents + 0)
      }),
      { seed: 17, numRuns: 300 },
    )
  })

  it('[Q15] a part of a cent or an unknown currency is refused', () => {
    for (const bad of [4.5, Number.NaN, Infinity]) expect(() => sayCents(bad)).toThrow(RangeError)
    expect(() => sayCents(450, 'dollars')).toThrow(RangeError)
  })
})
