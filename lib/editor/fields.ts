/** Which fields a row of each entity has: those of the document's own schema, and a few of a draft. */
import type { Entity } from '#lib/editor/draft.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'

const { shape } = stationShape

const well = shape.line.shape.wells.element.shape
const ingredient = Object.keys(shape.ingredients.element.shape)

/** What isn't the top level's own: entities, what the program says itself, and the id. */
const ELSEWHERE = [
  ...['format', 'version', 'id', 'line', 'ingredients', 'recipes', 'components', 'items'],
  ...['contacts', 'backups', 'safety', 'day', 'tools', 'invented'],
]

const without = (fields: readonly string[], others: readonly string[]): readonly string[] =>
  fields.filter((one) => !others.includes(one))

const own = (part: object, ...more: readonly string[]): readonly string[] => [
  ...without(Object.keys(part), ['id']),
  ...more,
]

/** Of an ingredient a draft holds what it is called and who makes it, never what its label says. */
const CALLED = ['name', 'plural', 'maker', 'pack', 'products', 'edible', 'invoices', 'lies']

export const LABEL_FIELDS: readonly string[] = without(ingredient, ['id', ...CALLED])

export const FIELDS: Readonly<Record<Entity, readonly string[]>> = {
  house: [...without(Object.keys(shape), ELSEWHERE), 'contactsSaid'],
  safety: Object.keys(shape.safety.unwrap().shape),
  day: Object.keys(shape.day.unwrap().shape),
  well: without(own(well, 'at'), ['pans']),
  pan: own(well.pans.element.shape, 'at', 'well'),
  backup: own(shape.backups.element.shape, 'at'),
  tool: own(shape.tools.unwrap().element.shape, 'at'),
  component: own(shape.components.element.shape, 'at'),
  recipe: own(shape.recipes.element.shape, 'at'),
  ingredient: [...CALLED, 'at'],
  item: own(shape.items.element.shape, 'at'),
  contact: own(shape.contacts.unwrap().element.shape, 'at', 'touches', 'of'),
}
