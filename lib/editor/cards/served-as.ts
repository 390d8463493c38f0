/** How a station serves what a recipe makes: the component, its portion and what that weighs. */
import { type Draft, isRecord, type Row, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import type { Amount, Density } from '#lib/recipes/amount.ts'
import { dividedBy, fromNumber } from '#lib/recipes/rational.ts'
import { US_ML } from '#lib/recipes/units.ts'
import { portionAmount } from '#lib/station/portion-amount.ts'
import { portionSchema } from '#lib/station/shapes/portion-schema.ts'

export interface ServedAs {
  readonly component: string
  readonly name: string
  readonly portion: Amount | null
  /** How many level measures it is; null where it is taken otherwise. */
  readonly level: number | null
  /** The number of the scoop; null for another tool. */
  readonly scoop: number | null
  readonly density: Density | null
  /** Portions that its pans are usually loaded with, together; null where no pan says so. */
  readonly usual: number | null
  readonly extraCents: number | null
  /** What a portion costs as the station itself said; null where it didn't. */
  readonly costCents: number | null
}

interface Portion {
  readonly portion: Amount
  readonly level: number | null
  readonly scoop: number | null
  readonly gPerCup: number | null
}

/** One portion, exactly; null while its fields don't say one yet. */
const portionOf = (typed: unknown): Portion | null => {
  const parsed = portionSchema.safeParse(typed)
  if (!parsed.success) return null
  const one = parsed.data
  return {
    portion: portionAmount(one),
    level: 'level' in one ? one.level : null,
    scoop: one.tool === 'scoop' ? one.number : null,
    gPerCup: 'gPerCup' in one ? one.gPerCup : null,
  }
}

const WAYS = ['measured', 'pan', 'table'] as const
/** As lib/recipes/density.ts states them. */
const OFF_BY = { measured: 0.02, pan: 0.1, table: 0.1 } as const

const densityOf = (row: Row, gPerCup: number | null): Density | null => {
  const said = isRecord(row.density) ? row.density : undefined
  const by = WAYS.find((one) => one === said?.by)
  if (by !== undefined && typeof said?.gPerMl === 'number' && said.gPerMl > 0)
    return { gPerMl: fromNumber(said.gPerMl), by, offBy: OFF_BY[by] }
  return gPerCup === null
    ? null
    : { gPerMl: dividedBy(fromNumber(gPerCup), US_ML.cup), by: 'table', offBy: OFF_BY.table }
}

const centsIn = (row: Row, field: string): number | null => {
  const value = row[field]
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0 ? value : null
}

const usualIn = (draft: Draft, component: string): number | null => {
  const loads = rowsOf(draft, 'pan').flatMap(({ row: { component: of, usualPortions } }) =>
    of === component && typeof usualPortions === 'number' && usualPortions > 0
      ? [usualPortions]
      : [],
  )
  return loads.length === 0 ? null : loads.reduce((sum, one) => sum + one, 0)
}

const servedAs = (draft: Draft, component: string, row: Row): ServedAs => {
  const one = portionOf(row.portion)
  return {
    component,
    name: textIn(row, 'name') || component,
    portion: one?.portion ?? null,
    level: one?.level ?? null,
    scoop: one?.scoop ?? null,
    density: densityOf(row, one?.gPerCup ?? null),
    usual: usualIn(draft, component),
    extraCents: centsIn(row, 'extraCents'),
    costCents: centsIn(row, 'costCents'),
  }
}

export const allServed = (draft: Draft): ReadonlyMap<string, ServedAs> =>
  new Map(rowsOf(draft, 'component').map(({ id, row }) => [id, servedAs(draft, id, row)]))

/** The first component that is this recipe and nothing else; null where it only goes into others. */
export const servedAsOf = (draft: Draft, recipe: string): ServedAs | null => {
  const found = rowsOf(draft, 'component').find(({ row }) => {
    const recipes = textsIn(row, 'recipes')
    return recipes.length === 1 && recipes[0] === recipe && textsIn(row, 'ingredients').length === 0
  })
  return found === undefined ? null : servedAs(draft, found.id, found.row)
}

/** Components that are made of a recipe, by way of others too. */
export const componentsWith = (draft: Draft, recipe: string): readonly string[] => {
  const within = new Set([recipe])
  let before = 0
  // Once more until nothing is added: a circle ends too.
  while (within.size > before) {
    before = within.size
    for (const { id, row } of rowsOf(draft, 'recipe'))
      if (textsIn(row, 'recipes').some((one) => within.has(one))) within.add(id)
  }
  return rowsOf(draft, 'component')
    .filter(({ row }) => textsIn(row, 'recipes').some((one) => within.has(one)))
    .map(({ id }) => id)
}
