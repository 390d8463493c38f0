import { describe, expect, it } from 'vitest'
import guide from '#fixtures/reference/food-buying-guide.json' with { type: 'json' }
import eggs from '#fixtures/reference/icn-scrambled-eggs.json' with { type: 'json' }
import tm from '#fixtures/reference/tm-10-412.json' with { type: 'json' }
import { mgFrom, mlFrom } from '#lib/measure/kitchen-units.ts'
import { wholePortions } from '#lib/measure/portion.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'
import { sayPieces, sayWeight } from '#lib/words/amounts-en.ts'
import { gramsTo, mlTo, roundHalfUp } from '#tests/support/kitchen-units.ts'

describe('TM 10-412, recipe conversion', () => {
  const said = ['0 oz', '1/4 oz', '1/2 oz', '3/4 oz', '1 oz']

  it('[Q11] every hundredth of an ounce is said by the printed scale', () => {
    const seen = tm.ounceScale.flatMap(({ fromHundredths, toHundredths, quarters }) =>
      Array.from({ length: toHundredths - fromHundredths + 1 }, (_, at) => ({
        hundredths: fromHundredths + at,
        quarters,
      })),
    )
    expect(seen).toHaveLength(100)
    for (const { hundredths, quarters } of seen) {
      const wanted = quarters === 0 && hundredths > 0 ? 'under 1/4 oz' : said[quarters]
      expect(sayWeight(mgFrom(hundredths / 100, 'oz')), `.${hundredths}`).toBe(wanted)
      const above = quarters === 0 ? '5 lb' : `5 lb ${said[quarters]}`
      expect(sayWeight(mgFrom(80 + hundredths / 100, 'oz')), `5 lb .${hundredths}`).toBe(above)
    }
  })

  it('[Q11] 1 lb 4 oz for 348 portions of a card for 100 is 4 lb 5.60 oz, said 4 lb 5 1/2 oz', () => {
    const { factor, weight } = tm.examples
    expect(factor.wanted / factor.card).toBe(factor.factor)
    const lb = roundHalfUp(weight.lb * weight.factor, 2)
    expect(lb).toBe(weight.productLb)
    expect(gramsTo(mgFrom(lb, 'lb') / 1000, 'oz') - 64).toBeCloseTo(5.6, 4)
    expect(sayWeight(mgFrom(lb, 'lb'))).toBe(weight.rounded)
  })

  it('[Q16] ounces as hundredths of a pound round halves up: 2 lb 10 oz is 2.63', () => {
    for (const { lb, oz, printed } of tm.examples.decimalPounds) {
      expect(roundHalfUp(lb + oz / 16, 2)).toBe(printed)
    }
  })
})

describe('ICN scrambled eggs, USDA Recipe for Schools', () => {
  const { fifty, hundred, checks, portion } = eggs
  const rawCups = (batches: number) => batches * fifty.eggsLb * eggs.eggs.cupsPerLb

  it('[Q11] the weights of both batches are said as the card prints them', () => {
    const weights = (times: number) => ({
      eggsWeight: sayWeight(mgFrom(fifty.eggsLb * times, 'lb')),
      margarine: sayWeight(mgFrom(fifty.margarineOz * times, 'oz')),
    })
    expect(fifty).toMatchObject(weights(1))
    expect(hundred).toMatchObject(weights(2))
  })

  it('[Q3] fifty level #16 scoops are 12 1/2 cups from 15 1/4 cups of raw mix, a yield of 82 percent', () => {
    const served = mlTo(scoopVolumeMl(portion.scoop) * portion.servings, 'cup')
    const raw = rawCups(1) + mlTo(mlFrom(fifty.milkQt, 'quart'), 'cup')
    expect(served).toBeCloseTo(checks.servedCups, 10)
    expect(raw).toBeCloseTo(checks.rawCups, 10)
    expect(roundHalfUp((served / raw) * 100, 0)).toBe(checks.yieldPercent)
  })

  it('[Q14] six pounds are 54 eggs', () => {
    expect(sayPieces(fifty.eggsLb * eggs.eggs.eggsPerLb)).toBe(String(checks.eggs))
  })

  it.each(eggs.sheet.rows)(
    '[Q11] the weight of $eggs eggs is said as the sheet prints it',
    (row) => {
      expect(sayWeight(mgFrom(row.oz, 'oz'))).toBe(row.weight)
    },
  )
})

describe('USDA Food Buying Guide, servings per No. 10 can', () => {
  it.each(guide.rows)(
    '[Q16] $food: larger servings follow from the 1/4 cup with halves up',
    (row) => {
      expect(roundHalfUp(row.quarterCup / 2, 1)).toBe(row.halfCup)
      expect(roundHalfUp((row.quarterCup * 3) / 4, 1)).toBe(row.thirdCup)
      expect(roundHalfUp((row.quarterCup * 2) / 3, 1)).toBe(row.threeEighthsCup)
    },
  )

  it('[Q16] three of its halves come out one lower with toFixed, so toFixed is not the rule', () => {
    const wrong = guide.rows.filter(
      (row) => Number((row.quarterCup / 2).toFixed(1)) !== row.halfCup,
    )
    expect(wrong.map((row) => row.quarterCup)).toEqual([48.9, 45.3, 38.9])
  })

  it.each(guide.rows)('[Q7] $food: whole 1/2 cup servings are cut off, never rounded up', (row) => {
    expect(wholePortions(row.halfCup, 1)).toBe(row.wholeHalfCups)
  })
})
