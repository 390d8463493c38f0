import { describe, expect, it } from 'vitest'
import facts from '#fixtures/reference/eggs-and-cans.json' with { type: 'json' }
import sheet from '#fixtures/reference/icn-scrambled-eggs.json' with { type: 'json' }
import tm from '#fixtures/reference/tm-10-412.json' with { type: 'json' }
import sr28 from '#fixtures/reference/usda-sr28.json' with { type: 'json' }
import { type Amount, scaled, timesIn } from '#lib/recipes/amount.ts'
import { CANS, canOf } from '#lib/recipes/cans.ts'
import { densityOfFood } from '#lib/recipes/density.ts'
import { kitchenMeasure } from '#lib/recipes/kitchen-measures.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { asPurchased } from '#lib/recipes/purchased.ts'
import { dividedBy, fromNumber, ratio, times, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { US_G, US_ML } from '#lib/recipes/units.ts'
import { wantedOf } from '#lib/recipes/wanted.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}
const perCup = (food: string): number => {
  const row = sr28.rows.find((one) => one.food === food && one.measure === 'cup')
  if (!row) throw new Error(food)
  return row.grams / row.amount
}

describe('eggs', () => {
  it('[RC1] a dozen of each size weighs what its class asks, 1 1/2 oz less from size to size', () => {
    const all = Object.values(facts.sizesOzPerDozen)
    expect(all.every((oz, at) => at === 0 || (all[at - 1] ?? 0) - oz === 3)).toBe(true)
    // Two ounces a large egg in its shell, 1 3/4 of them out of it: 12 percent is shell.
    const large = scaled(amount(`${facts.sizesOzPerDozen.large} oz`), ratio(1, 12))
    const eaten = scaled(large, ratio(100 - facts.shell.refusePercent, 100))
    expect(sayAmount(eaten)).toBe('1 3/4 oz')
    expect(sayAmount(asPurchased(amount('1.76 oz'), 88))).toBe('2 oz')
  })

  it('[RC10] a pound of frozen egg is 1 7/8 cups and 9 eggs; a case of 30 lb 56 1/4 cups and 270', () => {
    const { cups, eggs, caseLb, caseCups, caseEggs } = facts.frozen
    const lbs = ratio(caseLb)
    expect(scaled(amount(cups), lbs)).toEqual(amount(caseCups))
    expect(sayAmount(scaled(amount(`${eggs} eggs`), lbs))).toBe(`${caseEggs} eggs`)
  })

  it('[RC9] a cup holds 4.86 large eggs by SR28, 4.8 by the USDA Foods sheet', () => {
    const { g, sr28PerCup, sheetPerCup, tbsp } = facts.large
    expect(perCup('egg, whole, raw') / g).toBeCloseTo(sr28PerCup, 2)
    const bySheet = timesIn(amount('1 cup'), amount(tbsp), null)
    expect(bySheet && toNumber(bySheet)).toBeCloseTo(sheetPerCup, 10)
    expect(toNumber(times(US_G.oz, fromNumber(facts.large.oz)))).toBeCloseTo(49.6, 1)
  })

  it.each(sheet.sheet.rows)('[RC22] the volume of $eggs eggs is said within its step', (row) => {
    const all = portionTotal(amount(facts.large.tbsp), row.eggs).total
    const shown = kitchenMeasure(amount(row.volume))
    expect(sayAmount(amount(row.volume))).toBe(row.said)
    // The sheet's own rounding of its 3 1/3 Tbsp an egg is under a spoon in two cups.
    const off = toNumber(dividedBy(shown.size, all.size)) - 1
    expect(Math.abs(off) * 100).toBeLessThan(1.1)
    expect(sayAmount(amount(`${row.oz} oz`))).toBe(row.weight)
  })

  it('[RC22] scrambled, an egg is 61 g by SR28 and 70 g by the sheet: 1/4 cup by either, of other eggs', () => {
    const density = densityOfFood('egg-scrambled')
    if (!density.ok) throw new Error('no density')
    const quarter = times(density.density.gPerMl, times(US_ML.cup, ratio(1, 4)))
    expect(toNumber(quarter)).toBeCloseTo(facts.large.quarterCupSr28G, 10)
    expect(facts.large.scrambledSheetG / facts.large.quarterCupSr28G).toBeGreaterThan(1.25)
  })
})

describe('cans', () => {
  it.each(facts.cans)('[RC7] a #$can holds $cups cups', ({ can, cups }) => {
    expect(canOf(can)?.ml).toEqual(times(US_ML.cup, fromNumber(cups)))
  })

  it('[RC7] a #10 is 105 fl oz, 13 1/8 cups, within 12 to 13 2/3', () => {
    const [ten] = CANS
    if (!ten) throw new Error('no #10')
    expect(ten.ml).toEqual(times(US_ML.flOz, ratio(facts.tenFlOz)))
    expect(amount(facts.tenCups).size).toEqual(ten.ml)
    expect(ten.leastMl).toEqual(times(US_ML.cup, ratio(facts.tenLeastCups)))
    const [over = 0, under = 1] = facts.tenMostCups
    expect(ten.mostMl).toEqual(times(US_ML.cup, ratio(over, under)))
  })
})

describe('the ounce scale of TM 10-412, on cards', () => {
  const SAID = ['', '1/4 oz', '1/2 oz', '3/4 oz', '1 oz']

  it('[RC22] every hundredth of an ounce over a pound is measured out by the printed scale', () => {
    for (const { fromHundredths, toHundredths, quarters } of tm.ounceScale)
      for (let hundredths = fromHundredths; hundredths <= toHundredths; hundredths += 1) {
        const ounces = `${16 + hundredths / 100} oz`
        const wanted = `1 lb ${SAID[quarters]}`.trim()
        expect(sayAmount(amount(ounces)), ounces).toBe(wanted)
      }
  })
})

describe('common practice, no source', () => {
  const card = typedYield('serves 2')
  const yields = card.ok ? card.yields : null

  it('[RC20] 2 oz of meat and 2 oz of shredded cheese for two: an ounce each, for 2, 20 and 348', () => {
    const served = { portion: null, density: null }
    const of = (wanted: string) => {
      const read = wantedOf(yields, wanted, served)
      if (!read.ok) throw new Error(read.code)
      return sayAmount(scaled(amount('2 oz'), read.factor))
    }
    expect([of('2'), of('20'), of('348')]).toEqual(['2 oz', '1 lb 4 oz', '21 lb 12 oz'])
  })

  it('[RC2] 2 oz of shredded cheese are half a cup, and no 2 fl oz', () => {
    const density = densityOfFood('cheddar-shredded')
    if (!density.ok) throw new Error('no density')
    const cups = timesIn(amount('2 oz'), amount('1 cup'), density.density)
    expect(cups && toNumber(cups)).toBeCloseTo(0.5018, 4)
    expect(timesIn(amount('2 oz'), amount('2 fl oz'), null)).toBeNull()
  })
})
