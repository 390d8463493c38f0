/** A station document taken apart into the rows of a draft; its labels are in none of them. */
import {
  type Draft,
  type Entity,
  type EntityKey,
  isRecord,
  type Json,
  keyOf,
  type Row,
} from '#lib/editor/draft.ts'
import { LABEL_FIELDS } from '#lib/editor/fields.ts'
import { openContacts } from '#lib/editor/proposed-contacts.ts'

/** A document as JSON; what it says may be wrong, but no two of a kind have one id. */
export type WrittenDocument = Readonly<Record<string, Json>>

const LISTS = [
  ['ingredients', 'ingredient'],
  ['recipes', 'recipe'],
  ['components', 'component'],
  ['items', 'item'],
  ['contacts', 'contact'],
  ['backups', 'backup'],
  ['tools', 'tool'],
] as const

const NOT_OF_THE_HOUSE: readonly string[] = [
  ...['format', 'version', 'id', 'line', 'safety', 'day'],
  ...LISTS.map(([list]) => list),
]

const only = (row: Row, is: (field: string) => boolean): Row =>
  Object.fromEntries(Object.entries(row).filter(([field]) => is(field)))

const records = (value: Json | undefined): readonly Row[] =>
  Array.isArray(value) ? value.filter(isRecord) : []

const isOfLabel = (field: string): boolean => LABEL_FIELDS.includes(field)

/** Products keep their names in the row; their labels are the house's too. */
const productsOf = (part: Row): Row =>
  part.products === undefined
    ? {}
    : { products: records(part.products).map((one) => only(one, (field) => !isOfLabel(field))) }

/** The rows that a document is laid together from again, as `layDocument` does. */
export const draftOf = (document: WrittenDocument): Draft => {
  const rows: Partial<Record<EntityKey, Row>> = {}
  const keep = (entity: Entity, part: Row, more: Row): void => {
    const { id, ...fields } = part
    rows[keyOf(entity, String(id))] = { ...fields, ...more }
  }
  rows.house = {
    ...only(document, (field) => !NOT_OF_THE_HOUSE.includes(field)),
    ...(Array.isArray(document.contacts) ? { contactsSaid: true } : {}),
  }
  for (const single of ['safety', 'day'] as const)
    if (isRecord(document[single])) rows[single] = document[single]
  const line = isRecord(document.line) ? document.line : {}
  for (const [at, { pans, ...well }] of records(line.wells).entries()) {
    keep('well', well, { at })
    for (const [place, pan] of records(pans).entries())
      keep('pan', pan, { well: String(well.id), at: place })
  }
  for (const [list, kind] of LISTS)
    for (const [at, part] of records(document[list]).entries())
      if (kind === 'ingredient')
        keep(kind, { ...only(part, (field) => !isOfLabel(field)), ...productsOf(part) }, { at })
      else keep(kind, part, { at })
  const draft: Draft = { station: String(document.id), rows }
  if (!Array.isArray(document.contacts)) return draft
  // Its contacts are all that touches: what the drawing proposes beside them doesn't.
  const apart = openContacts(draft).map(({ id, row, of }): [EntityKey, Row] => [
    `contact:${id}`,
    { ...row, touches: false, of },
  ])
  return { ...draft, rows: { ...rows, ...Object.fromEntries(apart) } }
}
