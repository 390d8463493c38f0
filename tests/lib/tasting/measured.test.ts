import { describe, expect, test } from 'vitest'
import type { Amount } from '#lib/recipes/amount.ts'
import { ONE, ratio } from '#lib/recipes/rational.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { servedIn } from '#lib/tasting/card-of.ts'
import { measuredRatio } from '#lib/tasting/measured.ts'
import { TASTING_STATION } from '#tests/support/tasting.ts'

const SERVED = servedIn(TASTING_STATION, 'tuna')
const NOBODY = { portion: null, density: null }
const PIECE: Amount = { kind: 'count', size: ONE, of: 'piece' }

const of = (card: string, typed: string, served: Parameters<typeof measuredRatio>[2] = SERVED) => {
  const read = typedYield(card)
  return measuredRatio(read.ok ? read.yields : null, ratio(1, 10), served, typed)
}

describe('what was weighed or counted of a tenth of a card', () => {
  test.each([
    // A cup at 205 g, of which 6 1/2 oz are 184.3 g.
    ['2 1/2 qt', '6 1/2 oz', 0.8989],
    ['2 1/2 qt', '205 g', 1],
    ['2 1/2 qt', '1 cup', 1],
    // Two level #8 scoops are a cup.
    ['2 1/2 qt', '2 portions', 1],
    ['2 1/2 qt', '1 1/2', 0.75],
    ['serves 20', '2 portions', 1],
    ['20 portions of 4 fl oz', '7 fl oz', 0.875],
    ['serves 20', '1 cup', 1],
    ['2050 g', '184.5 g', 0.9],
  ])('[TB10] %s, and %s were made', (card, typed, expected) => {
    const read = of(card, typed)
    expect(read.ok && read.ratio).toBeCloseTo(expected, 3)
  })

  test('[TB10] pieces are counted', () => {
    const read = of('30 pieces', '3', { portion: PIECE, density: null })
    expect(read).toEqual({ ok: true, ratio: 1 })
  })

  test.each([
    ['2 1/2 qt', '0 oz', 'zero'],
    ['2 1/2 qt', '0', 'zero'],
    ['2 1/2 qt', 'a lot', 'not-understood'],
    ['2 1/2 qt', '6 to 7 oz', 'not-understood'],
    ['', '6 oz', 'nothing-stated'],
    ['2 1/2 qt', '6 lb', 'far-off'],
    ['2 1/2 qt', '1 oz', 'far-off'],
  ])('[TB10] %s, and %s: %s', (card, typed, code) => {
    expect(of(card, typed)).toEqual({ ok: false, code })
  })

  test('[TB10] a weight says nothing of what is counted, nor of a volume without a density', () => {
    const pieces = { portion: PIECE, density: null }
    const weight = { ok: false, code: 'weight-for-counted' }
    expect(of('30 pieces', '1 lb', pieces)).toEqual(weight)
    expect(of('serves 20', '1 lb', pieces)).toEqual(weight)
    expect(of('serves 20', '1 lb', NOBODY)).toEqual(weight)
    expect(of('2 1/2 qt', '6 oz', NOBODY)).toEqual({ ok: false, code: 'no-density' })
    expect(of('2 1/2 qt', '2 portions', NOBODY)).toEqual({ ok: false, code: 'no-portion' })
  })
})
