import { describe, expect, it } from 'vitest'
import type { Amount } from '#lib/recipes/amount.ts'
import { fromNumber, ratio, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import { fitsTyped, type Served, wantedOf, wantedOfLine } from '#lib/recipes/wanted.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

const yields = (typed: string): Yield => {
  const found = typedYield(typed)
  if (!found.ok) throw new Error(`not understood: ${typed}`)
  return found.yields
}

const SCOOP: Served = { portion: amount('1 #8 scoop'), density: null }
const NONE: Served = { portion: null, density: null }

const factor = (card: string, typed: string, served: Served = SCOOP): number | string => {
  const found = wantedOf(yields(card), typed, served)
  return found.ok ? toNumber(found.factor) : found.code
}

describe('what is wanted, as typed', () => {
  it.each([
    ['serves 100', '348', 3.48],
    ['100 servings of 4 oz', '348 portions of 3 oz', 2.61],
    ['serves 24', 'x 2', 2],
    ['serves 24', '1/2 times', 0.5],
    ['4 qt', '6 qt', 1.5],
    ['4 qt', '64 portions', 2],
    ['4 qt', '1 full pan, 2 1/2 in', 1.875],
    ['2 half pans', '3 half pans', 1.5],
    ['2 half pans, 4 in', '1 full pan, 4 in', 420 / 416],
  ])('[RC20] of a card that makes %s, %s is %d of it', (card, typed, by) => {
    expect(factor(card, typed)).toBeCloseTo(by, 12)
  })

  it.each([
    ['serves 24', '4 qt', 'no-portion-size'],
    ['serves 24', '20 portions of 1/2 cup', 'no-portion-size'],
    ['2 half pans', '4 qt', 'no-depth'],
    ['2 half pans', '2 half pans, 4 in', 'no-depth'],
    ['4 qt', '2 half pans', 'no-depth'],
    ['4 qt', '3 lb', 'weight-and-volume'],
    ['4 qt', 'a lot', 'no-number'],
    ['4 qt', '0', 'zero'],
  ])('[RC20] of a card that makes %s, %s is refused: %s', (card, typed, code) => {
    expect(factor(card, typed)).toBe(code)
  })

  it('[RC20] pans of one size and another depth hold another amount', () => {
    const shallow = factor('2 half pans, 4 in', '2 half pans, 2 1/2 in')
    expect(shallow).toBeGreaterThan(0.5)
    expect(shallow).toBeLessThan(0.75)
  })

  it('[RC20] portions are the station’s own where the card states an amount, or nobody’s', () => {
    expect(factor('4 qt', '32')).toBe(1)
    expect(factor('4 qt', '32', NONE)).toBe('no-portions')
    const found = wantedOf(yields('serves 24'), 'x 2', NONE)
    expect(found).toEqual({ ok: true, factor: ratio(2), portions: ratio(48) })
  })

  it('[RC21] what is at hand of a line, by whichever way the card says it', () => {
    const found = wantedOfLine('6 lb (2 qt 3 1/4 cups)', '1 gal 1 qt 2 1/2 cups', null)
    expect(found.ok && found.factor).toEqual(ratio(2))
    expect(wantedOfLine('30 lb', '102 lb', null)).toMatchObject({ factor: fromNumber(3.4) })
    expect(wantedOfLine('30 lb', '4 qt', null)).toMatchObject({ code: 'weight-and-volume' })
    expect(wantedOfLine('to taste', '4 qt', null)).toMatchObject({ code: 'no-number' })
    expect(wantedOfLine('some', '4 qt', null)).toMatchObject({ code: 'no-number', at: 'some' })
  })

  it('[RC24] a pot or pans are what fits at once', () => {
    const pot = fitsTyped('20 qt')
    expect(pot.ok && pot.fits).toEqual(amount('20 qt'))
    const pans = fitsTyped('2 half pans, 4 in')
    expect(pans.ok && toNumber(pans.fits.size)).toBeCloseTo(416 * 29.5735295625, 6)
    expect(fitsTyped('2 half pans')).toMatchObject({ ok: false, code: 'no-depth' })
  })
})
