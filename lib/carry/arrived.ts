/** What a label of another kitchen is worth here: what it contains stays, and nobody has read it. */
import type { Label } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Words that let a guest have something: they hold for the pack that somebody had in hand. */
const isFreeing = (said: string): boolean => said === 'free' || said === 'not-listed'

/** A source that makes a trait fit where the trait alone doesn't. */
const withoutPlants = (sources: NonNullable<Label['sources']>): Label['sources'] =>
  Object.fromEntries(
    Object.entries(sources).map(([trait, named]) => [
      trait,
      named.filter((one) => one !== 'plants'),
    ]),
  )

/**
 * A label as it arrives by file or copy. Nobody here has read it, so that only what it contains
 * counts (lib/needs/declared.ts): *declared free* and *not listed* become unknown, and so does what
 * lets a guest have something by other words: the statement beside wheat, a claim that is declared,
 * that it is one plain food, that it is made of nothing that a diet leaves out.
 */
export const arrivedLabel = <Said extends Label>(said: Said): Said => {
  const { glutenStatement: _, plain: __, freeBy: ___, sources, ...label } = said
  return {
    ...label,
    declarations: Object.fromEntries(
      Object.entries(said.declarations).map(([code, word]) => [
        code,
        isFreeing(word) ? 'unknown' : word,
      ]),
    ),
    traits: said.traits?.length === 0 ? null : said.traits,
    ...(sources === undefined ? {} : { sources: withoutPlants(sources) }),
    claims: Object.fromEntries(
      Object.entries(said.claims).filter(([, word]) => word !== 'declared'),
    ),
    readOn: null,
    readBy: null,
  } as Said
}

const withoutPicture = <Said extends Label>(said: Said, has: (hash: string) => boolean): Said => {
  if (said.photo === undefined || has(said.photo)) return said
  const { photo: _, ...label } = said
  return label as Said
}

/**
 * A station as it arrives: no label read, and none with a picture that didn't come along. It is
 * nobody's invention from now on: readings of invented food never grow too old (lib/rooms/day).
 */
export const arrived = (
  document: StationDocument,
  hasPicture: (hash: string) => boolean,
): StationDocument => ({
  ...document,
  invented: false,
  ingredients: document.ingredients.map((one) => ({
    ...withoutPicture(arrivedLabel(one), hasPicture),
    ...(one.products === undefined
      ? {}
      : {
          products: one.products.map((product) =>
            withoutPicture(arrivedLabel(product), hasPicture),
          ),
        }),
  })),
})

/** How many answers of a document's labels let a guest have something, and so arrive unread. */
export const answersLost = ({ ingredients }: Pick<StationDocument, 'ingredients'>): number =>
  ingredients
    .flatMap((one) => [one, ...(one.products ?? [])])
    .reduce(
      (sum, { declarations }) => sum + Object.values(declarations).filter(isFreeing).length,
      0,
    )
