/** A label as it is being read: what is answered so far, and what that stands on. */

import {
  EMPTY_LABEL,
  type LabelDraft,
  labelFrom,
  withWord,
} from '#lib/rooms/care/views/label-draft.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, declarable, kindsOf } from '#lib/station/codes/askable.ts'
import type { Label } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'

/** As many letters as a label keeps of its list. */
export const MOST_LETTERS = 4_000

/** What "declared free" stands on: words on the package, or a letter of its maker. */
export type FreeBy = 'printed' | 'letter'

export interface LabelForm {
  /** Of an allergen that isn't in it there is no answer yet; `unknown` is "not said", an answer. */
  readonly draft: LabelDraft
  /** The words of the package, as typed or pasted. */
  readonly list: string
  /** The whole list was read, as it stands here. */
  readonly hasReadAll: boolean
  /** It is one plain food, as a pepper: there is no list. */
  readonly isPlain: boolean
  /** The allergens that the law of its pack makes it name; null: no answer yet. */
  readonly law: AllergenSetId | null
  readonly freeBy: FreeBy | null
  /** SHA-256 of the kept picture. */
  readonly photo: string | null
}

/** Nothing is answered by default. */
export const NEW_FORM: LabelForm = {
  draft: EMPTY_LABEL,
  list: '',
  hasReadAll: false,
  isPlain: false,
  law: null,
  freeBy: null,
  photo: null,
}

export const answerOf = (form: LabelForm, code: string): Declaration | null =>
  form.draft.declarations[code] ?? null

/**
 * With an answer for an allergen; the same one again takes it away. Kinds go with their group where
 * it says anything but that it contains some of them.
 */
export const withAnswer = (
  form: LabelForm,
  allergens: Allergens,
  code: string,
  word: Declaration,
): LabelForm => {
  const next = answerOf(form, code) === word ? null : word
  const kinds = next === 'contains' ? [] : kindsOf(allergens, code)
  const draft = [...kinds].reduce(
    (so, kind) => withWord(so, kind, null),
    withWord(form.draft, code, next),
  )
  return { ...form, draft }
}

/** With what is said of one kind; a kind that is contained makes its group contained. */
export const withKind = (
  form: LabelForm,
  group: string,
  kind: string,
  word: Declaration,
): LabelForm => {
  const isSame = answerOf(form, kind) === word
  const draft = withWord(form.draft, kind, isSame ? null : word)
  const isContained = !isSame && word === 'contains'
  return { ...form, draft: isContained ? withWord(draft, group, 'contains') : draft }
}

/** With other words: what was said of the whole list was said of the words before. */
export const withList = (form: LabelForm, list: string): LabelForm =>
  list === form.list ? form : { ...form, list, hasReadAll: false }

/** One plain food has no list of which all was read. */
export const withPlain = (form: LabelForm, isPlain: boolean): LabelForm => ({ ...form, isPlain })

const hasFree = ({ draft }: LabelForm): boolean =>
  Object.values(draft.declarations).includes('free')

/**
 * The label as it is written down. Where nothing was said of what declares it free, all that is stands
 * among the words of the package (`formProblems`).
 * @param readOn civil date, as 2026-11-25
 */
export const writtenLabel = (allergens: Allergens, form: LabelForm, readOn: string): Label => ({
  ...labelFrom(allergens, form.draft, readOn),
  ...(hasFree(form) ? { freeBy: form.freeBy ?? 'printed' } : {}),
  ...(form.law === null ? {} : { law: form.law }),
  ...(form.isPlain ? { plain: true as const } : {}),
  ...(form.list.trim() === '' ? {} : { list: form.list.trim() }),
  ...(form.photo === null ? {} : { photo: form.photo }),
})

/**
 * What was written down before, to be gone through again. That the whole list was read, what "declared
 * free" stands on and the statement beside wheat are claims of who reads: they are said anew.
 */
export const formOf = (allergens: Allergens, label: Label): LabelForm => {
  const { declarations, traits, sources = {}, claims, law = null, plain, list = '', photo } = label
  const known = declarable(allergens)
  const said = Object.entries(declarations).filter(([code]) => known.has(code))
  return {
    ...NEW_FORM,
    draft: { ...EMPTY_LABEL, declarations: Object.fromEntries(said), traits, sources, claims },
    list,
    isPlain: plain === true,
    law,
    photo: photo ?? null,
  }
}
