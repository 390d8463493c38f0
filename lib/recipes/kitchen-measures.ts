/** How an exact amount is measured out, rounded by a stated rule. */
import {
  type AmountPart,
  type KitchenFraction,
  type MetricAmount,
  metricAmount,
  type SpokenUnit,
} from '#lib/measure/amount-parts.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import {
  ceilOf,
  compared,
  dividedBy,
  floorOf,
  minus,
  plus,
  type Rational,
  ratio,
  times,
  toNumber,
  toStep,
} from '#lib/recipes/rational.ts'
import { type Counted, isCut, US_G, US_ML } from '#lib/recipes/units.ts'

export type KitchenMeasure = (
  | { readonly kind: 'us'; readonly parts: readonly AmountPart[] }
  | { readonly kind: 'metric'; readonly metric: MetricAmount }
  | { readonly kind: 'count'; readonly of: Counted; readonly part: CountPart }
  /** `open`: so many are opened, where less than a whole one is used. */
  | { readonly kind: 'cans'; readonly can: string; readonly part: CountPart; readonly open: number }
) & {
  /** What is measured out, in the amount's own unit. */
  readonly size: Rational
  /** It is rounded to multiples of this. */
  readonly step: Rational
}

export interface CountPart {
  readonly whole: number
  readonly fraction: KitchenFraction | null
}

const FRACTIONS: readonly (readonly [Rational, KitchenFraction])[] = [
  [ratio(1, 8), '1/8'],
  [ratio(1, 4), '1/4'],
  [ratio(1, 3), '1/3'],
  [ratio(3, 8), '3/8'],
  [ratio(1, 2), '1/2'],
  [ratio(5, 8), '5/8'],
  [ratio(2, 3), '2/3'],
  [ratio(3, 4), '3/4'],
  [ratio(7, 8), '7/8'],
]

const fractionOf = (rest: Rational): KitchenFraction | null =>
  FRACTIONS.find(([value]) => compared(value, rest) === 0)?.[1] ?? null

const countPart = (count: Rational): CountPart => {
  const whole = floorOf(count)
  return { whole: Number(whole), fraction: fractionOf(minus(count, ratio(whole))) }
}

/** Measuring cups: 1/4, 1/3, 1/2, 2/3, 3/4. */
const CUP_FRACTIONS = FRACTIONS.filter(([value]) => value.under === 3n || 4n % value.under === 0n)

const part = (whole: bigint, fraction: KitchenFraction | null, unit: SpokenUnit): AmountPart => ({
  whole: Number(whole),
  fraction,
  unit,
})

const isSaid = ({ whole, fraction }: AmountPart): boolean => whole > 0 || fraction !== null

/** Whole ones of each unit, largest first, and what is left of the last. */
const inWholes = (
  size: Rational,
  units: readonly (readonly [Rational, SpokenUnit])[],
): { readonly parts: readonly AmountPart[]; readonly rest: Rational } => {
  let rest = size
  const parts = units.map(([one, unit]) => {
    const whole = floorOf(dividedBy(rest, one))
    rest = minus(rest, times(one, ratio(whole)))
    return part(whole, null, unit)
  })
  return { parts, rest }
}

const spoons = (rest: Rational): readonly AmountPart[] => {
  const { parts, rest: left } = inWholes(rest, [[US_ML.tbsp, 'tbsp']])
  const tsp = dividedBy(left, US_ML.tsp)
  const whole = floorOf(tsp)
  const last = part(whole, fractionOf(minus(tsp, ratio(whole))), 'tsp')
  return [...parts, last].filter(isSaid)
}

/** Gallons, quarts and cups with the fractions that cups are sold in, then spoons. */
const cupsAndSpoons = (ml: Rational): readonly AmountPart[] => {
  const { parts, rest } = inWholes(ml, [
    [US_ML.gal, 'gal'],
    [US_ML.qt, 'qt'],
    [US_ML.cup, 'cup'],
  ])
  const cups = parts.at(-1)?.whole ?? 0
  const share = dividedBy(rest, US_ML.cup)
  const [value, fraction] = CUP_FRACTIONS.findLast(([one]) => compared(one, share) <= 0) ?? []
  const left = value === undefined ? rest : minus(rest, times(US_ML.cup, value))
  const inCups = part(BigInt(cups), fraction ?? null, 'cup')
  return [...parts.slice(0, -1), inCups, ...spoons(left)].filter(isSaid)
}

/** As TM 10-412 takes gallons apart: quarts, pints, cups, tablespoons, and teaspoons to the 1/4. */
export const takenApart = (ml: Rational): readonly AmountPart[] => {
  const { parts, rest } = inWholes(toStep(ml, times(US_ML.tsp, ratio(1, 4))), [
    [US_ML.gal, 'gal'],
    [US_ML.qt, 'qt'],
    [US_ML.pt, 'pt'],
    [US_ML.cup, 'cup'],
  ])
  return [...parts.filter(isSaid), ...spoons(rest)]
}

/**
 * Steps of a volume by its size, at most 2.1 percent off from 4 Tbsp up. Our own; the 1/4 tsp is
 * TM 10-412's smallest step.
 */
const VOLUME_STEPS: readonly { readonly under: Rational; readonly step: Rational }[] = [
  { under: US_ML.tsp, step: times(US_ML.tsp, ratio(1, 8)) },
  { under: times(US_ML.tbsp, ratio(4)), step: times(US_ML.tsp, ratio(1, 4)) },
  { under: US_ML.cup, step: times(US_ML.tsp, ratio(1, 2)) },
  { under: US_ML.qt, step: US_ML.tsp },
  { under: US_ML.gal, step: US_ML.tbsp },
]
const LARGEST_STEP = times(US_ML.cup, ratio(1, 4))

/** What measuring cups and spoons give exactly is never rounded. */
const isMeasurable = (ml: Rational): boolean =>
  [times(US_ML.cup, ratio(1, 4)), times(US_ML.cup, ratio(1, 3))].some(
    (step) => dividedBy(ml, step).under === 1n,
  )

const volume = (ml: Rational): KitchenMeasure => {
  const step = VOLUME_STEPS.find(({ under }) => compared(ml, under) < 0)?.step ?? LARGEST_STEP
  const size = isMeasurable(ml) ? ml : toStep(ml, step)
  return { kind: 'us', parts: cupsAndSpoons(size), size, step }
}

/** Pounds and ounces to the 1/4 oz, halves up: the ounce scale of TM 10-412. */
const weight = (g: Rational): KitchenMeasure => {
  const step = times(US_G.oz, ratio(1, 4))
  const size = toStep(g, step)
  const { parts, rest } = inWholes(size, [[US_G.lb, 'lb']])
  const oz = countPart(dividedBy(rest, US_G.oz))
  const all = [...parts, part(BigInt(oz.whole), oz.fraction, 'oz')]
  return { kind: 'us', parts: all.filter(isSaid), size, step }
}

const metric = (size: Rational, unit: 'g' | 'mL'): KitchenMeasure => {
  const shown = metricAmount(toNumber(size), unit)
  const many = shown.unit === 'kg' || shown.unit === 'L' ? 1000 : 1
  const decimals = ratio(Math.round(shown.value * 100), 100)
  const steps = [10, 100, 1_000, 10_000]
  const at = steps.findIndex((most) => compared(size, ratio(most)) < 0)
  const step = [ratio(1, 10), ratio(1), ratio(5), ratio(50)][at] ?? ratio(100)
  return { kind: 'metric', metric: shown, size: times(decimals, ratio(many)), step }
}

/**
 * Eggs to the nearest whole, at least one; pieces up to the next, so that nobody goes short; what
 * is cut (heads, loaves, packs) to the quarter, at least one.
 */
const counted = (count: Rational, of: Counted): KitchenMeasure => {
  const step = isCut(of) ? ratio(1, 4) : ratio(1)
  const near = of === 'egg' || isCut(of) ? toStep(count, step) : ratio(ceilOf(count))
  const size = compared(near, step) < 0 ? step : near
  return { kind: 'count', of, part: countPart(size), size, step }
}

/** Used to the quarter can, at least one; opened whole. */
const canned = (count: Rational, can: string): KitchenMeasure => {
  const step = ratio(1, 4)
  const near = toStep(count, step)
  const size = compared(near, step) < 0 ? step : near
  return { kind: 'cans', can, part: countPart(size), open: Number(ceilOf(size)), size, step }
}

/** A rough measure is a spoon's from there on. */
const ROUGH_MOST = times(US_ML.tsp, ratio(1, 8))

/**
 * What is measured out of an exact amount, in the system it is written in or the other, never more
 * than its step away from it.
 */
export const kitchenMeasure = (
  amount: Amount,
  system: 'us' | 'metric' | null = null,
): KitchenMeasure => {
  if (amount.kind === 'count') return counted(amount.size, amount.of)
  if (amount.kind === 'cans') return canned(amount.size, amount.can)
  const isMetric = (system ?? amount.written) === 'metric'
  if (isMetric) return metric(amount.size, amount.kind === 'weight' ? 'g' : 'mL')
  return amount.kind === 'weight' ? weight(amount.size) : volume(amount.size)
}

/** Whether an amount is so small that no spoon measures it: under 1/8 tsp. */
export const isRough = (amount: Amount): boolean =>
  amount.kind === 'volume' && amount.written !== 'metric' && compared(amount.size, ROUGH_MOST) < 0

/** How far what is measured out is off: 0.02 is 2 percent more. */
export const offBy = (amount: Amount, shown: KitchenMeasure): number =>
  toNumber(dividedBy(plus(shown.size, { ...amount.size, over: -amount.size.over }), amount.size))

/** A volume that is only about so much: to the 1/4 qt from 1 qt up, to the 1/4 cup below. */
export const roughly = (ml: Rational): readonly AmountPart[] => {
  const [one, unit]: [Rational, SpokenUnit] =
    compared(ml, US_ML.qt) < 0 ? [US_ML.cup, 'cup'] : [US_ML.qt, 'qt']
  const { whole, fraction } = countPart(toStep(dividedBy(ml, one), ratio(1, 4)))
  return [{ whole, fraction, unit }]
}
