import { describe, expect, it } from 'vitest'
import { cardBoxOf, cardOf } from '#lib/editor/cards/card-box.ts'
import { itemCosts } from '#lib/editor/cards/item-costs.ts'
import { servedAsOf } from '#lib/editor/cards/served-as.ts'
import { weighed, weighedFields } from '#lib/editor/cards/weighed.ts'
import type { Draft, Rows } from '#lib/editor/draft.ts'
import { notUnderstood } from '#lib/editor/not-understood.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { recipeSheet } from '#lib/recipes/recipe-sheet.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'

const invoice = { date: '2026-11-02', packs: 1, packTyped: '15 dozen eggs', cents: 3_600 }
const scoop = { tool: 'scoop', number: 16, level: 1, gPerCup: 220, source: 'USDA SR28, NDB 01132' }

const rows: Rows = {
  house: { name: 'Alder Hall', currency: 'USD' },
  'ingredient:egg': { name: 'Eggs', at: 0, invoices: [invoice, { date: 5 }] },
  'ingredient:milk': { name: 'Milk', at: 1 },
  'ingredient:salt': { name: 'Salt', at: 2, edible: 200 },
  'recipe:scrambled': {
    name: 'Scrambled eggs',
    at: 0,
    ingredients: ['egg', 'milk', 'salt'],
    recipes: [],
    lines: [
      { of: 'egg', typed: '30 eggs' },
      { of: 'salt', typed: 'to taste' },
      { of: 'gone', typed: '1 lb' },
    ],
    yields: '1830 g',
  },
  'recipe:odd': {
    name: 'Odd',
    at: 1,
    ingredients: ['milk'],
    recipes: [],
    lines: [{ of: 'milk', typed: '1-2 qt' }],
    yields: 'serves 0',
  },
  'component:eggs': {
    name: 'Eggs',
    at: 0,
    ingredients: [],
    recipes: ['scrambled'],
    portion: scoop,
    extraCents: 100,
  },
  'component:wrap': {
    name: 'Wrap',
    at: 1,
    ingredients: ['wrap'],
    recipes: [],
    portion: { tool: 'piece', pieces: 1 },
    costCents: 30,
  },
  'item:breakfast': {
    name: 'Breakfast wrap',
    at: 0,
    priceCents: 400,
    heart: 'eggs',
    base: { choices: ['wrap'], usual: 'wrap' },
    parts: [
      { component: 'eggs', usual: 'in', required: true },
      { component: 'none', usual: 'no', required: false },
    ],
  },
}
const draft: Draft = { station: 'alder-hall', rows }

describe('the cards of a draft', () => {
  it('[RC25] lines come as the card has them, and what has no amount behind them', () => {
    expect(cardOf(draft, 'scrambled')?.lines).toEqual([
      { of: 'egg', typed: '30 eggs', isRecipe: false },
      { of: 'salt', typed: 'to taste', isRecipe: false },
      { of: 'milk', typed: '', isRecipe: false },
    ])
    expect(cardOf(draft, 'nobody')).toBeNull()
    const { bought } = cardBoxOf(draft)
    expect(bought.get('egg')?.invoices).toEqual([invoice])
    expect(bought.get('salt')?.ediblePercent).toBeNull()
  })

  it('[RC4] what isn’t understood is told at its field, and what is empty isn’t', () => {
    expect(notUnderstood(draft).map(({ code, id, field }) => [id, field, code])).toEqual([
      ['odd', 'lines.0.typed', 'amount-range'],
      ['odd', 'yields', 'yield-zero'],
    ])
  })

  it('[RC23] 30 eggs for 20: by the pan’s own scoop and density, 33 portions', () => {
    const card = cardOf(draft, 'scrambled')
    const served = servedAsOf(draft, 'scrambled')
    if (!card || !served) throw new Error('no card')
    expect(served).toMatchObject({ component: 'eggs', level: 1, scoop: 16 })
    const asked = { make: '20', handOf: null, hand: '', fits: '' }
    const sheet = recipeSheet(card, cardBoxOf(draft), served, { ...asked, make: 'x 1' })
    expect(sheet.checked).toEqual({ code: 'not-asked' })
    // Twenty of the station's own portions are what is made: 20 × 55 g of 1,830 g.
    const twenty = recipeSheet(card, cardBoxOf(draft), served, asked)
    expect(toNumber(twenty.factor)).toBeCloseTo((20 * 55) / 1830, 9)
    expect(twenty.checked).toMatchObject({ code: 'checked', check: { gives: 20, noted: false } })
    const all = recipeSheet(
      { ...card, yields: '20 portions of 91.5 g' },
      cardBoxOf(draft),
      served,
      { ...asked, make: '' },
    )
    expect(all.checked).toMatchObject({ code: 'checked', check: { gives: 33, noted: true } })
    const [eggs] = all.lines
    expect(eggs?.amount.kind === 'measured' && sayAmount(eggs.amount.measure.exact)).toBe('30 eggs')
  })

  it('[RC20] what isn’t understood leaves the card as it is, and says why', () => {
    const card = cardOf(draft, 'odd')
    if (!card) throw new Error('no card')
    const asked = { make: '40', handOf: 0, hand: '3 qt', fits: 'a pot' }
    const sheet = recipeSheet(card, cardBoxOf(draft), null, asked)
    expect(sheet.yieldProblem).toMatchObject({ code: 'zero' })
    expect(sheet.wanted).toMatchObject({ ok: false, code: 'range' })
    expect(sheet.fits).toMatchObject({ ok: false })
    expect(toNumber(sheet.factor)).toBe(1)
    expect(sheet.checked).toEqual({ code: 'not-served' })
    const made = recipeSheet(card, cardBoxOf(draft), null, { ...asked, handOf: null })
    expect(made.wanted).toMatchObject({ ok: false, code: 'no-yield' })
  })

  it('[RC28] an item as it comes, without the component, and with an extra portion', () => {
    const [item] = itemCosts(draft, cardBoxOf(draft), 'eggs')
    if (!item) throw new Error('no item')
    // 30 eggs of 180 at $36.00 are $6.00 for 1,830 g; a #16 of 55 g is 18.03 cents. Milk has no amount.
    expect(item).toMatchObject({ priceCents: 400, extraPriceCents: 500, unknown: ['Eggs'] })
    const priced = {
      ...rows,
      'recipe:scrambled': { ...rows['recipe:scrambled'], ingredients: ['egg', 'salt'] },
    }
    const [full] = itemCosts(
      { station: 'a', rows: priced },
      cardBoxOf({ station: 'a', rows: priced }),
      'eggs',
    )
    if (!full) throw new Error('no item')
    expect(full.unknown).toEqual([])
    const egg = (600 * 55) / 1830
    expect(toNumber(full.cents)).toBeCloseTo(30 + egg, 9)
    expect(toNumber(full.without)).toBeCloseTo(30, 9)
    expect(toNumber(full.extra)).toBeCloseTo(30 + 2 * egg, 9)
  })
})

describe('what a component weighs', () => {
  const served = servedAsOf(draft, 'scrambled')
  if (!served) throw new Error('nobody serves it')
  const withPan: Draft = {
    ...draft,
    rows: {
      ...rows,
      'pan:one': {
        component: 'eggs',
        size: 'third',
        depthIn: 4,
        capacityFlOz: null,
        tareMg: 900_000,
      },
    },
  }

  it('[RC8] is typed as ten level scoops, as one full pan, or chosen from a table', () => {
    const scoops = weighed(draft, served, { by: 'measured', scoops: '550 g' })
    expect(scoops).toMatchObject({ ok: true, gPerCup: 220, density: { by: 'measured' } })
    expect(weighed(draft, served, { by: 'table', food: 'egg-scrambled' })).toMatchObject({
      gPerCup: 220,
    })
    // A third pan, 4 in deep, holds 125 fl oz usably: 15.625 cups.
    const pan = weighed(withPan, served, { by: 'pan', gross: '4337.5 g', tare: '' })
    expect(pan).toMatchObject({ ok: true, gPerCup: 220, density: { by: 'pan', offBy: 0.1 } })
    const own = weighed(withPan, served, { by: 'pan', gross: '4437.5 g', tare: '1 kg' })
    expect(own).toMatchObject({ gPerCup: 220 })
  })

  it('[RC8] goes into the component and into its portion, with where it is from', () => {
    const scoops = weighed(draft, served, { by: 'measured', scoops: '600 g' })
    if (!scoops.ok) throw new Error(scoops.code)
    expect(weighedFields(draft, 'eggs', scoops, 'weighed here')).toEqual({
      density: { gPerMl: 1.0144, by: 'measured', source: 'weighed here' },
      portion: { ...scoop, gPerCup: 240, source: 'weighed here' },
    })
  })

  it('[RC8] is refused with a code where nothing says it', () => {
    const code = (weighing: Parameters<typeof weighed>[2], of: Draft = draft) => {
      const read = weighed(of, served, weighing)
      return read.ok ? null : read.code
    }
    expect(code({ by: 'measured', scoops: '' })).toBe('no-weight')
    expect(code({ by: 'measured', scoops: '2 cups' })).toBe('no-weight')
    expect(code({ by: 'measured', scoops: '50 lb' })).toBe('unlikely')
    expect(code({ by: 'pan', gross: '9 lb', tare: '' })).toBe('no-measure')
    expect(code({ by: 'pan', gross: '1 lb', tare: '2 lb' }, withPan)).toBe('below-tare')
    expect(code({ by: 'table', food: '' })).toBe('not-in-the-table')
  })
})
