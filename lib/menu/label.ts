import type { z } from 'zod'
import type { labelSchema } from '#lib/menu/station-parts-schema.ts'

export type Label = z.infer<typeof labelSchema>

/** The label of a product that isn't the same as last time: nobody has read it. */
export const UNREAD_LABEL: Label = {
  declarations: {},
  traits: null,
  claims: {},
  readOn: null,
  readBy: null,
}
