/** What own batches really made against the card, and how sure that is. */
import type { CorrectedYield } from '#lib/recipes/measured-yield.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'

const ONE_PLACE = new Intl.NumberFormat(quantityEn.locale, { maximumFractionDigits: 1 })
const FACTOR = new Intl.NumberFormat(quantityEn.locale, { maximumFractionDigits: 2 })
const PERCENT = new Intl.NumberFormat(quantityEn.locale, { style: 'percent' })

/**
 * "Stated 20; your last 3 batches made 17.6 (16.9 to 18.3)."
 * @param stated what it makes as the card says it, in portions or another unit
 */
const corrected = (stated: number, { batches, ratio, range }: CorrectedYield): string => {
  const say = (share: number) => ONE_PLACE.format(stated * share)
  return range === null
    ? `Stated ${ONE_PLACE.format(stated)}; your one batch made ${say(ratio)}. How sure that is a second one tells.`
    : `Stated ${ONE_PLACE.format(stated)}; your last ${counted(batches, 'batch', 'batches')} made ${say(ratio)} (${say(range.low)} to ${say(range.high)}).`
}

export const measuredEn = {
  title: 'What it really made',
  corrected,
  ofLoad: (stated: number, yields: CorrectedYield) =>
    `Portions a load. ${corrected(stated, yields)}`,
  ofPortions: (stated: number, yields: CorrectedYield) =>
    `In portions: ${corrected(stated, yields)}`,
  ofPercent: (yields: CorrectedYield) => `In percent: ${corrected(100, yields)}`,
  rangeIs: 'The range holds what your batches make on average, 95 times in 100.',
  none: 'Nobody has weighed a batch of this card yet.',
  earlier: (count: number) =>
    count === 1
      ? '1 batch was of an earlier card and doesn’t count.'
      : `${count} batches were of an earlier card and don’t count.`,
  row: (on: string, typed: string | null, ratio: number, factor: number | null) =>
    [
      sayDate(on),
      ...(factor === null ? [] : [`${FACTOR.format(factor)} × the card`]),
      ...(typed === null ? [] : [typed]),
      PERCENT.format(ratio),
    ].join(', '),
  makeInstead: (factor: number) =>
    `To get what is asked for, make ${FACTOR.format(factor)} × the card.`,
  taste: 'Taste a small batch',
} as const
