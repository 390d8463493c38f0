import { describe, expect, it } from 'vitest'
import book from '#fixtures/reference/yields-and-costs.json' with { type: 'json' }
import { type Amount, scaled, timesIn } from '#lib/recipes/amount.ts'
import { percentTyped } from '#lib/recipes/invoice-typed.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { asPurchased, costOf, foodShare, sold } from '#lib/recipes/purchased.ts'
import { dividedBy, ratio, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'

const amount = (typed: string): Amount => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(`not understood: ${typed}`)
  return found.amount
}

describe('yields and costs of open textbooks', () => {
  it.each(book.yields)(
    '[RC26] $what: $from gives $to',
    ({ from, to, exactPercent, printedPercent }) => {
      const share = timesIn(amount(to), amount(from), null)
      expect(share && toNumber(share) * 100).toBeCloseTo(exactPercent, 3)
      // Books round, round up (ribeye) or cut off: never by a whole percent.
      expect(Math.abs(printedPercent - exactPercent)).toBeLessThan(1)
    },
  )

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

  it('[RC27] a striploin at $11.95 a kg costs $13.51 trimmed, a cent less by its rounded percent', () => {
    const { from, to, pack, packCents, percent, exactCents, byPercentCents } = book.striploin
    const invoice = { date: '2026-11-02', packs: 1, packTyped: pack, cents: packCents }
    const direct = timesIn(amount(from), amount(to), null)
    if (direct === null) throw new Error('weights')
    const trimmed = costOf(scaled(amount('1 kg'), direct), invoice, null)
    expect(trimmed.ok && toNumber(trimmed.cents)).toBeCloseTo(exactCents, 3)
    const byPercent = costOf(asPurchased(amount('1 kg'), percent), invoice, null)
    expect(byPercent.ok && toNumber(byPercent.cents)).toBeCloseTo(byPercentCents, 3)
    expect([exactCents, byPercentCents].map(Math.round)).toEqual([1351, 1350])
    // What is typed of a trimming is saved to the hundredth: the cent of the direct way.
    const typed = percentTyped(`${to} of ${from}`)
    if (!typed.ok || typed.percent === null) throw new Error('not understood')
    const saved = costOf(asPurchased(amount('1 kg'), typed.percent), invoice, null)
    expect(saved.ok && Math.round(toNumber(saved.cents))).toBe(1351)
  })

  it('[RC26] 85 portions of 170 g of it are 14.45 kg, and 16.33 kg as purchased', () => {
    const { portions, each, edibleKg, purchasedKg, percent } = book.striploin
    const edible = portionTotal(amount(each), portions).total
    expect(toNumber(edible.size) / 1000).toBe(edibleKg)
    expect(toNumber(asPurchased(edible, percent).size) / 1000).toBeCloseTo(purchasedKg, 4)
  })

  it('[RC26] a melon of 5 kg at $10.00, 80 percent eaten: 20 portions at $0.50, three for 60', () => {
    const { pack, packCents, percent, each, portions, eachCents, wanted, melons } = book.melon
    const edible = scaled(amount(pack), ratio(percent, 100))
    const gives = timesIn(edible, amount(each), null)
    expect(gives && toNumber(gives)).toBe(portions)
    const invoice = { date: '2026-11-02', packs: 1, packTyped: pack, cents: packCents }
    const cost = costOf(asPurchased(amount(each), percent), invoice, null)
    expect(cost.ok && toNumber(cost.cents)).toBe(eachCents)
    const all = asPurchased(portionTotal(amount(each), wanted).total, percent)
    const needed = timesIn(all, amount(pack), null)
    expect(needed && toNumber(needed)).toBe(melons)
  })

  it('[RC28] $2.20 of food at a share of 22 percent ask a price of $10.00', () => {
    const { costCents, percent, priceCents } = book.target
    expect(toNumber(dividedBy(ratio(costCents), ratio(percent, 100)))).toBe(priceCents)
    expect(foodShare(ratio(costCents), priceCents)).toEqual(ratio(percent, 100))
    expect(toNumber(sold(priceCents, ratio(costCents)).leftCents)).toBe(780)
  })

  it('[RC28] $2.20 of food at $10.00 are 22 percent; $22.00 for 11 are $2.00', () => {
    const share = foodShare(ratio(book.share.costCents), book.share.priceCents)
    expect(share && toNumber(share) * 100).toBe(book.share.percent)
    expect(toNumber(dividedBy(ratio(book.split.cents), ratio(book.split.portions)))).toBe(
      book.split.each,
    )
  })
})
