/** As purchased from what is eaten, and what it costs. */
import { type Amount, type Density, scaled, timesIn } from '#lib/recipes/amount.ts'
import {
  dividedBy,
  fromNumber,
  isZero,
  minus,
  type Rational,
  ratio,
  times,
} from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'

/** What was paid for something, as the invoice has it. */
export interface Invoice {
  /** Civil date, as 2026-11-25. */
  readonly date: string
  /** Packs bought, 1 or more. */
  readonly packs: number
  /** What one holds, as typed: "6 x #10 cans", "50 lb". */
  readonly packTyped: string
  /** For all of them, whole cents. */
  readonly cents: number
}

/**
 * What has to be bought of an amount that is eaten: 100 / percent of it, exactly by its decimals.
 * 1 to 100; throws RangeError otherwise.
 */
export const asPurchased = (edible: Amount, percent: number): Amount => {
  if (!(percent >= 1 && percent <= 100)) throw new RangeError('what is eaten is 1 to 100 percent')
  return scaled(edible, dividedBy(ratio(100), fromNumber(percent)))
}

/** Of so many dated lines, the newest by its date; the later one of two of a day. */
export const newestInvoice = (invoices: readonly Invoice[]): Invoice | null =>
  invoices.reduce<Invoice | null>(
    (newest, one) => (newest === null || one.date >= newest.date ? one : newest),
    null,
  )

export type CostCode =
  /** No invoice says what it costs: it isn't counted as nothing. */
  | 'no-invoice'
  | 'no-amount'
  | 'to-taste'
  | 'pack-not-understood'
  | 'price-of-nothing'
  /** The card weighs what is bought by volume, or counts it: no density joins them. */
  | 'other-kind'
  | 'circle'

export type Cost =
  | { readonly ok: true; readonly cents: Rational }
  | { readonly ok: false; readonly code: CostCode }

/** What so much as purchased costs by an invoice line, exactly, in cents; rounded when it is read. */
export const costOf = (amount: Amount, invoice: Invoice | null, density: Density | null): Cost => {
  if (invoice === null) return { ok: false, code: 'no-invoice' }
  if (invoice.cents < 1 || invoice.packs < 1) return { ok: false, code: 'price-of-nothing' }
  const pack = typedAmount(invoice.packTyped)
  if (!pack.ok || pack.amount === null) return { ok: false, code: 'pack-not-understood' }
  const all = scaled(pack.amount, ratio(invoice.packs))
  const share = timesIn(amount, all, density)
  return share === null
    ? { ok: false, code: 'other-kind' }
    : { ok: true, cents: times(ratio(invoice.cents), share) }
}

/** What food costs of a price: 0.22 is 22 percent. null where nothing is asked for it. */
export const foodShare = (cost: Rational, priceCents: number): Rational | null =>
  priceCents === 0 || isZero(cost) ? null : dividedBy(cost, ratio(priceCents))

/** What is sold at a price: what its food costs, exactly, and what is over of the price. */
export interface Sold {
  readonly priceCents: number
  readonly cents: Rational
  /** Below 0 where the food costs more than is asked for it. */
  readonly leftCents: Rational
}

export const sold = (priceCents: number, cents: Rational): Sold => ({
  priceCents,
  cents,
  leftCents: minus(ratio(priceCents), cents),
})
