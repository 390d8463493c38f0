/** A station's document and the labels of its house, which no document keeps. */
import { type Allergens, declarable } from '#lib/station/codes/askable.ts'
import { type Label, labelOf, UNREAD_LABEL } from '#lib/station/label.ts'
import { labelledAs } from '#lib/station/relabelled.ts'
import type { Ingredient, StationDocument } from '#lib/station/station-document.ts'

/** What the house knows of an ingredient, or of one of its substitutes. */
export type LabelFor = (
  ingredient: string,
  product: string | null,
) => { readonly label: Label | null } | null

/** A label as a station says it: another of the house may name allergens that its own set doesn't. */
export const labelHere = (station: Allergens, label: Label): Label => {
  const known = declarable(station)
  const declared = Object.entries(label.declarations)
  if (declared.every(([code]) => known.has(code))) return label
  return {
    ...label,
    declarations: Object.fromEntries(declared.filter(([code]) => known.has(code))),
  }
}

/** The document with the house's labels in place of what it says; what the house has none of stays. */
export const filled = (station: StationDocument, of: LabelFor): StationDocument => {
  const here = (label: Label | null) => label && labelHere(station, label)
  const own = (one: Ingredient): Ingredient => {
    const found = of(one.id, null)
    return found ? labelledAs(one, here(found.label)) : one
  }
  const products = ({ id, products }: Ingredient) =>
    products?.map((one) => {
      const found = of(id, one.id)
      if (!found) return one
      const { maker, pack } = one
      return {
        id: one.id,
        ...(maker === undefined ? {} : { maker }),
        ...(pack === undefined ? {} : { pack }),
        ...(here(found.label) ?? UNREAD_LABEL),
      }
    })
  return {
    ...station,
    ingredients: station.ingredients.map((one) =>
      one.products === undefined ? own(one) : { ...own(one), products: products(one) },
    ),
  }
}

const saysAnything = ({ readOn, declarations, traits, claims, list, photo }: Label): boolean =>
  readOn !== null ||
  traits !== null ||
  Object.keys({ ...declarations, ...claims }).length > 0 ||
  list !== undefined ||
  photo !== undefined

/** Every label that a document brings and that says anything, also where nobody here has read it. */
export const labelsIn = (
  station: Pick<StationDocument, 'ingredients'>,
): readonly {
  readonly ingredient: string
  readonly product: string | null
  readonly label: Label
}[] =>
  station.ingredients
    .flatMap((one) => [
      { ingredient: one.id, product: null, label: labelOf(one) },
      ...(one.products ?? []).map(({ id, maker: _, pack: __, ...label }) => ({
        ingredient: one.id,
        product: id,
        label,
      })),
    ])
    .filter(({ label }) => saysAnything(label))

/** The document as it is kept: nobody has read anything of it. */
export const unlabelled = (station: StationDocument): StationDocument =>
  filled(station, () => ({ label: UNREAD_LABEL }))
