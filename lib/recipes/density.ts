/** How heavy a volume of a food is, and how that is known. Nothing is taken to weigh as water. */
import type { Amount, Density } from '#lib/recipes/amount.ts'
import { foodWeight } from '#lib/recipes/food-weights.ts'
import {
  dividedBy,
  fromNumber,
  isZero,
  minus,
  type Rational,
  ratio,
  toNumber,
} from '#lib/recipes/rational.ts'
import { US_ML } from '#lib/recipes/units.ts'

/** One scoop that is levelled is off by so much: common practice, no source. */
const ONE_SCOOP_OFF = 0.05
/** A kitchen scale shows steps of 5 g, so a weighing is off by half of one. Common practice. */
const SCALE_STEP_G = 5
/** Published capacities of one pan differ by 5 to 10 percent. */
const PAN_OFF = 0.1
/** Household weights of one food differ by that much from sample to sample, some by more. */
const TABLE_OFF = 0.1
const CARD_OFF = 0.05

export type DensityProblem =
  | { readonly code: 'no-weight' }
  | { readonly code: 'no-volume' }
  | { readonly code: 'below-tare' }
  | { readonly code: 'unlikely'; readonly gPerMl: number }
  | { readonly code: 'not-in-the-table' }

/** What is typed of it; the empty pan's weight is its row's where it is ''. */
export type Weighing =
  | { readonly by: 'measured'; readonly scoops: string }
  | { readonly by: 'pan'; readonly gross: string; readonly tare: string }
  | { readonly by: 'table'; readonly food: string }

/** `no-measure`: its portion is no level measure, or no pan of known capacity holds it. */
export type WeighedCode = DensityProblem['code'] | 'no-measure'

export type DensityFound =
  | { readonly ok: true; readonly density: Density }
  | { readonly ok: false; readonly problem: DensityProblem }

const refused = (problem: DensityProblem): DensityFound => ({ ok: false, problem })

/** Nothing that is eaten is lighter than raw leaves or puffed grain, or heavier than salt. */
const LIKELY = { least: 0.02, most: 2.5 }

const found = (g: Rational, ml: Rational, by: Density['by'], offBy: number): DensityFound => {
  if (g.over <= 0n) return refused({ code: 'no-weight' })
  if (isZero(ml)) return refused({ code: 'no-volume' })
  const gPerMl = dividedBy(g, ml)
  const near = toNumber(gPerMl)
  return near < LIKELY.least || near > LIKELY.most
    ? refused({ code: 'unlikely', gPerMl: near })
    : { ok: true, density: { gPerMl, by, offBy } }
}

/**
 * From so many level measures that were weighed together, ten as a rule. `ml` of one measure,
 * `g` of all. The error of levelling shrinks with the root of their number; the measure's own size
 * isn't in it, and drops out where the same measure serves the portions.
 */
export const densityOfScoops = (ml: Rational, count: number, g: Rational): DensityFound => {
  if (!Number.isInteger(count) || count < 1) throw new RangeError('scoops are counted from 1')
  const levelling = ONE_SCOOP_OFF / Math.sqrt(count)
  const scale = g.over > 0n ? SCALE_STEP_G / 2 / toNumber(g) : 0
  const all = dividedBy(ml, ratio(1, count))
  return found(g, all, 'measured', Math.hypot(levelling, scale))
}

/**
 * From one pan, filled as usual and weighed: grams gross and empty, usable millilitres by the
 * table or the station's own. No better than the pan's capacity is known.
 */
export const densityOfPan = (
  usableMl: Rational,
  grossG: Rational,
  tareG: Rational,
): DensityFound => {
  const net = minus(grossG, tareG)
  return net.over < 0n ? refused({ code: 'below-tare' }) : found(net, usableMl, 'pan', PAN_OFF)
}

/** From USDA's household weights, by the row's id. */
export const densityOfFood = (id: string): DensityFound => {
  const row = foodWeight(id)
  return row === null
    ? refused({ code: 'not-in-the-table' })
    : found(fromNumber(row.gPerCup), US_ML.cup, 'table', TABLE_OFF)
}

/** From a card that says one amount both ways, "6 lb (2 qt 3 1/4 cups)"; null where it doesn't. */
export const densityOfCard = (amount: Amount, also: Amount | null): Density | null => {
  if (also === null) return null
  const [g, ml] = amount.kind === 'weight' ? [amount, also] : [also, amount]
  if (g.kind !== 'weight' || ml.kind !== 'volume') return null
  const card = found(g.size, ml.size, 'card', CARD_OFF)
  return card.ok ? card.density : null
}
