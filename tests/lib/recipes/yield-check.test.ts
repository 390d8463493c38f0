import { describe, expect, it } from 'vitest'
import type { Amount } from '#lib/recipes/amount.ts'
import { ratio, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { yieldCheck } from '#lib/recipes/yield-check.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

const check = (made: string, portion: string, portions: number, level: number | null = 1) =>
  yieldCheck(amount(made), amount(portion), ratio(portions), null, level)

describe('the yield check', () => {
  it('[RC23] up to a tenth either way is as it should be, beyond it is told', () => {
    expect(check('4 qt', '1 #8 scoop', 32)).toMatchObject({ ok: true, noted: false, gives: 32 })
    expect(check('4.4 qt', '1 #8 scoop', 32)).toMatchObject({ noted: false, gives: 35 })
    expect(check('4.41 qt', '1 #8 scoop', 32)).toMatchObject({ noted: true })
    expect(check('3.6 qt', '1 #8 scoop', 32)).toMatchObject({ noted: false, gives: 28 })
    expect(check('3.59 qt', '1 #8 scoop', 32)).toMatchObject({ noted: true })
  })

  it('[RC23] portion times count is the total, and the factor makes exactly that', () => {
    const found = check('3 qt', '1 #8 scoop', 32)
    expect(found.ok && found.takes).toEqual(amount('4 qt'))
    expect(found.ok && found.factor).toEqual(ratio(4, 3))
    expect(found.ok && found.over).toBe(-0.25)
  })

  it('[RC23] another scoop is proposed only where it gives the portions within a tenth', () => {
    const found = check('3 qt', '1 #8 scoop', 30)
    expect(found.ok && found.scoop).toEqual({ number: 10, portions: 30 })
    const none = check('1 qt', '1 #8 scoop', 200)
    expect(none.ok && none.scoop).toBeNull()
    const two = check('3 qt', '2 level #16 scoops', 30, 2)
    expect(two.ok && two.scoop).toEqual({ number: 20, portions: 30 })
    const pieces = check('20 pieces', '1 piece', 30, null)
    expect(pieces.ok && [pieces.gives, pieces.scoop]).toEqual([20, null])
    expect(pieces.ok && toNumber(pieces.factor)).toBe(1.5)
  })

  it('[RC23] weight isn’t held against scoops without a density', () => {
    expect(check('4 lb', '1 #8 scoop', 32)).toEqual({ ok: false, code: 'weight-and-volume' })
  })
})
