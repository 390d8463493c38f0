import { isRecord, type Json, type Row } from '#lib/editor/draft.ts'
import type { WrittenDocument } from '#lib/editor/draft-of.ts'
import { LABEL_FIELDS } from '#lib/editor/fields.ts'
import type { DraftLabels } from '#lib/editor/raw-document.ts'

const records = (value: Json | undefined): readonly Row[] =>
  Array.isArray(value) ? value.filter(isRecord) : []

const labelIn = (row: Row): Row =>
  Object.fromEntries(Object.entries(row).filter(([field]) => LABEL_FIELDS.includes(field)))

/** The labels of a document as a house keeps them: by ingredient, and `ingredient/product`. */
export const labelsOf = (document: WrittenDocument): DraftLabels =>
  Object.fromEntries(
    records(document.ingredients).flatMap((one) => [
      [String(one.id), labelIn(one)] as const,
      ...records(one.products).map(
        (product) => [`${one.id}/${product.id}`, labelIn(product)] as const,
      ),
    ]),
  )
