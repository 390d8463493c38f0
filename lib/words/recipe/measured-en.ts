/** What own batches really made against the card, and how sure that is. */
import type { CorrectedYield } from '#lib/recipes/measured-yield.ts'
import type { PortionsByBatches } from '#lib/recipes/sheet/recipe-sheet.ts'
import type { MarkRefusal } from '#lib/tasting/yield-marks.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDate, sayMoment } from '#lib/words/day-en.ts'
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
    ? `Stated ${ONE_PLACE.format(stated)}; your one batch made ${say(ratio)}. How sure that is, a second one tells.`
    : `Stated ${ONE_PLACE.format(stated)}; your last ${counted(batches, 'batch', 'batches')} made ${say(ratio)} (${say(range.low)} to ${say(range.high)}).`
}

const REFUSED: Readonly<Record<MarkRefusal, string>> = {
  'no-such-yield': 'That batch isn’t there any more.',
  'already-so': 'It is so already: somebody else did it.',
  'no-initials': 'Type your initials first.',
  'id-used-for-something-else': 'That wasn’t taken. Try it once more.',
}

export const measuredEn = {
  title: 'What it really made',
  corrected,
  /** "A load: 17.6 portions from your last 3 batches (16.9 to 18.3), stated 20". */
  ofLoad: (stated: number, { batches, ratio, range }: CorrectedYield) => {
    const say = (share: number) => ONE_PLACE.format(stated * share)
    return range === null
      ? `A load: ${say(ratio)} portions from your one batch, stated ${stated}; a second one tells how sure that is`
      : `A load: ${say(ratio)} portions from your last ${counted(batches, 'batch', 'batches')} (${say(range.low)} to ${say(range.high)}), stated ${stated}`
  },
  ofPortions: (stated: number, yields: CorrectedYield) =>
    `In portions: ${corrected(stated, yields)}`,
  ofPercent: (yields: CorrectedYield) => `In percent: ${corrected(100, yields)}`,
  rangeIs: 'The range holds what your batches make on average, 95 times in 100.',
  makes: (amount: string, gives: number) =>
    `By your own batches it makes ${amount}: ${counted(gives, 'portion', 'portions')}.`,
  /** "From 3 batches: 28 to 35 portions. The card says 36." */
  byBatches: ({ batches, stated, range }: PortionsByBatches) =>
    range === null
      ? `From 1 batch: how sure that is, a second one tells. The card says ${stated}.`
      : `From ${counted(batches, 'batch', 'batches')}: ${range.low === range.high ? '' : `${range.low} to `}${counted(range.high, 'portion', 'portions')}. The card says ${stated}.`,
  byCard: 'What is measured out goes by the card.',
  batches: 'Batches of this card',
  card: 'the card',
  noneCounts: 'Every batch of this card was taken out: the card counts as it is written.',
  takeOut: 'Take it out',
  takeOutSure: 'Take this batch out',
  count: 'Count it again',
  countSure: 'Count this batch again',
  leaveIt: 'Leave it',
  initials: 'Initials',
  initialsFirst: 'Type your initials',
  outSince: (at: number, timeZone: string, initials: string | null) =>
    `Taken out ${sayMoment(at, timeZone)}${initials === null ? '' : `, ${initials}`}: plans don’t count with it.`,
  lostMark: 'No answer. Nothing was changed: try again.',
  refusal: REFUSED,
  none: 'Nobody has weighed a batch of this card yet.',
  earlier: (count: number) =>
    count === 1
      ? '1 batch was of an earlier card and doesn’t count.'
      : `${count} batches were of an earlier card and don’t count.`,
  row: (on: string, typed: string | null, ratio: number, factor: number | null) =>
    [
      sayDate(on),
      ...(factor === null ? [] : [`${FACTOR.format(factor)} × the card`]),
      // An amount stays on one line.
      ...(typed === null ? [] : [typed.replaceAll(' ', '\u00a0')]),
      PERCENT.format(ratio),
    ].join(', '),
  /** `asked`: how often the card is made by what is typed, 1 where nothing is. */
  makeInstead: (asked: number, { ratio }: CorrectedYield) =>
    `To get ${asked === 1 ? 'all that the card says' : 'what is asked for'}, make ${FACTOR.format(asked / ratio)} × the card.`,
  taste: 'Taste a small batch',
} as const
