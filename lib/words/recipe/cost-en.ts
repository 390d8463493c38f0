/** What food costs, and what leaving out and one more do to it, in English. */
import { type CostCode, foodShare, type Sold } from '#lib/recipes/purchased.ts'
import { type Rational, toNumber } from '#lib/recipes/rational.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'

const PERCENT = new Intl.NumberFormat(quantityEn.locale, { style: 'percent' })

const cents = (exact: Rational, currency: string): string =>
  sayCents(Math.round(toNumber(exact)), currency)

/** Where it lacks, and how to mend it. */
const COSTS: Readonly<Record<CostCode, string>> = {
  'no-invoice': 'no invoice: add a line below',
  'no-amount': 'the card’s amount isn’t understood: mend it on the card',
  'to-taste': 'to taste: not counted',
  'pack-not-understood': 'what a pack holds isn’t understood: add the line anew',
  'price-of-nothing': 'the invoice says 0: add a line with what was paid',
  'other-kind':
    'bought by another kind of measure than the card’s: write the card as it is bought, or both as 1 cup (8 oz); of a case or pack say what is in it: 1 case of 12 each',
  circle: 'it contains itself: take it out of one of its recipes',
}

export const costEn = {
  cost: 'What it costs',
  batchCost: (sum: Rational, isAll: boolean, currency: string) =>
    `This making: ${isAll ? '' : 'at least '}${cents(sum, currency)}`,
  portionCost: (each: Rational, currency: string) => `a portion: ${cents(each, currency)}`,
  /** Where own batches gave more or less than the card says. */
  measuredCost: (each: Rational, currency: string) =>
    `By your own batches a portion costs ${cents(each, currency)}. The figures here go by the card.`,
  cents,
  wholeCents: (whole: number, currency: string) => sayCents(whole, currency),
  costCode: (code: CostCode) => COSTS[code],
  inItem: 'In what is sold',
  item: 'Item',
  food: 'Food of it',
  without: 'No',
  extra: 'One more',
  /** "$1.32 · 33% of $4.00" and, below, "$2.68 left". */
  share: ({ cents: cost, priceCents }: Sold, isAll: boolean, currency: string) => {
    const share = foodShare(cost, priceCents)
    return `${isAll ? '' : 'at least '}${cents(cost, currency)}${share === null ? '' : ` · ${PERCENT.format(toNumber(share))}`} of ${sayCents(priceCents, currency)}`
  },
  left: ({ leftCents }: Sold, isAll: boolean, currency: string) =>
    `${isAll ? '' : 'at most '}${cents(leftCents, currency)} left`,
  cannot: '–',
  notKnown: (unknown: readonly string[]) => `not known: ${list(unknown, 'and')}`,
} as const
