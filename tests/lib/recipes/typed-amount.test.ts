import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Amount } from '#lib/recipes/amount.ts'
import { type Rational, ratio, times } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { scoopMl, US_G, US_ML } from '#lib/recipes/units.ts'

const of = (unit: Rational, over: number, under = 1): Rational => times(unit, ratio(over, under))
const volume = (size: Rational, written: 'us' | 'metric' | 'rough' = 'us'): Amount => ({
  kind: 'volume',
  size,
  written,
})
const weight = (size: Rational, written: 'us' | 'metric' = 'us'): Amount => ({
  kind: 'weight',
  size,
  written,
})
const count = (size: number, counted: 'piece' | 'egg' | 'head' | 'clove'): Amount => ({
  kind: 'count',
  size: ratio(size * 2, 2),
  of: counted,
})
const cans = (size: Rational, can: string): Amount => ({ kind: 'cans', size, can })

const UNDERSTOOD: readonly (readonly [string, Amount])[] = [
  ['1/2 cup', volume(of(US_ML.cup, 1, 2))],
  ['1½ lb', weight(of(US_G.lb, 3, 2))],
  ['1 1/2 lb.', weight(of(US_G.lb, 3, 2))],
  ['2-1/2 cups', volume(of(US_ML.cup, 5, 2))],
  ['1 and 1/2 cups', volume(of(US_ML.cup, 3, 2))],
  ['⅓ c', volume(of(US_ML.cup, 1, 3))],
  ['1⁄3 C', volume(of(US_ML.cup, 1, 3))],
  ['1 lb 4 oz', weight(of(US_G.oz, 20))],
  ['1 lb, 4 ounces', weight(of(US_G.oz, 20))],
  ['2 qt 3 1/4 cups', volume(of(US_ML.cup, 45, 4))],
  ['1 gal + 1 qt + 2 1/2 cups', volume(of(US_ML.cup, 45, 2))],
  ['4 fl oz', volume(of(US_ML.flOz, 4))],
  ['4 fl. oz.', volume(of(US_ML.flOz, 4))],
  ['4 fluid ounces', volume(of(US_ML.flOz, 4))],
  ['4 oz', weight(of(US_G.oz, 4))],
  ['2 T', volume(of(US_ML.tbsp, 2))],
  ['2 t', volume(of(US_ML.tsp, 2))],
  ['5# ', weight(of(US_G.lb, 5))],
  ['250 g', weight(ratio(250), 'metric')],
  ['250g', weight(ratio(250), 'metric')],
  ['1,500 g', weight(ratio(1500), 'metric')],
  ['.5 kg', weight(ratio(500), 'metric')],
  ['1.5 L', volume(ratio(1500), 'metric')],
  ['2 dl', volume(ratio(200), 'metric')],
  ['1 pinch', volume(of(US_ML.tsp, 1, 16), 'rough')],
  ['a dash', volume(of(US_ML.tsp, 1, 8), 'rough')],
  ['30 eggs', count(30, 'egg')],
  ['30 large eggs', count(30, 'egg')],
  ['2 dozen eggs', count(24, 'egg')],
  ['15 doz', count(180, 'piece')],
  ['6 each', count(6, 'piece')],
  ['6', count(6, 'piece')],
  ['3 cloves', count(3, 'clove')],
  ['2 #10 cans', cans(ratio(2), '10')],
  ['1 No. 10 can', cans(ratio(1), '10')],
  ['1/2 #10 can', cans(ratio(1, 2), '10')],
  ['3 #2½ cans', cans(ratio(3), '2 1/2')],
  ['6 x #10 cans', cans(ratio(6), '10')],
  ['4 × 5 lb', weight(of(US_G.lb, 20))],
  ['2 x 14 oz', weight(of(US_G.oz, 28))],
  ['3 level #16 scoops', volume(of(scoopMl(16), 3))],
]

describe('amounts as typed', () => {
  it.each(UNDERSTOOD)('[RC1] %s is understood exactly', (typed, amount) => {
    expect(typedAmount(typed)).toEqual({ ok: true, amount, also: null })
  })

  it('[RC1] to taste and as needed are no amount, and understood', () => {
    for (const typed of ['to taste', 'As needed.', ' To Taste '])
      expect(typedAmount(typed)).toEqual({ ok: true, amount: null, also: null })
  })

  it('[RC2] ounces are a weight and fluid ounces a volume', () => {
    for (const typed of ['4 oz', '4 ounces', '0.25 lb']) {
      const found = typedAmount(typed)
      expect(found.ok && found.amount?.kind, typed).toBe('weight')
    }
    for (const typed of ['4 fl oz', '4 floz', '4 fluid oz', '1/2 cup']) {
      const found = typedAmount(typed)
      expect(found.ok && found.amount?.kind, typed).toBe('volume')
    }
  })

  it('[RC3] what stands in brackets is the same said otherwise, and is not added', () => {
    expect(typedAmount('6 lb (2 qt 3¼ cups)')).toEqual({
      ok: true,
      amount: weight(of(US_G.lb, 6)),
      also: volume(of(US_ML.cup, 45, 4)),
    })
  })

  it.each([
    ['', 'empty', ''],
    ['   ', 'empty', ''],
    ['some', 'no-number', 'some'],
    ['cups', 'no-number', 'cups'],
    ['2 to 3 lb', 'range', '2 to 3'],
    ['2-3 lb', 'range', '2 - 3'],
    ['1 or 2 cups', 'range', '1 or 2'],
    ['1 lb - 2 lb', 'range', ''],
    ['1,5 L', 'decimal-comma', '1,5'],
    ['2 handfuls', 'unknown-word', 'handfuls'],
    ['2 cups chopped', 'unknown-word', 'chopped'],
    ['2 cups (', 'no-number', ''],
    ['2 cups (1 lb', 'unknown-word', '('],
    ['2 heaping cups', 'unknown-word', 'heaping'],
    ['2 €', 'unknown-word', '€'],
    ['-2 cups', 'no-number', '-'],
    ['2 #5 cans', 'unknown-can', '#5'],
    ['2 #200 scoops', 'unknown-word', '#200 scoops'],
    ['2 #10', 'unknown-word', '#10'],
    ['1 lb 2 cups', 'mixed-kinds', ''],
    ['2 eggs 3 pieces', 'mixed-kinds', ''],
    ['0 cups', 'zero', ''],
    ['0', 'zero', ''],
    ['1/0 cup', 'zero', '1/0'],
    ['99999999 lb', 'too-much', ''],
  ])('[RC4] %j is refused as %s at %j', (typed, code, at) => {
    expect(typedAmount(typed)).toEqual({ ok: false, code, at })
  })

  it('[RC4] nothing that can be typed throws', () => {
    const bits = [
      '1',
      '/',
      '0',
      '2',
      '½',
      ' ',
      'lb',
      'oz',
      '#',
      '10',
      'can',
      '-',
      'x',
      '(',
      ')',
      ',',
    ]
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 60 }),
          fc.array(fc.constantFrom(...bits), { maxLength: 14 }).map((some) => some.join('')),
        ),
        (typed) => {
          const found = typedAmount(typed)
          if (found.ok && found.amount) expect(found.amount.size.over > 0n).toBe(true)
        },
      ),
      { seed: 16, numRuns: 2000 },
    )
  })

  it('[RC1] a third of a cup three times is a cup, to the last digit', () => {
    const third = typedAmount('1/3 cup')
    expect(third.ok && third.amount && times(third.amount.size, ratio(3))).toEqual(US_ML.cup)
  })
})
