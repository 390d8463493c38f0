import { describe, expect, it } from 'vitest'
import guide from '#fixtures/reference/food-buying-guide.json' with { type: 'json' }
import card from '#fixtures/reference/icn-scrambled-eggs.json' with { type: 'json' }
import methods from '#fixtures/reference/recipe-factors.json' with { type: 'json' }
import tm from '#fixtures/reference/tm-10-412.json' with { type: 'json' }
import sr28 from '#fixtures/reference/usda-sr28.json' with { type: 'json' }
import { type Amount, scaled, timesIn } from '#lib/recipes/amount.ts'
import { CANS } from '#lib/recipes/cans.ts'
import { densityOfCard, densityOfFood } from '#lib/recipes/density.ts'
import { factorForAmount, factorForPortions, factorOfLine } from '#lib/recipes/factor.ts'
import { FOOD_WEIGHTS } from '#lib/recipes/food-weights.ts'
import { takenApart } from '#lib/recipes/kitchen-measures.ts'
import { dividedBy, floorOf, fromNumber, ratio, times, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import { scoopMl, US_ML } from '#lib/recipes/units.ts'
import { yieldCheck } from '#lib/recipes/yield-check.ts'
import { sayAmount, sayTakenApart } from '#lib/words/recipe/measures-en.ts'
import { sayUnderstood } from '#lib/words/recipe/understood-en.ts'

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

const scaledBy = (typed: string, factor: number): string =>
  sayAmount(scaled(amount(typed), fromNumber(factor)))

describe('TM 10-412, Armed Forces Recipe Service, General Information', () => {
  it('[RC20] 348 portions of a card for 100 are 3.48 of it, and 1 lb 4 oz become 4 lb 5 1/2 oz', () => {
    const { wanted, card: portions, factor } = tm.examples.factor
    const found = factorForPortions(yields(`serves ${portions}`), ratio(wanted))
    expect(found).toEqual({ ok: true, factor: fromNumber(factor) })
    expect(scaledBy('1.25 lb', factor)).toBe(tm.examples.weight.rounded)
    expect(scaledBy('1 lb 4 oz', factor)).toBe('4 lb 5 1/2 oz')
  })

  it('[RC21] 102 lb at hand, where the card says 30 lb, are 3.40 of it', () => {
    expect(factorOfLine(amount('30 lb'), amount('102 lb'), null)).toEqual({
      ok: true,
      factor: fromNumber(3.4),
    })
  })

  it('[RC20] 348 servings of 3 oz from a card of 100 of 4 oz are 2.61 of it; 2 lb are 5.22 lb', () => {
    const all = scaled(amount('3 oz'), ratio(348))
    const found = factorForAmount(yields('100 servings of 4 oz'), all, null)
    expect(found).toEqual({ ok: true, factor: fromNumber(2.61) })
    expect(scaled(amount('2 lb'), fromNumber(2.61))).toEqual(amount('5.22 lb'))
  })

  it('[RC22] 19.98 gal are taken apart as the Navy prints it', () => {
    const { perHundredGal, portions, productGal, parts } = tm.gallons
    const all = scaled(amount(`${perHundredGal} gal`), ratio(portions, 100))
    expect(all).toEqual(amount(`${productGal} gal`))
    expect(sayTakenApart(takenApart(all.size))).toBe('19 gal 3 qt 1 pt 1 cup 10 Tbsp 2 3/4 tsp')
    const names = { gallon: 'gal', quart: 'qt', pint: 'pt', cup: 'cup', tbsp: 'tbsp', tsp: 'tsp' }
    expect(
      takenApart(all.size).map(({ whole, fraction, unit }) => [
        whole + (fraction === '3/4' ? 0.75 : 0),
        unit,
      ]),
    ).toEqual(parts.map(([many, unit]) => [many, names[unit as keyof typeof names]]))
  })
})

describe('the USDA factor method and textbooks', () => {
  it.each(methods.rows)('[RC20] $from to $to is $factor ($source)', ({ from, to, factor }) => {
    const wanted = yields(to)
    if (wanted.kind !== 'portions') throw new Error(to)
    const found =
      wanted.each === null
        ? factorForPortions(yields(from), wanted.count)
        : factorForAmount(yields(from), scaled(wanted.each, wanted.count), null)
    expect(found.ok && toNumber(found.factor)).toBeCloseTo(factor, 5)
  })

  it('[RC20] chicken salad E-05, 12 lb 12 oz for 100, is 10 lb 3 1/4 oz for 80 (10 lb 3.2 oz)', () => {
    expect(scaledBy('12 lb 12 oz', 0.8)).toBe('10 lb 3 1/4 oz')
    expect(scaled(amount('12 lb 12 oz'), fromNumber(0.8))).toEqual(amount('10 lb 3.2 oz'))
  })
})

describe('a complete government recipe: ICN scrambled eggs, USDA Recipe for Schools', () => {
  const { fifty, hundred } = card
  const lines = ['milk', 'salt', 'margarine', 'parsley'] as const

  it.each(lines)('[RC22] %s is said as both columns print it', (line) => {
    expect(sayAmount(amount(fifty[line]))).toBe(fifty[line])
    expect(scaledBy(fifty[line], 2)).toBe(hundred[line])
  })

  it('[RC22] eggs by weight and by volume, and margarine by the cup', () => {
    expect(scaledBy(fifty.eggsWeight, 2)).toBe(hundred.eggsWeight)
    expect(scaledBy(fifty.eggsVolume, 1)).toBe(fifty.eggsVolume)
    expect(scaledBy(fifty.eggsVolume, 2)).toBe(hundred.eggsVolume)
    expect(scaledBy(fifty.margarineVolume, 2)).toBe(hundred.margarineVolume)
  })

  it('[RC10] its card says a density: 6 lb are 2 qt 3 1/4 cups, 1 7/8 cups a pound', () => {
    const density = densityOfCard(amount(fifty.eggsWeight), amount(fifty.eggsVolume))
    const cups = timesIn(amount('1 lb'), amount('1 cup'), density)
    expect(cups && toNumber(cups)).toBeCloseTo(card.eggs.cupsPerLb, 12)
  })

  it('[RC23] 50 quarter cups from 15 1/4 cups of mix: what is cooked is 18 percent less', () => {
    const raw = amount('15 1/4 cups')
    const check = yieldCheck(raw, amount('1 #16 scoop'), ratio(50), null, 1)
    expect(check.ok && check.takes).toEqual(amount('12 1/2 cups'))
    expect(check.ok && Math.round((1 / (1 + check.over)) * 100)).toBe(card.checks.yieldPercent)
  })
})

describe('eggs and cans', () => {
  const gramsOf = (food: string, measure: string): number => {
    const row = sr28.rows.find((one) => one.food === food && one.measure === measure)
    if (!row) throw new Error(`${food} ${measure}`)
    return row.grams / row.amount
  }

  it('[RC23] 30 eggs scrambled at the USDA weight are about 33 level #16 scoops, not 20', () => {
    const cooked = amount(`${30 * gramsOf('egg, scrambled', 'large')} g`)
    const found = densityOfFood('egg-scrambled')
    const density = found.ok ? found.density : null
    const check = yieldCheck(cooked, amount('1 #16 scoop'), ratio(20), density, 1)
    expect(check).toMatchObject({ ok: true, gives: 33, noted: true })
    expect(check.ok && check.over).toBeCloseTo(0.6636, 3)
    expect(check.ok && check.scoop).toEqual({ number: 10, portions: 20 })
  })

  it('[RC22] 1 1/2 eggs a portion are 30 for 20 (common practice, no source)', () => {
    expect(scaledBy('1.5 eggs', 20)).toBe('30 eggs')
  })

  it('[RC22] 1/4 cup and 1 Tbsp of sauce are three level #40 and a rest (common practice)', () => {
    const sauce = amount('1/4 cup 1 Tbsp')
    const scoops = timesIn(sauce, amount('1 #40 scoop'), null)
    expect(scoops && Number(floorOf(scoops))).toBe(3)
    expect(scoops && toNumber(scoops)).toBeCloseTo(3.125, 12)
  })

  it('[RC7] a #10 can is 105 fl oz, within 12 to 13 2/3 cups; two are about 6 1/2 qt', () => {
    const [can] = CANS
    expect(can?.ml).toEqual(times(US_ML.flOz, ratio(105)))
    const two = times(US_ML.cup, ratio(105, 4))
    expect(toNumber(dividedBy(two, US_ML.qt))).toBeCloseTo(6.5625, 12)
    for (const one of CANS) {
      expect(one.leastMl.over * one.ml.under <= one.ml.over * one.leastMl.under).toBe(true)
      expect(one.ml.over * one.mostMl.under <= one.mostMl.over * one.ml.under).toBe(true)
    }
  })

  it.each([
    ['2 #10 cans', 'about 6 1/2 qt, from 6 qt to 6 3/4 qt'],
    ['1 #2 1/2 can', 'about 3 1/2 cups'],
    ['3 #303 cans', 'about 1 1/2 qt'],
    ['1 lb 4 oz', '565 g'],
    ['500 g', '1 lb 1 3/4 oz'],
    ['1 qt', '945 mL'],
    ['30 eggs', ''],
  ])('[RC7] %s is told as %s', (typed, said) => {
    expect(sayUnderstood(amount(typed))).toBe(said)
  })

  it.each(guide.rows)(
    '[RC7] $food: what the Food Buying Guide serves of a #10 fits into one',
    (row) => {
      const [can] = CANS
      if (!can) throw new Error('no #10')
      const quarterCups = toNumber(dividedBy(can.mostMl, times(US_ML.cup, ratio(1, 4))))
      expect(row.quarterCup).toBeLessThanOrEqual(quarterCups)
      expect(row.quarterCup).toBeGreaterThan(0.7 * quarterCups)
    },
  )

  it('[RC9] the table of household weights is SR28’s', () => {
    const perCup = new Map<string, number[]>()
    for (const one of sr28.rows.filter(({ measure }) => measure === 'cup'))
      perCup.set(one.ndb, [...(perCup.get(one.ndb) ?? []), one.grams / one.amount])
    for (const { id, ndb, gPerCup } of FOOD_WEIGHTS)
      expect(perCup.get(ndb) ?? [], id).toContain(gPerCup)
  })

  it('[RC8] a level #16 of scrambled egg at 220 g a cup weighs 55 g', () => {
    const found = densityOfFood('egg-scrambled')
    const g = found.ok ? toNumber(times(found.density.gPerMl, scoopMl(16))) : 0
    expect(g).toBeCloseTo(55, 10)
  })
})
