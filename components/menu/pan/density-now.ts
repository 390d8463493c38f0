/** What a component weighs, from what was weighed here or from the table. */
import { portionMl } from '#lib/editor/cards/pan-holds.ts'
import type { Row } from '#lib/editor/draft.ts'
import { VOLUME_ML } from '#lib/measure/kitchen-units.ts'
import { densityOfScoops } from '#lib/recipes/density.ts'
import { FOOD_WEIGHTS, type FoodWeight } from '#lib/recipes/food-weights.ts'
import { fromNumber, toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'

const WEIGHED = 10

export type Density =
  | { readonly ok: true; readonly gPerMl: number; readonly gPerCup: number }
  | { readonly ok: false; readonly code: 'no-weight' | 'unlikely' }

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))

/** From ten level measures of the portion's own tool, their weight typed as on a scale. */
export const measuredDensity = (portion: Row, typed: string): Density => {
  const read = typedAmount(typed)
  const ml = portionMl({ ...portion, level: 1 })
  if (!read.ok || read.amount?.kind !== 'weight' || ml === null)
    return { ok: false, code: 'no-weight' }
  const found = densityOfScoops(fromNumber(ml), WEIGHED, read.amount.size)
  if (!found.ok)
    return { ok: false, code: found.problem.code === 'unlikely' ? 'unlikely' : 'no-weight' }
  const gPerMl = toNumber(found.density.gPerMl)
  return { ok: true, gPerMl: rounded(gPerMl, 4), gPerCup: rounded(gPerMl * VOLUME_ML.cup, 1) }
}

export interface TableRow extends FoodWeight {
  readonly gPerMl: number
}

const MOST_ROWS = 4

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 2)
    .map((word) => word.replace(/s$/, ''))

/** Foods of the table whose names share a word with a component's, the likeliest first. */
export const tableRows = (name: string): readonly TableRow[] => {
  const said = wordsOf(name)
  return FOOD_WEIGHTS.map((row) => ({
    row,
    shared: wordsOf(row.id).filter((word) => said.includes(word)).length,
  }))
    .filter(({ shared }) => shared > 0)
    .toSorted((one, other) => other.shared - one.shared)
    .slice(0, MOST_ROWS)
    .map(({ row }) => ({ ...row, gPerMl: rounded(row.gPerCup / VOLUME_ML.cup, 4) }))
}
