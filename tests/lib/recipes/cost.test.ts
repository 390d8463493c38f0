import { describe, expect, it } from 'vitest'
import { type Amount, scaled } from '#lib/recipes/amount.ts'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import { costOfCard, costOfPortion } from '#lib/recipes/card-cost.ts'
import { densityOfCard } from '#lib/recipes/density.ts'
import { factorOfRecipe } from '#lib/recipes/factor.ts'
import { asPurchased, costOf, foodShare, newestInvoice } from '#lib/recipes/purchased.ts'
import { ratio, toNumber, ZERO } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { costEn } from '#lib/words/recipe/cost-en.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

const densityOfTyped = (typed: string) => {
  const found = typedAmount(typed)
  return found.ok && found.amount ? densityOfCard(found.amount, found.also) : null
}

const invoice = (packTyped: string, cents: number, packs = 1, date = '2026-11-02') => ({
  date,
  packs,
  packTyped,
  cents,
})

const line = (of: string, typed: string, isRecipe = false) => ({ of, typed, isRecipe })

const dressing: Card = {
  id: 'dressing',
  name: 'Dressing',
  yields: '2 qt',
  lines: [line('oil', '1 qt'), line('vinegar', '1 qt')],
}
const slaw: Card = {
  id: 'slaw',
  name: 'Slaw',
  yields: 'serves 40',
  lines: [line('cabbage', '10 lb'), line('dressing', '1 qt', true), line('salt', 'to taste')],
}

const boxOf = (...cards: readonly Card[]): CardBox => ({
  cards: new Map(cards.map((card) => [card.id, card])),
  bought: new Map([
    ['oil', { name: 'Oil', ediblePercent: null, invoices: [invoice('6 x 1 gal', 9600)] }],
    ['vinegar', { name: 'Vinegar', ediblePercent: null, invoices: [invoice('4 x 1 gal', 1600)] }],
    ['cabbage', { name: 'Cabbage', ediblePercent: 80, invoices: [invoice('50 lb', 2500)] }],
    ['salt', { name: 'Salt', ediblePercent: null, invoices: [] }],
  ]),
})

describe('what food costs', () => {
  it('[RC27] by a dated invoice of cases and packs, the newest counts', () => {
    const old = invoice('6 x #10 cans', 3000, 2, '2026-09-01')
    const dearer = invoice('6 x #10 cans', 3600, 2, '2026-11-01')
    expect(newestInvoice([dearer, old])).toBe(dearer)
    expect(newestInvoice([])).toBeNull()
    // Of two of a day the one that was typed later.
    const mended = { ...dearer, cents: dearer.cents + 100 }
    expect(newestInvoice([old, dearer, mended])).toBe(mended)
    const cost = costOf(amount('3 #10 cans'), dearer, null)
    expect(cost.ok && toNumber(cost.cents)).toBe(900)
    expect(costOf(amount('1 cup'), dearer, null).ok).toBe(true)
    expect(costOf(amount('1 lb'), dearer, null)).toEqual({ ok: false, code: 'other-kind' })
  })

  it('[RC27] with trim, and recipes in it: slaw with dressing', () => {
    const box = boxOf(dressing, slaw)
    const made = costOfCard(dressing, box)
    // A gallon of oil is $16.00 and one of vinegar $4.00, a quart of each $4.00 and $1.00.
    expect(toNumber(made.cents)).toBe(500)
    expect(made.unknown).toEqual([])
    const all = costOfCard(slaw, box)
    // 10 lb trimmed are 12.5 lb at 50 cents, and half of the dressing.
    expect(toNumber(all.cents)).toBe(625 + 250)
    expect(all.unknown).toEqual([])
    expect(all.lines.at(-1)?.cost).toEqual({ ok: false, code: 'to-taste' })
    const portion = costOfPortion(dressing, box, amount('2 fl oz'))
    expect(portion && toNumber(portion)).toBe(15.625)
  })

  it('[RC27] what isn’t known is named and is no nothing', () => {
    const code = (card: Card, ...more: readonly Card[]) =>
      costOfCard(card, boxOf(card, ...more)).unknown.map(({ cost }) => !cost.ok && cost.code)
    const one = (of: string, typed: string, isRecipe = false): Card => ({
      ...slaw,
      lines: [line(of, typed, isRecipe)],
    })
    expect(code(one('salt', '1 lb'))).toEqual(['no-invoice'])
    expect(code(one('nobody', '1 lb'))).toEqual(['no-invoice'])
    expect(code(one('oil', ''))).toEqual(['no-amount'])
    expect(code(one('oil', '1 lb'))).toEqual(['other-kind'])
    expect(code(one('dressing', '1 lb', true), dressing)).toEqual(['other-kind'])
    expect(code(one('dressing', '1 qt', true))).toEqual(['no-amount'])
    expect(costOfPortion(one('salt', '1 lb'), boxOf(), amount('1 cup'))).toBeNull()
    expect(costOf(amount('1 lb'), invoice('1 lb', 0), null)).toEqual({
      ok: false,
      code: 'price-of-nothing',
    })
    expect(costOf(amount('1 lb'), invoice('a lot', 900), null)).toEqual({
      ok: false,
      code: 'pack-not-understood',
    })
  })

  it('[RC27] a recipe that goes round ends, and says so', () => {
    const a: Card = { ...dressing, id: 'a', lines: [line('b', '1 qt', true)] }
    const b: Card = { ...dressing, id: 'b', lines: [line('a', '1 qt', true)] }
    const cost = costOfCard(a, boxOf(a, b))
    expect(cost.unknown.map((one) => !one.cost.ok && one.cost.code)).toEqual(['circle'])
    expect(cost.cents).toEqual(ZERO)
  })

  it('[RC26] more than all of it, and none of it, can’t be eaten', () => {
    for (const percent of [0, 0.5, 101, Number.NaN])
      expect(() => asPurchased(amount('1 lb'), percent)).toThrow(RangeError)
    // Decimals count as they are written: 88.46 percent of 50/44.23 lb is a pound.
    expect(asPurchased(amount('1 lb'), 88.46)).toEqual(scaled(amount('1 lb'), ratio(10_000, 8_846)))
  })

  it('[RC69] a bare number counts no cases, packs, heads, loaves or parts, and what a case holds may be said', () => {
    for (const [card, pack] of [
      ['12', '1 case'],
      ['12 each', '1 bag'],
      ['24 pieces', '1 head'],
      ['12', '2 loaves'],
      ['3 cloves', '1 each'],
      ['6 leaves', '1'],
      ['12 slices', '2'],
    ] as const) {
      const other = { ok: false, code: 'other-kind' }
      expect(costOf(amount(card), invoice(pack, 2_000), null), card).toEqual(other)
      expect(costOf(amount(pack), invoice(card, 2_000), null), card).toEqual(other)
    }
    const of = (card: string, pack: string) => {
      const cost = costOf(amount(card), invoice(pack, 2_000), null)
      return cost.ok ? toNumber(cost.cents) : cost.code
    }
    expect(of('12', '1 case of 12 each')).toBe(2_000)
    expect(of('12', '1 case of 4 packs of 6 each')).toBe(1_000)
    expect(of('10 slices', '2 loaves of 20 slices')).toBe(500)
    expect(of('1 lb', '1 case of 6 x 5 lb')).toBeCloseTo(2_000 / 30, 9)
    expect(of('30 eggs', '15 dozen')).toBeCloseTo(2_000 / 6, 9)
    expect(of('12', '15 dozen eggs')).toBeCloseTo(2_000 / 15, 9)
    expect(typedAmount('1 case of')).toMatchObject({ ok: false, code: 'no-number' })
    expect(costEn.costCode('other-kind')).toContain('1 case of 12 each')
  })

  it('[RC27] a recipe in it costs by the same factor as is bought of it: by the line’s density, by bare portions', () => {
    for (const [yields, typed, factor] of [
      ['4 qt', '6 lb (3 qt)', 0.75],
      ['24 portions', '12', 0.5],
      ['24 portions of 4 oz', '3 lb', 0.5],
      ['4 qt', '2 qt', 0.5],
    ] as const) {
      const inner = { ...dressing, yields }
      const outer = { ...slaw, lines: [line('dressing', typed, true)] }
      const box = boxOf(inner, outer)
      const { cents, unknown } = costOfCard(outer, box)
      expect(unknown, typed).toEqual([])
      expect(toNumber(cents), typed).toBeCloseTo(factor * toNumber(costOfCard(inner, box).cents), 9)
      const bought = factorOfRecipe(yields, amount(typed), densityOfTyped(typed))
      expect(bought.ok && toNumber(bought.factor), typed).toBe(factor)
    }
    // Slices aren't portions.
    const outer = { ...slaw, lines: [line('dressing', '12 slices', true)] }
    const box = boxOf({ ...dressing, yields: '24 portions' }, outer)
    expect(costOfCard(outer, box).unknown).toHaveLength(1)
    expect(factorOfRecipe('', amount('1 qt'), null)).toMatchObject({ code: 'no-yield' })
  })

  it('[RC28] of a price of nothing food is no share', () => {
    expect(foodShare(ratio(100), 0)).toBeNull()
  })
})
