import { expect, test } from 'vitest'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import { correctedYield } from '#lib/recipes/measured-yield.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { type Asked, type Checked, recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { US_ML } from '#lib/recipes/units.ts'
import { costEn } from '#lib/words/recipe/cost-en.ts'
import { measuredEn } from '#lib/words/recipe/measured-en.ts'

const CHILI: Card = {
  id: 'chili',
  name: 'Chili',
  yields: '1 gal',
  lines: [{ of: 'beans', typed: '2 qt', isRecipe: false }],
}
const BOX: CardBox = {
  cards: new Map([['chili', CHILI]]),
  bought: new Map([['beans', { name: 'Beans', ediblePercent: null, invoices: [] }]]),
}
/** A cup each, 16 in a gallon. */
const SERVED = {
  portion: { kind: 'volume', size: US_ML.cup, written: 'us' },
  ...{ density: null, level: null, usual: 16 },
} as const
const UNASKED: Asked = { make: '', handOf: null, hand: '', fits: '', portions: '' }

const checked = (ratios: readonly number[], asked: Partial<Asked> = {}) => {
  const by = correctedYield(ratios)
  const sheet = recipeSheet(CHILI, BOX, SERVED, { ...UNASKED, ...asked }, by)
  if (sheet.checked.code !== 'checked') throw new Error(sheet.checked.code)
  return { ...sheet, checked: sheet.checked as Checked & { readonly code: 'checked' } }
}

test('[RC58] without a batch the check is the card’s, and says nothing of batches', () => {
  const { checked: told } = checked([])
  expect(told).toMatchObject({ byBatches: null, check: { gives: 16, noted: false, over: 0 } })
})

test('[RC58] with some it counts by their mean, between whole portions, and the card’s stay told', () => {
  // 0.88 ± 4.3027 × 0.03 ÷ √3: by hand 0.8055 to 0.9545 of 16.
  const { checked: told, made } = checked([0.85, 0.88, 0.91])
  expect(told.check).toMatchObject({ gives: 14, noted: true })
  expect(told.check.over).toBeCloseTo(-0.12, 9)
  expect(told.byBatches).toEqual({ batches: 3, stated: 16, range: { low: 12, high: 15 } })
  expect(told.byBatches && measuredEn.byBatches(told.byBatches)).toBe(
    'From 3 batches: 12 to 15 portions. The card says 16.',
  )
  // What is measured out, and what a pot holds, stay the card's.
  expect(made).toMatchObject({ kind: 'volume', size: US_ML.gal })
})

test('[RC58] the ways out make up for it', () => {
  const { checked: told } = checked([0.85, 0.88, 0.91])
  const enough = told.ways.find(({ kind }) => kind === 'enough')
  // 16 ÷ 14.08 is 1.1364, to three figures up.
  expect(enough).toMatchObject({ typed: 'x 1.14' })
  const { checked: after } = checked([0.85, 0.88, 0.91], { make: 'x 1.14', portions: '16' })
  expect(after).toMatchObject({ check: { gives: 16, noted: false } })
  expect(after.byBatches?.stated).toBe(18)
})

test('[RC58] one batch is told with no range; batches that differ widely say so', () => {
  const { checked: one } = checked([0.85])
  expect(one.check.gives).toBe(13)
  expect(one.byBatches).toEqual({ batches: 1, stated: 16, range: null })
  expect(one.byBatches && measuredEn.byBatches(one.byBatches)).toBe(
    'From 1 batch: how sure that is, a second one tells. The card says 16.',
  )
  const { checked: wide } = checked([0.8, 1])
  expect(wide.byBatches?.range).toEqual({ low: 0, high: 34 })
})

test('[RC58] what a double can’t hold isn’t a portion less', () => {
  const { checked: told } = checked([0.75, 0.75])
  expect(told.check.gives).toBe(12)
  expect(told.byBatches?.range).toEqual({ low: 12, high: 12 })
  expect(told.byBatches && measuredEn.byBatches(told.byBatches)).toBe(
    'From 2 batches: 12 portions. The card says 16.',
  )
})

test('[RC58] a portion costs more where own batches gave less, and the card’s cost stays told', () => {
  const priced: CardBox = {
    ...BOX,
    bought: new Map([
      [
        'beans',
        {
          ...{ name: 'Beans', ediblePercent: null },
          invoices: [{ date: '2026-11-02', packs: 1, packTyped: '1 gal', cents: 1_600 }],
        },
      ],
    ]),
  }
  const sheet = (ratios: readonly number[]) =>
    recipeSheet(CHILI, priced, SERVED, UNASKED, correctedYield(ratios))
  // $8.00 for 16 portions is 50 cents; of 12.8, what 0.8 of it gives, 62.5.
  const { portionCents, measuredCents } = sheet([0.8])
  expect(portionCents && toNumber(portionCents)).toBeCloseTo(50, 9)
  expect(measuredCents && toNumber(measuredCents)).toBeCloseTo(62.5, 9)
  expect(sheet([]).measuredCents).toBeNull()
  expect(measuredCents && costEn.measuredCost(measuredCents, 'USD')).toBe(
    'By your own batches a portion costs $0.63. The figures here go by the card.',
  )
})
