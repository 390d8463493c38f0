/** Station documents of earlier versions, brought up to the newest. */

const isVersion1 = (
  document: unknown,
): document is {
  readonly ingredients: readonly object[]
  readonly components: readonly object[]
} =>
  typeof document === 'object' &&
  document !== null &&
  'version' in document &&
  document.version === 1 &&
  'ingredients' in document &&
  Array.isArray(document.ingredients) &&
  'components' in document &&
  Array.isArray(document.components)

/**
 * A document as of the newest version; what is none is given back as it is. What an older version
 * couldn't say is unknown: shared contact, so that nothing is kept apart, and claims.
 */
export const upgraded = (document: unknown): unknown => {
  if (!isVersion1(document)) return document
  return {
    ...document,
    version: 2,
    allergenSet: 'us-9',
    ownAllergens: [],
    cautions: 'ask',
    recipes: [],
    contacts: null,
    backups: [],
    ingredients: document.ingredients.map((one) => ({ ...one, claims: {}, readBy: null })),
    components: document.components.map((one) => ({ ...one, recipes: [] })),
  }
}
