import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Amount } from '#lib/recipes/amount.ts'
import { scaled } from '#lib/recipes/amount.ts'
import { compared, ONE, type Rational, ratio, times, toNumber } from '#lib/recipes/rational.ts'
import { waysOut } from '#lib/recipes/sheet/ways-out.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { scoopMl } from '#lib/recipes/units.ts'
import { wantedOf } from '#lib/recipes/wanted.ts'
import { yieldCheck } from '#lib/recipes/yield-check.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

const check = (made: Amount, portion: Amount, portions: number) => {
  const found = yieldCheck(made, portion, ratio(portions), null, 1)
  if (!found.ok) throw new Error('by volume')
  return found
}

const scoop = (number: number): Amount => ({
  kind: 'volume',
  size: scoopMl(number),
  written: 'us',
})

/** As the field under Make reads what a way out types into it. */
const factorTyped = (typed: string): Rational => {
  const read = wantedOf(null, typed, { portion: null, density: null })
  if (!read.ok) throw new Error(`not understood: ${typed}`)
  return read.factor
}

describe('the ways out of a yield that doesn’t fit', () => {
  it('[RC62] 33 level #16 where 20 are wanted: a #10, or six tenths of the card', () => {
    const found = check(scaled(scoop(16), ratio(33)), scoop(16), 20)
    expect(waysOut(found, ONE)).toEqual([
      { kind: 'scoop', number: 10, portions: 20 },
      { kind: 'enough', factor: ratio(607, 1000), typed: 'x 0.607' },
    ])
  })

  it('[RC62] 3 qt where 4 qt are wanted: 1.34 of the card, or the card twice', () => {
    const found = check(amount('3 qt'), scoop(8), 32)
    expect(waysOut(found, ONE).filter(({ kind }) => kind !== 'scoop')).toEqual([
      { kind: 'enough', factor: ratio(134, 100), typed: 'x 1.34' },
      { kind: 'batches', count: 2, typed: 'x 2' },
    ])
    // Made three times by now, it lacks a third of that.
    expect(waysOut(found, ratio(3)).at(-1)).toEqual({
      kind: 'enough',
      factor: ratio(4),
      typed: 'x 4',
    })
  })

  it('[RC62] none where it fits', () => {
    expect(waysOut(check(amount('4 qt'), scoop(8), 32), ONE)).toEqual([])
  })

  it('[RC62] taken, each of them is enough and within a tenth, but for whole batches', () => {
    const cases = fc.record({
      number: fc.constantFrom(6, 8, 10, 12, 16, 20, 24, 30, 40),
      portions: fc.integer({ min: 1, max: 2_000 }),
      cups: fc.integer({ min: 1, max: 4_000 }),
      now: fc.constantFrom(ratio(1), ratio(1, 3), ratio(5, 2)),
    })
    fc.assert(
      fc.property(cases, ({ number, portions, cups, now }) => {
        const card = amount(`${cups} cups`)
        const found = check(scaled(card, now), scoop(number), portions)
        for (const way of waysOut(found, now)) {
          const after =
            way.kind === 'scoop'
              ? check(scaled(card, now), scoop(way.number), portions)
              : check(scaled(card, factorTyped(way.typed)), scoop(number), portions)
          expect(after.gives).toBeGreaterThanOrEqual(portions)
          if (way.kind !== 'batches') expect(after.noted).toBe(false)
          if (way.kind === 'enough') {
            expect(compared(factorTyped(way.typed), way.factor)).toBe(0)
            expect(toNumber(way.factor)).toBeLessThanOrEqual(
              toNumber(times(now, found.factor)) * 1.0101,
            )
          }
        }
      }),
    )
  })
})
