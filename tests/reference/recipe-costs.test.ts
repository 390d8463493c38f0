import { describe, expect, it } from 'vitest'
import book from '#fixtures/reference/yields-and-costs.json' with { type: 'json' }
import { type Amount, timesIn } from '#lib/recipes/amount.ts'
import { asPurchased, costOf, foodShare } from '#lib/recipes/purchased.ts'
import { dividedBy, ratio, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

describe('yields and costs of open textbooks', () => {
  it.each(book.yields)('[RC26] $what: $from gives $to', ({ from, to, exactPercent }) => {
    const share = timesIn(amount(to), amount(from), null)
    expect(share && toNumber(share) * 100).toBeCloseTo(exactPercent, 3)
  })

  it.each(book.factors)('[RC26] $percent percent costs $exact times ($note)', (row) => {
    const buy = asPurchased(amount('1 kg'), row.percent)
    expect(toNumber(buy.size) / 1000).toBeCloseTo(row.exact, 6)
    expect(Math.abs(row.printed - row.exact)).toBeLessThan(0.01)
  })

  it('[RC27] 7 oz of a pound at $9.00, of which 80 percent is eaten, are $4.92, not $4.90', () => {
    const { pack, packCents, percent, portion, printedCents, exactCents } = book.portion
    const invoice = { date: '2026-11-02', packs: 1, packTyped: pack, cents: packCents }
    const cost = costOf(asPurchased(amount(portion), percent), invoice, null)
    expect(cost.ok && toNumber(cost.cents)).toBe(exactCents)
    expect(cost.ok && Math.round(toNumber(cost.cents))).toBe(492)
    expect(printedCents).toBe(490)
  })

  it('[RC28] $2.20 of food at $10.00 are 22 percent; $22.00 for 11 are $2.00', () => {
    const share = foodShare(ratio(book.share.costCents), book.share.priceCents)
    expect(share && toNumber(share) * 100).toBe(book.share.percent)
    expect(toNumber(dividedBy(ratio(book.split.cents), ratio(book.split.portions)))).toBe(
      book.split.each,
    )
  })
})
