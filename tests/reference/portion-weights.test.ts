import { describe, expect, it } from 'vitest'
import icn from '#fixtures/reference/icn-scoops.json' with { type: 'json' }
import weights from '#fixtures/reference/scoop-weights.json' with { type: 'json' }
import sr28 from '#fixtures/reference/usda-sr28.json' with { type: 'json' }
import { mlFrom, type VolumeUnit } from '#lib/measure/kitchen-units.ts'
import { densityGPerMl, portionMg } from '#lib/measure/portion.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'

const rowOf = (food: string, measure: string) => {
  const row = sr28.rows.find((one) => one.food === food && one.measure === measure)
  if (row === undefined) throw new Error(`SR28 fixture has no ${measure} of ${food}`)
  return row
}

const densityOf = (food: string, measure: VolumeUnit): number => {
  const { grams, amount } = rowOf(food, measure)
  return densityGPerMl(grams, amount, measure)
}

const scoopGrams = (food: string, number: number): number =>
  portionMg(scoopVolumeMl(number), densityOf(food, 'cup'), 1) / 1000

describe('USDA SR28 household weights', () => {
  it.each(weights.rows)(
    '[Q6] $food weighs by the scoop what its cup weighs by the share',
    (row) => {
      expect(rowOf(row.food, 'cup').grams).toBe(row.gramsPerCup)
      for (const [number, grams] of Object.entries(row.grams)) {
        const off = Math.abs(scoopGrams(row.food, Number(number)) - grams)
        expect(off, `#${number}`).toBeLessThanOrEqual(0.05 + 1e-9)
      }
    },
  )

  it('[Q6] scoops that ICN prints as an exact share of a cup weigh that share of the SR28 cup', () => {
    const exact = icn.rows.filter((row) => row.offPercent === 0 && row.unit === 'cup')
    expect(exact).toHaveLength(4)
    for (const { food } of weights.rows) {
      for (const { number, amount } of exact) {
        const [over = 0, under = 1] = amount
        const share = (rowOf(food, 'cup').grams * over) / under
        expect(Math.abs(scoopGrams(food, number) - share), `${food} #${number}`).toBeLessThan(
          0.0006,
        )
      }
    }
  })

  it('[Q6] a #10 by the rule is 6.67 percent heavier than the 3/8 cup that ICN prints', () => {
    const printed = (rowOf('black beans, boiled', 'cup').grams * 3) / 8
    expect((scoopGrams('black beans, boiled', 10) / printed - 1) * 100).toBeCloseTo(6.67, 2)
  })

  it.each(weights.disagreements)(
    '[Q6] $food by the tablespoon is $spoonOffPercent percent off its own cup',
    (row) => {
      const off = (densityOf(row.food, 'tbsp') / densityOf(row.food, 'cup') - 1) * 100
      expect(off).toBeCloseTo(row.spoonOffPercent, 1)
    },
  )

  it('[Q1] SR28 measures are customary cups: its water weighs what 236.6 mL do', () => {
    for (const measure of ['cup', 'flOz'] as const) {
      expect(densityOf('water', measure)).toBeGreaterThan(0.997)
      expect(densityOf('water', measure)).toBeLessThan(1.003)
    }
    expect(rowOf('water', 'cup').grams / 240).toBeLessThan(0.99)
  })

  it('[Q6] milk weighs the same by the cup, the quart and the fluid ounce', () => {
    const perCup = densityOf('milk, whole', 'cup')
    expect(densityOf('milk, whole', 'quart')).toBeCloseTo(perCup, 12)
    expect(densityOf('milk, whole', 'flOz')).toBeCloseTo(perCup, 12)
    expect(portionMg(mlFrom(1, 'quart'), perCup, 1)).toBe(976_000)
  })

  it('[Q6] rows are whole: an NDB number of five digits and grams above zero, none twice', () => {
    const keys = sr28.rows.map((row) => `${row.food}|${row.measure}|${row.amount}`)
    expect(new Set(keys).size).toBe(keys.length)
    for (const row of sr28.rows) {
      expect(row.ndb, row.food).toMatch(/^\d{5}$/)
      expect(row.grams, row.food).toBeGreaterThan(0)
    }
  })
})
