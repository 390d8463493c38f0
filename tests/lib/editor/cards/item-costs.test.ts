import { describe, expect, it } from 'vitest'
import { cardBoxOf } from '#lib/editor/cards/card-box.ts'
import { itemCost, itemsWith } from '#lib/editor/cards/item-costs.ts'
import type { Draft, Row, Rows } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { foodShare } from '#lib/recipes/purchased.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { priceOf, usualChoice } from '#lib/service/events/build-choice.ts'
import { costEn } from '#lib/words/recipe/cost-en.ts'
import { demoStation } from '#server/demo-station.ts'

const paid = (packTyped: string, cents: number): Row => ({
  invoices: [{ date: '2026-11-02', packs: 1, packTyped, cents }],
})
const of = (usual: 'in' | 'side' | 'no', component: string, required = false): Row => ({
  component,
  usual,
  required,
})

/** A breakfast burrito as it may be: eggs are its heart, meat, cheese and salsa can be left out. */
const rows: Rows = {
  house: { currency: 'USD' },
  'ingredient:egg': { name: 'Eggs', at: 0, ...paid('15 dozen eggs', 3_600) },
  // Half of a pound is eaten.
  'ingredient:sausage': { name: 'Sausage', at: 1, edible: 50, ...paid('10 lb', 3_200) },
  'ingredient:cheese': { name: 'Cheese', at: 2, ...paid('5 lb', 2_000) },
  'recipe:scrambled': {
    name: 'Scrambled eggs',
    at: 0,
    ingredients: ['egg'],
    recipes: [],
    lines: [{ of: 'egg', typed: '30 eggs' }],
    yields: '20 portions of 3 oz',
  },
  'component:eggs': {
    name: 'Eggs',
    at: 0,
    ingredients: [],
    recipes: ['scrambled'],
    portion: { tool: 'tongs', grams: 85.04856937, source: 'weighed' },
    extraCents: 100,
  },
  'component:meat': {
    name: 'Sausage',
    at: 1,
    ingredients: ['sausage'],
    recipes: [],
    portion: { tool: 'tongs', grams: 56.69904625, source: 'weighed' },
    extraCents: 150,
  },
  'component:cheese': {
    name: 'Cheese',
    at: 2,
    ingredients: ['cheese'],
    recipes: [],
    portion: { tool: 'scoop', number: 16, level: 1, gPerCup: 113.4, source: 'table' },
    extraCents: 75,
    side: true,
  },
  'component:wrap': {
    name: 'Tortilla',
    at: 3,
    ingredients: ['wrap'],
    recipes: [],
    portion: { tool: 'piece', pieces: 1 },
    costCents: 30,
  },
  'component:salsa': {
    name: 'Salsa',
    at: 4,
    ingredients: ['salsa'],
    recipes: [],
    portion: { tool: 'cup', flOz: 2 },
    extraCents: 50,
    costCents: 12,
  },
  'item:burrito': {
    name: 'Burrito',
    at: 0,
    priceCents: 600,
    heart: 'eggs',
    base: { choices: ['wrap'], usual: 'wrap' },
    parts: [of('in', 'eggs', true), of('in', 'meat'), of('side', 'cheese'), of('no', 'salsa')],
  },
  'item:unpriced': { name: 'Unpriced', at: 1, heart: 'eggs', parts: [of('in', 'eggs', true)] },
}
const draft: Draft = { station: 'alder-hall', rows }
const burrito = (changed: Rows = {}) => {
  const now: Draft = { ...draft, rows: { ...rows, ...changed } }
  const cost = itemCost(now, cardBoxOf(now), 'burrito')
  if (!cost) throw new Error('no cost')
  return cost
}
const partOf = (id: string, changed: Rows = {}) => {
  const found = burrito(changed).parts.find(({ component }) => component === id)
  if (!found) throw new Error(id)
  return found
}
const near = (exact: Parameters<typeof toNumber>[0] | null | undefined) =>
  exact ? toNumber(exact) : null

describe('what an item’s food costs', () => {
  // 30 of 180 eggs at $36.00 for 20: 30 cents. 2 oz of $3.20 a pound, half eaten: 80. 1 oz at $4.00: 25.
  it('[RC66] as it comes: base, heart, parts in it and on the side', () => {
    const cost = burrito()
    expect(near(partOf('eggs').cents)).toBeCloseTo(30, 6)
    expect(near(partOf('meat').cents)).toBeCloseTo(80, 6)
    expect(near(partOf('cheese').cents)).toBeCloseTo(25, 3)
    expect(near(cost.asItComes.cents)).toBeCloseTo(30 + 30 + 80 + 25, 3)
    expect(cost.unknown).toEqual([])
    expect(near(foodShare(cost.asItComes.cents, 600))).toBeCloseTo(0.275, 4)
    expect(costEn.share(cost.asItComes, true, 'USD')).toBe('$1.65 · 28% of $6.00')
    expect(costEn.left(cost.asItComes, true, 'USD')).toBe('$4.35 left')
  })

  it('[RC66] “no meat” takes its food away and leaves the price; what can’t be left out has no “no”', () => {
    const { no } = partOf('meat')
    expect(no?.priceCents).toBe(600)
    expect(near(no?.cents)).toBeCloseTo(85, 3)
    expect(near(no?.leftCents)).toBeCloseTo(515, 3)
    expect(near(partOf('cheese').no?.leftCents)).toBeCloseTo(460, 3)
    expect([partOf('eggs').no, partOf('wrap').no, partOf('salsa').no]).toEqual([null, null, null])
  })

  it('[RC66] “extra” adds its food and what one more costs the guest; the first of what is only asked for costs nothing', () => {
    const { extra } = partOf('meat')
    expect(extra?.priceCents).toBe(750)
    expect(near(extra?.cents)).toBeCloseTo(245, 3)
    expect(near(extra?.leftCents)).toBeCloseTo(505, 3)
    expect(partOf('salsa').extra).toMatchObject({ priceCents: 600 })
    expect(near(partOf('salsa').extra?.leftCents)).toBeCloseTo(423, 3)
    expect(partOf('wrap').extra).toBeNull()
  })

  it('[RC66] a dearer case changes the item and its extra, and not the item without it', () => {
    const dearer: Rows = {
      'ingredient:sausage': { name: 'Sausage', at: 1, edible: 50, ...paid('10 lb', 4_800) },
    }
    expect(near(burrito(dearer).asItComes.cents)).toBeCloseTo(205, 3)
    expect(near(partOf('meat', dearer).extra?.cents)).toBeCloseTo(325, 3)
    expect(near(partOf('meat', dearer).no?.cents)).toBeCloseTo(85, 3)
  })

  it('[RC66] what nobody knows is named, and counts as at least', () => {
    const unpriced: Rows = { 'ingredient:sausage': { name: 'Sausage', at: 1 } }
    const cost = burrito(unpriced)
    expect(cost.unknown).toEqual(['Sausage'])
    expect(partOf('meat', unpriced).cents).toBeNull()
    expect(costEn.share(cost.asItComes, false, 'USD')).toMatch(/^at least /)
    expect(costEn.left(cost.asItComes, false, 'USD')).toMatch(/^at most /)
    expect(itemCost(draft, cardBoxOf(draft), 'unpriced')).toBeNull()
    expect(itemCost(draft, cardBoxOf(draft), 'nobody')).toBeNull()
  })

  it('[RC66] what is typed at a pan is for one load: its cost by the portions of that', () => {
    const typed: Rows = {
      'component:salsa': {
        ...rows['component:salsa'],
        ingredients: ['egg', 'cheese'],
        lines: [
          { of: 'egg', typed: '6 eggs' },
          { of: 'cheese', typed: '1 lb' },
        ],
        remake: { portionsPerLoad: 20 },
      } as Row,
    }
    // 6 of 180 eggs at $36.00 are $1.20, a pound of 5 at $20.00 is $4.00: $5.20 of 20 portions.
    expect(near(partOf('salsa', typed).cents)).toBeCloseTo(26, 9)
    // Where a price lacks, what the station said counts.
    const lacking = { ...typed, 'ingredient:cheese': { name: 'Cheese', at: 2 } }
    expect(near(partOf('salsa', lacking).cents)).toBe(12)
  })

  it('[RC66] what is cooked isn’t priced as so much of what was bought, unless somebody said what is eaten of it', () => {
    const cooked = (kind: string, more: Row = {}): Rows => ({
      'ingredient:cheese': { name: 'Rice', at: 2, ...paid('5 lb', 2_000), ...more },
      'component:cheese': { ...rows['component:cheese'], food: { kind } } as Row,
    })
    expect(partOf('cheese', cooked('plant')).cents).toBeNull()
    expect(near(partOf('cheese', cooked('ready')).cents)).toBeCloseTo(25, 3)
    expect(near(partOf('cheese', cooked('plant', { edible: 50 })).cents)).toBeCloseTo(50, 2)
  })

  it('[RC66] items that usually take a component, and no other', () => {
    const box = cardBoxOf(draft)
    expect(itemsWith(draft, box, 'meat').map(({ part }) => part.component)).toEqual(['meat'])
    expect(itemsWith(draft, box, 'salsa')).toEqual([])
  })

  it('[RC66] what a guest pays is what an order is charged, item by item of the demo', () => {
    const demo = draftOf(JSON.parse(JSON.stringify(demoStation)) as WrittenDocument)
    for (const item of demoStation.items) {
      const cost = itemCost(demo, cardBoxOf(demo), item.id)
      if (!cost) throw new Error(item.id)
      const usual = usualChoice(item)
      expect(cost.asItComes.priceCents).toBe(priceOf(demoStation, item, usual))
      for (const { component, extra, no } of cost.parts) {
        const now = usual.parts[component]
        if (!now) continue
        const withOne = {
          ...usual,
          parts: {
            ...usual.parts,
            [component]: { ...now, placement: 'in' as const, portions: now.portions + 1 },
          },
        }
        expect(extra?.priceCents, `${item.id} ${component}`).toBe(
          priceOf(demoStation, item, withOne),
        )
        if (no) expect(no.priceCents).toBe(item.priceCents)
      }
    }
  })
})
