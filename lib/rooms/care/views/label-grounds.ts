/** What the answers of a label that is read in a service stand on; nothing is said by default. */

import {
  type LabelDraft,
  labelFrom,
  restOfSet,
  withWord,
} from '#lib/rooms/care/views/label-draft.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import { isNamedByLaw } from '#lib/station/codes/named-by-law.ts'
import type { Label } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'

export interface LabelGrounds {
  /** The allergens that the law of its pack makes it name; null: no answer yet. */
  readonly law: AllergenSetId | null
  /** The whole ingredient list was read. */
  readonly hasReadAll: boolean
  /** What "declared free" stands on; null: no answer yet. */
  readonly freeBy: NonNullable<Label['freeBy']> | null
}

export const NO_GROUNDS: LabelGrounds = { law: null, hasReadAll: false, freeBy: null }

export type GroundsProblem =
  | { readonly why: 'free-by'; readonly codes: readonly string[] }
  | { readonly why: 'not-read-whole' }
  | { readonly why: 'no-law' }
  /** Its law needn't name them, so that a list without them says nothing. */
  | { readonly why: 'beyond-law'; readonly codes: readonly string[] }

const codesWith = ({ declarations }: LabelDraft, word: Declaration): readonly string[] =>
  Object.entries(declarations).flatMap(([code, said]) => (said === word ? [code] : []))

/** What the answers lack, so that the label isn't told yet. */
export const groundsProblems = (
  station: Allergens,
  draft: LabelDraft,
  { law, hasReadAll, freeBy }: LabelGrounds,
): readonly GroundsProblem[] => {
  const free = codesWith(draft, 'free')
  const notListed = codesWith(draft, 'not-listed')
  const beyond = law === null ? [] : notListed.filter((code) => !isNamedByLaw(station, law, code))
  return [
    ...(free.length > 0 && freeBy === null ? [{ why: 'free-by', codes: free } as const] : []),
    ...(notListed.length > 0 && law === null ? [{ why: 'no-law' } as const] : []),
    ...(notListed.length > 0 && !hasReadAll ? [{ why: 'not-read-whole' } as const] : []),
    ...(beyond.length > 0 ? [{ why: 'beyond-law', codes: beyond } as const] : []),
  ]
}

/** Of the set's groups of which nothing is said, those that a list without them doesn't hold. */
export const restNotListed = (
  station: Allergens,
  draft: LabelDraft,
  { law }: LabelGrounds,
): readonly string[] =>
  law === null ? [] : restOfSet(station, draft).filter((code) => isNamedByLaw(station, law, code))

/** With the rest of what its law names as not listed: read, and never called free. */
export const withRestNotListed = (
  station: Allergens,
  draft: LabelDraft,
  grounds: LabelGrounds,
): LabelDraft =>
  restNotListed(station, draft, grounds).reduce(
    (so, code) => withWord(so, code, 'not-listed'),
    draft,
  )

/** The label as the service is told it, with what it stands on. @param readOn civil date */
export const groundedLabel = (
  station: Allergens,
  draft: LabelDraft,
  { law, freeBy }: LabelGrounds,
  readOn: string,
): Label => ({
  ...labelFrom(station, draft, readOn),
  ...(freeBy !== null && codesWith(draft, 'free').length > 0 ? { freeBy } : {}),
  ...(law === null ? {} : { law }),
})
