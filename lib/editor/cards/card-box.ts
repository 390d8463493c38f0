/** The recipe cards of a draft, and what is bought for them. */
import {
  type Draft,
  isRecord,
  type Row,
  recordsIn,
  rowOf,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import type { Bought, Card, CardBox, CardLine } from '#lib/recipes/card.ts'
import type { Invoice } from '#lib/recipes/purchased.ts'

/** Lines in the card's order; what it is made of without an amount comes behind them. */
const linesOf = (row: Row): readonly CardLine[] => {
  const recipes = textsIn(row, 'recipes')
  const parts = [...recipes, ...textsIn(row, 'ingredients')]
  const typed = recordsIn(row, 'lines').map((line) => ({
    of: textIn(line, 'of'),
    typed: textIn(line, 'typed'),
  }))
  const without = parts.filter((id) => typed.every(({ of }) => of !== id))
  return [...typed, ...without.map((of) => ({ of, typed: '' }))]
    .filter(({ of }) => parts.includes(of))
    .map((line) => ({ ...line, isRecipe: recipes.includes(line.of) }))
}

const isInvoice = ({ date, packs, packTyped, cents }: Row): boolean =>
  typeof date === 'string' &&
  typeof packs === 'number' &&
  typeof packTyped === 'string' &&
  typeof cents === 'number' &&
  Number.isSafeInteger(packs) &&
  Number.isSafeInteger(cents)

/** Lines of an ingredient's invoices that can be reckoned with. */
export const invoicesIn = (row: Row | undefined): readonly Invoice[] =>
  recordsIn(row, 'invoices')
    .filter(isInvoice)
    .map((one) => ({
      date: textIn(one, 'date'),
      packs: Number(one.packs),
      packTyped: textIn(one, 'packTyped'),
      cents: Number(one.cents),
    }))

const boughtOf = (id: string, row: Row): Bought => ({
  name: textIn(row, 'name') || id,
  ediblePercent:
    typeof row.edible === 'number' && row.edible >= 1 && row.edible <= 100 ? row.edible : null,
  invoices: invoicesIn(row),
})

const cardOfRow = (id: string, row: Row): Card => ({
  id,
  name: textIn(row, 'name') || id,
  yields: textIn(row, 'yields'),
  lines: linesOf(row),
})

export const cardOf = (draft: Draft, id: string): Card | null => {
  const row = rowOf(draft, 'recipe', id)
  return row === undefined ? null : cardOfRow(id, row)
}

/** What is typed at a component itself as a card, for one load of it; null where nothing is. */
export const ownCardOf = (draft: Draft, component: string): Card | null => {
  const row = rowOf(draft, 'component', component)
  return row === undefined || recordsIn(row, 'lines').length === 0
    ? null
    : cardOfRow(component, row)
}

/** Portions of one load: as it is made again, or as its first pan is usually loaded; null where nobody said. */
export const loadPortions = (draft: Draft, component: string): number | null => {
  const remake = rowOf(draft, 'component', component)?.remake
  const pan = rowsOf(draft, 'pan').find(({ row }) => row.component === component)?.row
  const said = isRecord(remake) ? remake.portionsPerLoad : pan?.usualPortions
  return typeof said === 'number' && said > 0 ? said : null
}

export interface Vessel {
  readonly id: string
  readonly name: string
  /** As typed: "20 qt". */
  readonly holds: string
}

/** Pots, griddles and ovens of the kitchen. */
export const vesselsOf = (draft: Draft): readonly Vessel[] =>
  recordsIn(draft.rows.house, 'vessels').map((one) => ({
    id: textIn(one, 'id'),
    name: textIn(one, 'name'),
    holds: textIn(one, 'holds'),
  }))

/** What a recipe is made in; null where nobody said, or it is gone. */
export const vesselOf = (draft: Draft, recipe: string): Vessel | null => {
  const said = textIn(rowOf(draft, 'recipe', recipe), 'vessel')
  return vesselsOf(draft).find(({ id }) => id === said) ?? null
}

export const cardBoxOf = (draft: Draft): CardBox => ({
  cards: new Map(rowsOf(draft, 'recipe').map(({ id, row }) => [id, cardOfRow(id, row)])),
  bought: new Map(rowsOf(draft, 'ingredient').map(({ id, row }) => [id, boughtOf(id, row)])),
})
