import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'
import type {
  Component,
  Ingredient,
  Recipe,
  StationDocument,
} from '#lib/station/station-document.ts'

/** What stays whatever is read, also what was paid; of another product neither maker nor pack. */
const calledAs = (
  { id, name, plural, maker, pack, products, edible, invoices, lies }: Ingredient,
  isSame: boolean,
) => ({
  id,
  name,
  ...(plural === undefined ? {} : { plural }),
  ...(isSame && maker !== undefined ? { maker } : {}),
  ...(isSame && pack !== undefined ? { pack } : {}),
  ...(products === undefined ? {} : { products }),
  ...(edible === undefined ? {} : { edible }),
  ...(invoices === undefined ? {} : { invoices }),
  ...(lies === undefined ? {} : { lies }),
})

/** An ingredient with a new label; null: of another product, that nobody has read. */
export const labelledAs = (one: Ingredient, label: Label | null): Ingredient => ({
  ...calledAs(one, label !== null),
  ...(label ?? UNREAD_LABEL),
})

/** A document in which one ingredient has a new label; null: of another product, that nobody has read. */
export const relabelled = (
  station: StationDocument,
  ingredient: string,
  label: Label | null,
): StationDocument => ({
  ...station,
  ingredients: station.ingredients.map((one) =>
    one.id === ingredient ? labelledAs(one, label) : one,
  ),
})

type Made = Component | Recipe

const inAll = (
  station: StationDocument,
  change: (ingredients: readonly string[]) => readonly string[],
): Pick<StationDocument, 'recipes' | 'components'> => {
  const of = <One extends Made>(made: One): One => ({
    ...made,
    ingredients: [...change(made.ingredients)],
  })
  return { recipes: station.recipes.map(of), components: station.components.map(of) }
}

/** Id of a product that is still in the pans under its label from before. */
export const beforeId = (ingredient: string, count: number): string =>
  `${ingredient}--before${count === 1 ? '' : `-${count}`}`

/** Whether an id is of a product from before. */
export const isOfBefore = (id: string): boolean => /--before(-\d+)?$/.test(id)

/** A document in which the product from before goes into everything that the new one does. */
export const withBefore = (
  station: StationDocument,
  ingredient: string,
  before: string,
): StationDocument => {
  const kept = station.ingredients.find((one) => one.id === ingredient)
  if (!kept) throw new Error(`the station has no ingredient ${ingredient}`)
  return {
    ...station,
    ...inAll(station, (ids) => (ids.includes(ingredient) ? [...ids, before] : ids)),
    ingredients: [...station.ingredients, { ...kept, id: before }],
  }
}

/** As it was without products from before. */
export const withoutBefore = (
  station: StationDocument,
  before: readonly string[],
): StationDocument =>
  before.length === 0
    ? station
    : {
        ...station,
        ...inAll(station, (ids) => ids.filter((one) => !before.includes(one))),
        ingredients: station.ingredients.filter((one) => !before.includes(one.id)),
      }
