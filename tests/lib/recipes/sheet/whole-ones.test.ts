import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Amount, scaled } from '#lib/recipes/amount.ts'
import { fromNumber, ratio, toNumber } from '#lib/recipes/rational.ts'
import { wholeOnes } from '#lib/recipes/sheet/whole-ones.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { wantedOfLine } from '#lib/recipes/wanted.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(typed)
  return found.amount
}
const whole = (typed: string, factor = 1) => wholeOnes(scaled(amount(typed), fromNumber(factor)))

describe('whole eggs and whole cans', () => {
  it('[RC64] the next whole can and the nearest egg, at least one', () => {
    expect(whole('1 #10 can', 2.5)).toEqual({ count: 3, typed: '3 #10 cans' })
    expect(whole('1 #2 1/2 can', 0.2)).toEqual({ count: 1, typed: '1 #2 1/2 can' })
    expect(whole('30 eggs', 0.93)).toEqual({ count: 28, typed: '28 eggs' })
    expect(whole('1 egg', 0.2)).toEqual({ count: 1, typed: '1 egg' })
  })

  it('[RC64] nothing where it is whole already, or is nothing that comes whole', () => {
    expect(whole('2 #10 cans', 2)).toBeNull()
    expect(whole('54 eggs')).toBeNull()
    expect(whole('3 lb', 0.3)).toBeNull()
    expect(whole('1 head', 0.3)).toBeNull()
  })

  it('[RC64] taken as what is at hand, the line is whole', () => {
    const cases = fc.tuple(
      fc.constantFrom('1 #10 can', '7 #303 cans', '30 eggs', '1.5 eggs'),
      fc.integer({ min: 1, max: 999 }),
      fc.integer({ min: 1, max: 999 }),
    )
    fc.assert(
      fc.property(cases, ([typed, over, under]) => {
        const found = wholeOnes(scaled(amount(typed), ratio(over, under)))
        if (found === null) return
        const read = wantedOfLine(typed, found.typed, null)
        if (!read.ok) throw new Error(read.code)
        expect(toNumber(scaled(amount(typed), read.factor).size)).toBe(found.count)
        expect(wholeOnes(scaled(amount(typed), read.factor))).toBeNull()
      }),
    )
  })
})
