/** A draft and the house's labels laid together as a station document, which may be wrong yet. */
import {
  type Draft,
  type EntityKey,
  type Json,
  type Kind,
  keyOf,
  type Named,
  type Row,
  rowsOf,
  textIn,
  textsIn,
} from '#lib/editor/draft.ts'
import { LABEL_FIELDS } from '#lib/editor/fields.ts'
import { openContacts } from '#lib/editor/proposed-contacts.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { stationShape } from '#lib/station/shapes/station-parts-schema.ts'

/** By ingredient, and `ingredient/product` for its substitutes; none: nobody has read it. */
export type DraftLabels = Readonly<Record<string, Row>>

/** Where each entity stands in the document, by the path of its part: `components.3`. */
export type Places = ReadonlyMap<string, EntityKey>

export interface Laid {
  readonly document: { readonly [key: string]: unknown }
  readonly places: Places
}

const [VERSION] = stationShape.shape.version.values

const without = (row: Row, ...fields: readonly string[]): Row =>
  Object.fromEntries(Object.entries(row).filter(([field]) => !fields.includes(field)))

const partOf = ({ id, row }: Named): Row => ({ id, ...without(row, 'at') })

const labelIn = (labels: DraftLabels, key: string): Row => {
  const label = labels[key]
  if (label === undefined) return { ...UNREAD_LABEL } as unknown as Row
  return Object.fromEntries(Object.entries(label).filter(([field]) => LABEL_FIELDS.includes(field)))
}

const withLabel = (labels: DraftLabels, { id, row }: Named): Row => {
  const products = Array.isArray(row.products)
    ? row.products.map((one) => ({ ...one, ...labelIn(labels, `${id}/${one.id}`) }))
    : undefined
  return {
    ...partOf({ id, row }),
    ...(products === undefined ? {} : { products }),
    ...labelIn(labels, id),
  }
}

/** What this station lists, and what its food names beside that. */
export const ingredientsOf = (draft: Draft): readonly Named[] => {
  const named = new Set(
    (['component', 'recipe'] as const).flatMap((kind) =>
      rowsOf(draft, kind).flatMap(({ row }) => textsIn(row, 'ingredients')),
    ),
  )
  return rowsOf(draft, 'ingredient').filter(({ id, row }) => 'at' in row || named.has(id))
}

/** Whether somebody confirmed what touches what; until then the document says that nobody did. */
const contactsOf = (draft: Draft): readonly Named[] | null => {
  if (draft.rows.house?.contactsSaid !== true) return null
  return [
    ...rowsOf(draft, 'contact').filter(({ row }) => row.touches !== false),
    // The line was changed since: it counts as touching until somebody says otherwise.
    ...openContacts(draft),
  ]
}

/** The document as it would be, and which of its parts is which row. */
export const layDocument = (draft: Draft, labels: DraftLabels): Laid => {
  const places = new Map<string, EntityKey>([
    ['safety', 'safety'],
    ['day', 'day'],
  ])
  const list = (
    path: string,
    kind: Kind,
    named: readonly Named[],
    part: (one: Named) => Row = partOf,
  ): Row[] =>
    named.map((one, index) => {
      places.set(`${path}.${index}`, keyOf(kind, one.id))
      return part(one)
    })
  const wells = rowsOf(draft, 'well').map((well, index) => {
    const path = `line.wells.${index}`
    places.set(path, keyOf('well', well.id))
    const pans = rowsOf(draft, 'pan').filter(({ row }) => textIn(row, 'well') === well.id)
    return {
      ...partOf(well),
      pans: list(`${path}.pans`, 'pan', pans, (pan) => without(partOf(pan), 'well')),
    }
  })
  const contacts = contactsOf(draft)
  const { safety, day } = draft.rows
  const singles: Record<string, Json> = {
    ...(safety === undefined ? {} : { safety }),
    ...(day === undefined ? {} : { day }),
  }
  const document = {
    format: stationShape.shape.format.value,
    version: VERSION,
    ...without(draft.rows.house ?? {}, 'contactsSaid'),
    id: draft.station,
    line: { wells },
    ingredients: list('ingredients', 'ingredient', ingredientsOf(draft), (one) =>
      withLabel(labels, one),
    ),
    recipes: list('recipes', 'recipe', rowsOf(draft, 'recipe')),
    components: list('components', 'component', rowsOf(draft, 'component')),
    items: list('items', 'item', rowsOf(draft, 'item')),
    contacts:
      contacts === null
        ? null
        : list('contacts', 'contact', contacts, (one) => without(partOf(one), 'touches', 'of')),
    backups: list('backups', 'backup', rowsOf(draft, 'backup')),
    tools: list('tools', 'tool', rowsOf(draft, 'tool')),
    ...singles,
  }
  return { document, places }
}
