import { describe, expect, it } from 'vitest'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import { cardLimits } from '#lib/paper/recipe/card-limits.ts'
import { ingredientsOfCard, saidOfMade } from '#lib/paper/recipe/card-said.ts'
import { recipeCardEn } from '#lib/paper/words/recipe-card-en.ts'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import { recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { US_ML } from '#lib/recipes/units.ts'
import { componentOf } from '#lib/station/find.ts'
import { demoStation } from '#tests/support/service.ts'

const card = (
  id: string,
  lines: readonly (readonly [string, string, boolean?])[],
  yields = '',
): Card => ({
  id,
  name: id,
  yields,
  lines: lines.map(([of, typed, isRecipe = false]) => ({ of, typed, isRecipe })),
})
const bought = (...names: readonly string[]) =>
  new Map(names.map((name) => [name, { name, ediblePercent: null, invoices: [] }] as const))

const CHILI = card(
  'chili',
  [
    ['black beans', '2 qt'],
    ['salt', '1 Tbsp'],
    ['cheddar', '8 oz'],
  ],
  '1 gal',
)
const BOX: CardBox = {
  cards: new Map([['chili', CHILI]]),
  bought: bought('black beans', 'salt', 'cheddar'),
}
const SERVED = {
  portion: { kind: 'volume', system: 'us', size: US_ML.cup } as never,
  density: null,
  level: null,
  usual: null,
}

const wordsOf = (sections: readonly AskedSection[]): string =>
  sections
    .flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flat()))
    .map(({ text }) => text)
    .join(' | ')

const printed = (make: string): string =>
  wordsOf(
    recipeCardEn.sections({
      sheet: recipeSheet(CHILI, BOX, SERVED, {
        make,
        handOf: null,
        hand: '',
        fits: '2 qt',
        portions: '',
      }),
      make,
      yields: CHILI.yields,
      scoop: null,
      level: null,
      vessel: { name: 'Soup pot', holds: '2 qt' },
      steps: ['Drain the beans.', 'Simmer, stir.'],
      limits: cardLimits(demoStation, componentOf(demoStation, 'chicken')),
      said: saidOfMade(demoStation, ['cheddar']),
      scale: 'F',
    }),
  )

describe('the recipe card on paper', () => {
  it('[PA41] has each line as a kitchen measure, portion × count = total, and flags what doesn’t scale by itself', () => {
    const said = printed('48')
    expect(said).toContain('1 gal 2 qt')
    expect(said).toContain('1 lb 8 oz')
    expect(said).toContain('48 × 1 cup = 3 gal')
    expect(said).toContain('put in part of it, taste, then the rest')
    expect(said).toContain('on the card: 2 qt')
  })

  it('[PA46] [PA49] says what it is made in and in how many batches, and its steps in order before the limits', () => {
    const said = printed('')
    // A gallon in a pot of two quarts.
    expect(said).toContain(
      'Made in: Soup pot, 2 qt. It doesn’t fit at once: 2 even batches of 2 qt.',
    )
    const places = ['black beans', 'Drain the beans.', 'Simmer, stir.', 'Cook to 165 °F'].map(
      (text) => said.indexOf(text),
    )
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(places[0]).toBeGreaterThanOrEqual(0)
    expect(said).toContain('1.\u00a0 Drain the beans. | 2.\u00a0 Simmer, stir.')
  })

  it('[PA41] says limits of cooking, holding and cooling with their paragraphs', () => {
    const said = printed('')
    expect(said).toContain('Cook to 165 °F')
    expect(said).toContain('3-401.11(A)(3)')
    expect(said).toMatch(/Hold at 135 °F or above \(.*3-501\.16\(A\)\(1\)/)
    expect(said).toMatch(/70 °F or below within 2 h.*41 °F or below within 6 h/)
  })

  it('[PA41] says what labels declare of all that it is made of, through recipes, and what nobody read', () => {
    expect(printed('')).toContain('CONTAINS MILK')
    const nested: CardBox = {
      cards: new Map([
        [
          'a',
          card('a', [
            ['b', '1 qt', true],
            ['rice', '1 qt'],
          ]),
        ],
        [
          'b',
          card('b', [
            ['cheddar', '1 oz'],
            ['a', '1 oz', true],
          ]),
        ],
      ]),
      bought: bought('rice', 'cheddar'),
    }
    expect([...ingredientsOfCard(nested, 'a')].sort()).toEqual(['cheddar', 'rice'])
    expect(saidOfMade(demoStation, ['kelp']).unread).toEqual(['kelp'])
  })
})
