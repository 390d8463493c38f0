import { describe, expect, it } from 'vitest'
import { applyStep } from '#lib/editor/apply-step.ts'
import { cardBoxOf, cardOf, vesselOf } from '#lib/editor/cards/card-box.ts'
import { holds, portionSteps, usualOf } from '#lib/editor/cards/pan-holds.ts'
import { servedAsOf } from '#lib/editor/cards/served-as.ts'
import { weighed, weighedFields } from '#lib/editor/cards/weighed.ts'
import type { Draft, Rows } from '#lib/editor/draft.ts'
import { notUnderstood } from '#lib/editor/not-understood.ts'
import { ratio, toNumber } from '#lib/recipes/rational.ts'
import { recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
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
    const asked = { make: '20', handOf: null, hand: '', fits: '', portions: '' }
    const sheet = recipeSheet(card, cardBoxOf(draft), served, { ...asked, make: 'x 1' })
    // Nobody says how many: it is as many as are made.
    expect(sheet.checked).toMatchObject({
      code: 'checked',
      by: 'made',
      check: { gives: 33, noted: false },
    })
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
    expect(all.checked).toMatchObject({
      by: 'card',
      ways: [
        { kind: 'scoop', number: 10, portions: 20 },
        { kind: 'enough', typed: 'x 0.602' },
      ],
    })
    const [eggs] = all.lines
    expect(eggs?.amount.kind === 'measured' && sayAmount(eggs.amount.measure.exact)).toBe('30 eggs')
  })

  it('[RC61] it is held against the number that is typed, else asked, else the pans’ usual load', () => {
    const card = cardOf(draft, 'scrambled')
    if (!card) throw new Error('no card')
    const pans: Rows = {
      ...rows,
      'pan:one': { component: 'eggs', usualPortions: 12, at: 0 },
      'pan:two': { component: 'eggs', usualPortions: 8, at: 1 },
      'pan:none': { component: 'eggs', at: 2 },
    }
    const served = servedAsOf({ ...draft, rows: pans }, 'scrambled')
    const unasked = { make: '', handOf: null, hand: '', fits: '', portions: '' }
    const of = (asked: object, yields = card.yields) =>
      recipeSheet({ ...card, yields }, cardBoxOf(draft), served, { ...unasked, ...asked }).checked
    expect(of({})).toMatchObject({ by: 'usual', portions: ratio(20), check: { gives: 33 } })
    expect(of({ portions: ' 33 ' })).toMatchObject({ by: 'asked', portions: ratio(33) })
    expect(of({ portions: '33', make: 'x 2' })).toMatchObject({ check: { gives: 66, noted: true } })
    expect(of({ make: '40' })).toMatchObject({ by: 'make', portions: ratio(40) })
    // Another amount on purpose is held against nothing but itself.
    expect(of({ make: 'x 2' })).toMatchObject({ by: 'made', portions: ratio(66) })
    expect(of({ handOf: 0, hand: '10 eggs' })).toMatchObject({ by: 'made', portions: ratio(11) })
    for (const portions of ['0', 'many', '1.5', '-3'])
      expect(of({ portions })).toEqual({ code: 'no-count' })
    expect(of({}, '20 g')).toMatchObject({ by: 'usual', check: { gives: 0 } })
    expect(of({ make: 'x 1' }, '20 g')).toEqual({ code: 'under-one' })
  })

  it('[RC65] what a recipe is made in splits it into batches, and is gone where the kitchen has it no more', () => {
    const house = { ...rows.house, vessels: [{ id: 'pot', name: 'Kettle', holds: '3 kg' }] }
    const made: Rows = {
      ...rows,
      house,
      'recipe:scrambled': { ...rows['recipe:scrambled'], vessel: 'pot' },
    }
    expect(vesselOf({ ...draft, rows: made }, 'scrambled')).toEqual({
      id: 'pot',
      name: 'Kettle',
      holds: '3 kg',
    })
    expect(
      vesselOf({ ...draft, rows: { ...made, house: rows.house ?? {} } }, 'scrambled'),
    ).toBeNull()
    const card = cardOf(draft, 'scrambled')
    if (!card) throw new Error('no card')
    const asked = { make: 'x 5', handOf: null, hand: '', fits: '3 kg', portions: '' }
    // 9.15 kg in a pot of 3: four of 2.2875 each.
    const { fits, notInStep } = recipeSheet(card, cardBoxOf(draft), null, asked)
    expect(fits).toMatchObject({ ok: true, count: 4 })
    expect(fits?.ok && toNumber(fits.each.size)).toBeCloseTo(2287.5, 9)
    expect(notInStep).toEqual([])
  })

  it('[RC65] what a pot holds that isn’t understood is told at its field', () => {
    const house = {
      vessels: [
        { id: 'a', name: 'Kettle', holds: '20-30 qt' },
        { id: 'b', name: 'Oven', holds: '4 full pans' },
        { id: 'c', name: 'Bowl', holds: '' },
      ],
    }
    expect(
      notUnderstood({ station: 'a', rows: { house } }).map(({ code, field }) => [field, code]),
    ).toEqual([
      ['vessels.0.holds', 'vessel-range'],
      ['vessels.1.holds', 'vessel-no-depth'],
    ])
  })

  it('[RC62] another scoop in a draft is its portion, and a proposed load follows it', () => {
    const pan = { component: 'eggs', size: 'third', depthIn: 4, at: 0 }
    const [proposed] = [usualOf(holds('third', 4, scoop))]
    const own: Draft = {
      ...draft,
      rows: {
        ...rows,
        'pan:proposed': { ...pan, usualPortions: proposed },
        'pan:said': { ...pan, usualPortions: 7 },
      },
    }
    const next = { ...scoop, number: 10 }
    const after = portionSteps(own, 'eggs', next).reduce((now, step) => {
      const stepped = applyStep(now, step)
      if (!stepped.ok) throw new Error(stepped.why)
      return stepped.draft
    }, own)
    expect(after.rows['component:eggs']?.portion).toEqual(next)
    expect(after.rows['pan:proposed']?.usualPortions).toBe(usualOf(holds('third', 4, next)))
    expect(after.rows['pan:said']?.usualPortions).toBe(7)
    expect(usualOf(holds('third', 4, next))).toBeLessThan(proposed ?? 0)
  })

  it('[RC20] what isn’t understood leaves the card as it is, and says why', () => {
    const card = cardOf(draft, 'odd')
    if (!card) throw new Error('no card')
    const asked = { make: '40', handOf: 0, hand: '3 qt', fits: 'a pot', portions: '' }
    const sheet = recipeSheet(card, cardBoxOf(draft), null, asked)
    expect(sheet.yieldProblem).toMatchObject({ code: 'zero' })
    expect(sheet.wanted).toMatchObject({ ok: false, code: 'range' })
    expect(sheet.fits).toMatchObject({ ok: false })
    expect(toNumber(sheet.factor)).toBe(1)
    expect(sheet.checked).toEqual({ code: 'not-served' })
    const made = recipeSheet(card, cardBoxOf(draft), null, { ...asked, handOf: null })
    expect(made.wanted).toMatchObject({ ok: false, code: 'no-yield' })
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
