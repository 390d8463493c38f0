import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardText, correctedPortions, correctedYield } from '#lib/recipes/measured-yield.ts'
import { cardBoxIn, cardFor, cardTexts } from '#lib/tasting/card-of.ts'
import { withMarks, type YieldMark } from '#lib/tasting/yield-marks.ts'
import { correctedBy, type YieldSaved } from '#lib/tasting/yields.ts'
import { TASTING_STATION } from '#tests/support/tasting.ts'

const saved = (on: string, ratio: number, card = 'now', component = 'tuna'): YieldSaved => ({
  ...{ id: `${component} ${on}`, component, card, on, ratio, out: null },
  from: 'tasting',
  factor: 0.1,
  typed: '6 oz',
  load: 20,
})

describe('a measured yield', () => {
  test('[RC52] one batch is told with no range, and none corrects nothing', () => {
    expect(correctedYield([])).toBeNull()
    expect(correctedYield([0.9])).toEqual({ batches: 1, ratio: 0.9, range: null })
    expect(correctedPortions(20, undefined)).toBe(20)
  })

  test('[RC52] two that agree to the gram have a range of nothing, two that differ a wide one', () => {
    expect(correctedYield([0.9, 0.9])?.range).toEqual({ low: 0.9, high: 0.9 })
    const wide = correctedYield([0.8, 1])?.range
    // 0.9 ± 12.706 × 0.1414 ÷ √2 is 0.9 ± 1.27, and no amount is below nothing.
    expect(wide?.low).toBe(0)
    expect(wide?.high).toBeCloseTo(2.1706, 3)
  })

  test('[RC51] the mean lies in its range, which a batch more of the mean makes no wider', () => {
    const ratios = fc.array(fc.double({ min: 0.3, max: 3, noNaN: true }), {
      minLength: 2,
      maxLength: 8,
    })
    fc.assert(
      fc.property(ratios, (all) => {
        const one = correctedYield(all)
        const more = one && correctedYield([...all, one.ratio])
        if (!one?.range || !more?.range) throw new Error('no range')
        expect(one.range.low).toBeLessThanOrEqual(one.ratio)
        expect(one.range.high).toBeGreaterThanOrEqual(one.ratio)
        expect(more.range.high).toBeLessThanOrEqual(one.range.high + 1e-9)
      }),
    )
  })

  test('[RC53] counts the nine newest', () => {
    const corrected = correctedYield([9, 9, ...Array.from({ length: 9 }, () => 0.5)])
    expect(corrected).toMatchObject({ batches: 9, ratio: 0.5 })
  })

  test('[RC54] corrects whole portions downward, at least one', () => {
    const by = (ratio: number) => ({ batches: 3, ratio, range: null })
    expect(correctedPortions(20, by(0.88))).toBe(17)
    expect(correctedPortions(20, by(0.85))).toBe(17)
    expect(correctedPortions(20, by(1.04))).toBe(20)
    expect(correctedPortions(20, by(1.05))).toBe(21)
    // As doubles 0.29 × 100 is less than 29.
    expect(correctedPortions(100, by(0.29))).toBe(29)
    expect(correctedPortions(2, by(0.3))).toBe(1)
  })
})

describe('the card that it belongs to', () => {
  const text = (station = TASTING_STATION) => cardTexts(station).tuna

  test('[RC55] a changed amount, yield or card within it starts anew; a name doesn’t', () => {
    const recipe = (id: string, change: object) => ({
      ...TASTING_STATION,
      recipes: TASTING_STATION.recipes.map((one) => (one.id === id ? { ...one, ...change } : one)),
    })
    expect(text(recipe('tuna-mix', { name: 'Tuna' }))).toBe(text())
    const others = [
      recipe('tuna-mix', { yields: '2 qt' }),
      recipe('tuna-mix', { lines: [{ of: 'tuna', typed: '4 lb' }] }),
      recipe('dressed-mayonnaise', { lines: [{ of: 'mayonnaise', typed: '1 qt' }] }),
      recipe('dressed-mayonnaise', { ingredients: ['mayonnaise'] }),
    ]
    expect(new Set([text(), ...others.map(text)]).size).toBe(5)
  })

  test('[RC55] a card that goes into itself has an end', () => {
    const box = cardBoxIn(TASTING_STATION)
    const card = {
      id: 'a',
      name: 'A',
      yields: '1 qt',
      lines: [{ of: 'a', isRecipe: true, typed: '1 cup' }],
    }
    const cards = new Map([['a', card]])
    expect(cardText(card, { ...box, cards })).toContain('1 cup')
  })

  test('[RC55] only what was measured of the card as it stands corrects it', () => {
    const rows = [saved('2026-11-20', 0.5, 'before'), saved('2026-11-21', 0.9)]
    expect(correctedBy(rows, { tuna: 'now' }, { tuna: 20 })).toEqual({
      tuna: { batches: 1, ratio: 0.9, range: null },
    })
    expect(correctedBy(rows, { tuna: 'later', beans: 'now' }, { tuna: 20 })).toEqual({})
    // Somebody typed what a load gives: that isn't corrected once more.
    expect(correctedBy(rows, { tuna: 'now' }, { tuna: 17 })).toEqual({})
    expect(correctedBy(rows, { tuna: 'now' }, {})).toEqual({})
  })

  test('[RC57] what was taken out corrects nothing, and gives its place to an older one', () => {
    const days = Array.from({ length: 10 }, (_unused, index) => `2026-11-${10 + index}`)
    const rows = days.map((on, index) => saved(on, index === 9 ? 2 : 0.9))
    const by = (marks: readonly YieldMark[]) =>
      correctedBy(withMarks(rows, marks), { tuna: 'now' }, { tuna: 20 }).tuna
    const mark = (isOut: boolean, at: number): YieldMark => ({
      ...{ yields: 'tuna 2026-11-19', isOut, at, by: `c${at}` },
    })
    expect(by([])?.ratio).toBeCloseTo((8 * 0.9 + 2) / 9, 9)
    const without = by([mark(true, 1)])
    expect(without?.batches).toBe(9)
    expect(without?.range?.high).toBeCloseTo(0.9, 9)
    // Counted after all, it corrects as before.
    expect(by([mark(true, 1), mark(false, 2)])).toEqual(by([]))
    expect(withMarks(rows, [mark(true, 1)])).toHaveLength(10)
    const alone = [saved('2026-11-19', 0.5)]
    expect(correctedBy(withMarks(alone, [mark(true, 1)]), { tuna: 'now' }, { tuna: 20 })).toEqual(
      {},
    )
  })

  test('[RC55] what is bought as it is, or mixed of more than one, has no card', () => {
    expect(cardFor(TASTING_STATION, 'cheddar')).toBeNull()
    expect(cardFor(TASTING_STATION, 'slaw')).toBeNull()
    expect(cardFor(TASTING_STATION, 'tuna')?.card.name).toBe('Tuna mix')
  })
})
