import { type Label, UNREAD_LABEL } from '#lib/menu/label.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'

/** A document in which one ingredient has a new label; null: one that nobody has read. */
export const relabelled = (
  station: StationDocument,
  ingredient: string,
  label: Label | null,
): StationDocument => ({
  ...station,
  ingredients: station.ingredients.map((one) =>
    one.id === ingredient ? { id: one.id, name: one.name, ...(label ?? UNREAD_LABEL) } : one,
  ),
})
