/** What is wrong with a document where its parts don't know or contradict each other. */

export type DocumentProblemCode =
  // names
  | 'twice-the-id'
  | 'same-id'
  | 'named-twice'
  | 'no-such-ingredient'
  | 'no-such-recipe'
  | 'no-such-component'
  // the line and what is sold
  | 'pans-dont-fit'
  | 'no-pan'
  | 'no-heart'
  | 'base-not-a-choice'
  | 'required-not-usual'
  | 'no-cups'
  // what is made
  | 'made-of-nothing'
  | 'contains-itself'
  | 'line-of-another'
  | 'no-source'
  // labels
  | 'no-such-allergen'
  | 'kind-of-a-free-group'
  | 'kind-of-a-group-not-listed'
  | 'trait-missing'
  | 'trait-denied'
  | 'source-of-nothing'
  | 'no-such-source'
  | 'source-not-contained'
  | 'statement-alone'
  | 'own-twice'
  | 'own-is-known'
  // food, limits and the day
  | 'dry-and-cooked'
  | 'cooked-to-order'
  | 'reheats-in-hot-well'
  | 'asks-too-early'
  | 'looser-than-model'
  | 'time-without-procedure'
  | 'held-otherwise'
  | 'rush-backwards'
  | 'doors-backwards'
  | 'period-backwards'
  | 'periods-overlap'
  | 'no-such-bell'
  | 'no-such-period'
  | 'initials-twice'

export type DocumentEntity =
  | 'house'
  | 'well'
  | 'pan'
  | 'component'
  | 'recipe'
  | 'ingredient'
  | 'item'
  | 'contact'
  | 'backup'
  | 'tool'

export interface DocumentProblem {
  readonly code: DocumentProblemCode
  /** In words that name the part and say what to do. */
  readonly message: string
  readonly entity: DocumentEntity
  /** null: of the house. */
  readonly id: string | null
  /** The field of it that is wrong. */
  readonly field: string
  /** Ids, allergens, traits or times that the message names beside it, in its order. */
  readonly named: readonly string[]
}

type Where = readonly [entity: DocumentEntity, id: string | null, field: string]

export const wrong = (
  code: DocumentProblemCode,
  [entity, id, field]: Where,
  message: string,
  ...named: readonly string[]
): DocumentProblem => ({ code, message, entity, id, field, named })

/** The first that is there more than once. */
export const twice = (ids: readonly string[]): string | undefined =>
  ids.find((one, index) => ids.indexOf(one) !== index)

/** Where two of a kind are called the same. */
export const calledTwice = (
  entity: DocumentEntity,
  what: string,
  ids: readonly string[],
): readonly DocumentProblem[] => {
  const double = twice(ids)
  return double === undefined
    ? []
    : [wrong('twice-the-id', [entity, double, 'id'], `two ${what} are called ${double}`)]
}
