import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Amount, scaled, timesIn } from '#lib/recipes/amount.ts'
import { batchesOf } from '#lib/recipes/batches.ts'
import { byTaste, isFarFromCard } from '#lib/recipes/by-itself.ts'
import { factorForAmount, factorForPortions, factorOfLine, madeBy } from '#lib/recipes/factor.ts'
import { kitchenMeasure, offBy, takenApart } from '#lib/recipes/kitchen-measures.ts'
import {
  compared,
  dividedBy,
  fromNumber,
  minus,
  ONE,
  type Rational,
  ratio,
  times,
  toNumber,
} from '#lib/recipes/rational.ts'
import { scaledCard } from '#lib/recipes/scaled-card.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'

const SEED = { seed: 16, numRuns: 400 }

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

const WRITTEN = [
  '1/3 cup',
  '2 qt 3 1/4 cups',
  '1 lb 4 oz',
  '250 g',
  '1.5 L',
  '30 eggs',
  '2 #10 cans',
]
const written = fc.constantFrom(...WRITTEN, '3 heads', '2 1/2 tsp', '1 pinch', '1 gal').map(amount)
const factor = fc
  .tuple(fc.integer({ min: 1, max: 5_000 }), fc.integer({ min: 1, max: 500 }))
  .map(([over, under]) => ratio(over, under))

const apart = (a: Rational, b: Rational): Rational => {
  const off = minus(a, b)
  return off.over < 0n ? minus(b, a) : off
}

describe('scaling', () => {
  it('[RC20] by a and then by b is by a times b, and back again is the card, exactly', () => {
    fc.assert(
      fc.property(written, factor, factor, (one, a, b) => {
        expect(scaled(scaled(one, a), b)).toEqual(scaled(one, times(a, b)))
        expect(scaled(scaled(one, a), dividedBy(ONE, a))).toEqual(one)
      }),
      SEED,
    )
  })

  it('[RC22] what is measured out is never more than its step away, and never nothing counted', () => {
    fc.assert(
      fc.property(written, factor, fc.constantFrom(null, 'us', 'metric'), (one, by, system) => {
        const exact = scaled(one, by)
        const shown = kitchenMeasure(exact, system)
        const most = exact.kind === 'count' ? shown.step : times(shown.step, ratio(1, 2))
        const small = compared(exact.size, shown.step) < 0
        if (!small || exact.kind === 'volume' || exact.kind === 'weight')
          expect(compared(apart(shown.size, exact.size), most)).toBeLessThanOrEqual(0)
        if (exact.kind === 'count' || exact.kind === 'cans')
          expect(compared(shown.size, shown.step)).toBeGreaterThanOrEqual(0)
      }),
      SEED,
    )
  })

  it('[RC22] from 1/4 cup up a volume is at most 2.1 percent off, a weight from 1/2 lb 1.6', () => {
    fc.assert(
      fc.property(fc.integer({ min: 120_000, max: 40_000_000 }), (tenths) => {
        const volume = scaled(amount('1 tsp'), ratio(tenths, 10_000))
        expect(Math.abs(offBy(volume, kitchenMeasure(volume)))).toBeLessThanOrEqual(0.021)
        const weight = scaled(amount('1 oz'), ratio(tenths, 15_000))
        expect(Math.abs(offBy(weight, kitchenMeasure(weight)))).toBeLessThanOrEqual(0.0157)
      }),
      SEED,
    )
  })

  it('[RC22] the parts that are said add up to what is measured out', () => {
    const inTsp = { gal: 768, qt: 192, pt: 96, cup: 48, tbsp: 3, tsp: 1, flOz: 6, lb: 0, oz: 0 }
    const sum = (parts: ReturnType<typeof takenApart>): number =>
      parts.reduce((all, { whole, fraction, unit }) => {
        const [over = 0, under = 1] = (fraction ?? '0').split('/').map(Number)
        return all + (whole + over / under) * inTsp[unit]
      }, 0)
    fc.assert(
      fc.property(factor, (by) => {
        const exact = scaled(amount('1 cup'), by)
        const shown = kitchenMeasure(exact)
        const tsp = toNumber(dividedBy(shown.size, amount('1 tsp').size))
        expect(shown.kind === 'us' && sum(shown.parts)).toBeCloseTo(tsp, 9)
        const taken = toNumber(dividedBy(exact.size, amount('1 tsp').size))
        expect(Math.abs(sum(takenApart(exact.size)) - taken)).toBeLessThanOrEqual(0.125 + 1e-9)
      }),
      SEED,
    )
  })

  it.each([
    ['3 tsp', '1 Tbsp'],
    ['8 Tbsp', '1/2 cup'],
    ['9 Tbsp', '1/2 cup 1 Tbsp'],
    ['100 tsp', '2 cups 1 Tbsp 1 tsp'],
    ['2 pt', '1 qt'],
    ['5 qt 2 cups', '1 gal 1 qt 2 cups'],
    ['1/5 tsp', '1/4 tsp'],
    ['1/40 tsp', 'under 1/8 tsp'],
    ['20 oz', '1 lb 4 oz'],
    ['0.1 oz', 'under 1/4 oz'],
    ['1234 g', '1.25 kg'],
    ['0.04 g', 'under 0.1 g'],
    ['0.05 g', '0.1 g'],
    ['0.004 ml', 'under 0.1 mL'],
    ['333 ml', '335 mL'],
    ['1/2 head', '1/2 head'],
    ['1.1 each', '2 each'],
    ['10.5 eggs', '11 eggs'],
    ['1/3 egg', '1 egg'],
    ['2 1/3 #10 cans', '2 1/4 #10 cans'],
    ['1 #10 can', '1 #10 can'],
  ])('[RC22] %s is said %s', (typed, said) => {
    expect(sayAmount(amount(typed))).toBe(said)
  })

  it('[RC22] cans are opened whole, whatever is used of the last', () => {
    expect(kitchenMeasure(amount('2.4 #10 cans'))).toMatchObject({ kind: 'cans', open: 3 })
  })

  it('[RC21] weight and volume meet by a density alone, and a count never', () => {
    expect(timesIn(amount('1 lb'), amount('1 cup'), null)).toBeNull()
    expect(timesIn(amount('30 eggs'), amount('1 lb'), null)).toBeNull()
    expect(timesIn(amount('3 heads'), amount('3 eggs'), null)).toBeNull()
    expect(timesIn(amount('15 dozen'), amount('30 eggs'), null)).toEqual(ratio(6))
    const density = { gPerMl: fromNumber(0.5), by: 'measured', offBy: 0.02 } as const
    expect(timesIn(amount('250 g'), amount('250 ml'), density)).toEqual(ratio(2))
    expect(factorForAmount(yields('4 qt'), amount('2 lb'), null)).toEqual({
      ok: false,
      code: 'weight-and-volume',
    })
    expect(timesIn(amount('1 #10 can'), amount('105 fl oz'), null)).toEqual(ONE)
  })

  it('[RC20] to a yield that the card doesn’t state there is no factor, but a code', () => {
    expect(factorForPortions(yields('4 qt'), ratio(20))).toEqual({ ok: false, code: 'no-portions' })
    expect(factorForPortions(yields('serves 20'), ratio(0))).toEqual({ ok: false, code: 'zero' })
    expect(factorForAmount(yields('serves 20'), amount('1 qt'), null)).toEqual({
      ok: false,
      code: 'no-portion-size',
    })
    expect(factorOfLine(amount('2 lb'), amount('3 cups'), null).ok).toBe(false)
  })

  it('[RC20] pans hold what they hold usably, and of no stated depth nobody knows what', () => {
    const made = madeBy(yields('2 half pans, 2 1/2 in'))
    expect(made.ok && toNumber(made.amount.size)).toBeCloseTo(2 * 125 * 29.5735295625, 6)
    expect(madeBy(yields('2 half pans'))).toEqual({ ok: false, code: 'no-depth' })
    expect(madeBy(yields('1 ninth pan, 6 in'))).toEqual({ ok: false, code: 'no-capacity' })
  })
})

describe('batches', () => {
  it('[RC24] what doesn’t fit at once is made in even batches, as few as fit', () => {
    const found = batchesOf(amount('50 qt'), amount('20 qt'), null)
    expect(found).toMatchObject({ ok: true, count: 3, share: ratio(1, 3) })
    expect(batchesOf(amount('20 qt'), amount('20 qt'), null)).toMatchObject({ ok: true, count: 1 })
    expect(batchesOf(amount('20 qt'), amount('3 lb'), null)).toMatchObject({ ok: false })
  })

  it('[RC24] batches together are all of it, and each fits', () => {
    fc.assert(
      fc.property(factor, factor, (all, pot) => {
        const [whole, fits] = [scaled(amount('1 qt'), all), scaled(amount('1 qt'), pot)]
        const found = batchesOf(whole, fits, null)
        if (!found.ok) throw new Error(found.code)
        expect(scaled(found.each, ratio(found.count))).toEqual(whole)
        expect(compared(found.each.size, fits.size)).toBeLessThanOrEqual(0)
        const fewer = ratio(Math.max(found.count - 1, 1))
        if (found.count > 1)
          expect(compared(dividedBy(whole.size, fewer), fits.size)).toBeGreaterThan(0)
      }),
      SEED,
    )
  })
})

describe('what doesn’t scale by itself', () => {
  it.each([
    ['Kosher salt', 'salt'],
    ['Baking powder', 'leavening'],
    ['Black pepper, ground', 'spice'],
    ['Chili powder', 'spice'],
    ['Cornstarch', 'thickener'],
    ['Bell peppers', null],
    ['Red pepper, roasted', null],
    ['Garlic cloves', null],
    ['Brown rice', null],
  ])('[RC25] %s is %s', (name, kind) => {
    expect(byTaste(name)).toBe(kind)
  })

  it('[RC25] is told of a card that is made half as much again, and of less than two thirds', () => {
    expect([1, 1.5, 0.7].map((by) => isFarFromCard(fromNumber(by)))).toEqual([false, false, false])
    expect([1.6, 3.48, 0.5].map((by) => isFarFromCard(fromNumber(by)))).toEqual([true, true, true])
  })

  it('[RC25] a line that isn’t understood keeps what was typed', () => {
    const card = {
      id: 'eggs',
      name: 'Eggs',
      yields: 'serves 50',
      lines: [
        { of: 'salt', isRecipe: false, typed: '1 1/2 tsp' },
        { of: 'parsley', isRecipe: false, typed: 'a handful' },
        { of: 'pepper', isRecipe: false, typed: 'to taste' },
      ],
    }
    const box = {
      cards: new Map(),
      bought: new Map([['salt', { name: 'Salt', ediblePercent: null, invoices: [] }]]),
    }
    const [salt, parsley, pepper] = scaledCard(card, ratio(2), box)
    expect(salt).toMatchObject({ name: 'Salt', byTaste: 'salt', amount: { kind: 'measured' } })
    expect(parsley).toMatchObject({
      name: 'parsley',
      line: { typed: 'a handful' },
      amount: { kind: 'not-understood', code: 'unknown-word', at: 'handful' },
    })
    expect(pepper).toMatchObject({ byTaste: 'to-taste', amount: { kind: 'to-taste' } })
  })
})
