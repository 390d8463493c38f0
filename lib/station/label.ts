import type { z } from 'zod'
import type { labelSchema } from '#lib/station/shapes/label-schema.ts'
import type { Ingredient, StationDocument } from '#lib/station/station-document.ts'

export type Label = z.infer<typeof labelSchema>

/** What was read of an ingredient, without what it is called here, its maker and its substitutes. */
export const labelOf = ({
  id: _,
  name: __,
  plural: ___,
  maker: ____,
  pack: _____,
  products: ______,
  edible: _______,
  invoices: ________,
  lies: _________,
  ...label
}: Ingredient): Label => label

/** The label of a product that isn't the same as last time: nobody has read it. */
export const UNREAD_LABEL: Label = {
  declarations: {},
  traits: null,
  claims: {},
  readOn: null,
  readBy: null,
}

/** A document of before may name who read its labels, which no log says any more. */
export const withoutReaders = (document: StationDocument): StationDocument => ({
  ...document,
  ingredients: document.ingredients.map((one) => ({ ...one, readBy: null })),
})
