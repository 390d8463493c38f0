import {
  type AmountPart,
  fluidOunceParts,
  type MetricUnit,
  metricAmount,
  type SpokenUnit,
  weightParts,
} from '#lib/measure/amount-parts.ts'
import type { QuantityWords } from '#lib/words/quantity-words.ts'

export type UnitSystem = 'us' | 'metric'

function assertFinite(amount: number): void {
  if (!Number.isFinite(amount)) throw new RangeError('only a finite amount can be said')
}

function sayParts(
  amount: number,
  partsOf: (size: number) => readonly AmountPart[],
  zeroUnit: SpokenUnit,
  smallestUnit: SpokenUnit,
  words: QuantityWords,
): string {
  assertFinite(amount)
  const parts = partsOf(Math.abs(amount))
  if (parts.length > 0) return amount < 0 ? words.minus(words.amount(parts)) : words.amount(parts)
  return amount > 0
    ? words.under(words.amount([{ whole: 0, fraction: '1/4', unit: smallestUnit }]))
    : words.amount([{ whole: 0, fraction: null, unit: zeroUnit }])
}

function sayMetric(amount: number, small: MetricUnit & ('g' | 'mL'), words: QuantityWords): string {
  assertFinite(amount)
  const said = metricAmount(Math.abs(amount), small)
  if (said.value > 0) return amount < 0 ? words.minus(words.metric(said)) : words.metric(said)
  return amount > 0 ? words.under(words.metric({ ...said, value: 0.1 })) : words.metric(said)
}

/**
 * A volume in millilitres in fluid ounces, "2 fl oz", to the quarter, or "1.2 L" as metricAmount
 * states. Below zero it carries a minus; what is there but rounds to nothing is "under" the smallest
 * said. Throws RangeError unless finite.
 */
export function fluidOuncesIn(words: QuantityWords, ml: number, system: UnitSystem = 'us'): string {
  if (system === 'metric') return sayMetric(ml, 'mL', words)
  return sayParts(ml, fluidOunceParts, 'flOz', 'flOz', words)
}

/**
 * A weight in milligrams as a kitchen says it, "1 lb 4 oz" or "350 g", rounded as weightParts and
 * metricAmount state. Signs, small amounts and errors as in fluidOuncesIn.
 */
export function weightIn(words: QuantityWords, mg: number, system: UnitSystem = 'us'): string {
  if (system === 'metric') return sayMetric(mg / 1000, 'g', words)
  return sayParts(mg, weightParts, 'oz', 'oz', words)
}

/** A count of pieces, "54". Whole numbers only; throws RangeError otherwise. */
export function piecesIn(words: QuantityWords, count: number): string {
  if (!Number.isSafeInteger(count)) throw new RangeError('pieces are counted in whole numbers')
  return count < 0 ? words.minus(words.pieces(-count)) : words.pieces(count)
}
