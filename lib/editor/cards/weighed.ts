/** What a component weighs, as typed, as fields of its row. */

import type { ServedAs } from '#lib/editor/cards/served-as.ts'
import { type Draft, isRecord, type Row, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'
import { PAN_DEPTHS_IN, PAN_SIZES, panCapacity } from '#lib/measure/pans.ts'
import type { Density } from '#lib/recipes/amount.ts'
import {
  type DensityFound,
  densityOfFood,
  densityOfPan,
  densityOfScoops,
  type WeighedCode,
  type Weighing,
} from '#lib/recipes/density.ts'
import {
  dividedBy,
  fromNumber,
  type Rational,
  ratio,
  times,
  toNumber,
} from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { US_ML } from '#lib/recipes/units.ts'

/** So many level measures are weighed together. */
export const SCOOPS_WEIGHED = 10

export type Weighed =
  | { readonly ok: true; readonly density: Density; readonly gPerCup: number }
  | { readonly ok: false; readonly code: WeighedCode }

const grams = (typed: string): Rational | null => {
  const read = typedAmount(typed)
  return read.ok && read.amount?.kind === 'weight' ? read.amount.size : null
}

interface PanOf {
  readonly usableMl: Rational
  readonly tareG: Rational | null
}

/** The first pan that holds it, by its own capacity or the table's; null where none is known. */
const panOf = (draft: Draft, component: string): PanOf | null => {
  const found = rowsOf(draft, 'pan').find(({ row }) => textIn(row, 'component') === component)
  if (found === undefined) return null
  const { size, depthIn, capacityFlOz, tareMg } = found.row
  const panSize = PAN_SIZES.find((one) => one === size)
  const panDepth = PAN_DEPTHS_IN.find((one) => one === depthIn)
  const table = panSize && panDepth ? panCapacity(panSize, panDepth)?.usableFlOz : undefined
  const flOz = typeof capacityFlOz === 'number' && capacityFlOz > 0 ? capacityFlOz : table
  return flOz === undefined
    ? null
    : {
        usableMl: times(US_ML.flOz, fromNumber(flOz)),
        tareG: typeof tareMg === 'number' && tareMg >= 0 ? ratio(Math.round(tareMg), 1000) : null,
      }
}

const found = (draft: Draft, served: ServedAs, weighing: Weighing): DensityFound | null => {
  if (weighing.by === 'table') return densityOfFood(weighing.food)
  if (weighing.by === 'measured') {
    const { portion, level } = served
    if (portion?.kind !== 'volume' || level === null) return null
    const one = dividedBy(portion.size, ratio(level))
    return densityOfScoops(one, SCOOPS_WEIGHED, grams(weighing.scoops) ?? ratio(0))
  }
  const pan = panOf(draft, served.component)
  if (pan === null) return null
  const tare = weighing.tare.trim() === '' ? pan.tareG : grams(weighing.tare)
  const gross = grams(weighing.gross)
  return gross === null || tare === null
    ? { ok: false, problem: { code: 'no-weight' } }
    : densityOfPan(pan.usableMl, gross, tare)
}

/** The density that a weighing says, or why it says none. */
export const weighed = (draft: Draft, served: ServedAs, weighing: Weighing): Weighed => {
  const density = found(draft, served, weighing)
  if (density === null) return { ok: false, code: 'no-measure' }
  if (!density.ok) return { ok: false, code: density.problem.code }
  const gPerCup = toNumber(times(density.density.gPerMl, US_ML.cup))
  return { ok: true, density: density.density, gPerCup: Number(gPerCup.toFixed(1)) }
}

/** The fields of its row: what it weighs, and of a portion that is level measures what they weigh. */
export const weighedFields = (
  draft: Draft,
  component: string,
  { density, gPerCup }: Weighed & { readonly ok: true },
  source: string,
): Row => {
  const portion = rowOf(draft, 'component', component)?.portion
  const gPerMl = Number(toNumber(density.gPerMl).toFixed(4))
  const { by } = density
  return {
    density: { gPerMl, by: by === 'card' ? 'measured' : by, source: source.slice(0, 120) },
    ...(isRecord(portion) && 'level' in portion
      ? { portion: { ...portion, gPerCup, source } }
      : {}),
  }
}
