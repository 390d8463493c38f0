import type { StationDocument } from '#lib/station/station-document.ts'

/** What the id of an ingredient or a recipe is called on the screens; an unknown one as it is. */
export const ingredientIn =
  (station: StationDocument | null) =>
  (id: string): string => {
    const same = (one: { readonly id: string }) => one.id === id
    return (station?.ingredients.find(same) ?? station?.recipes.find(same))?.name ?? id
  }
