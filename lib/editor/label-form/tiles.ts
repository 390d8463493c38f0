/** One tile an allergen: its answer, and what the words of the package propose for it. */

import { answerOf, type LabelForm } from '#lib/editor/label-form/form.ts'
import { withWord } from '#lib/rooms/care/views/label-draft.ts'
import { type Allergens, askableAllergens, kindsOf } from '#lib/station/codes/askable.ts'
import { isNamedByLaw } from '#lib/station/codes/named-by-law.ts'
import { type Proposed, proposalsOf } from '#lib/station/label-words/proposals.ts'
import { type Mark, type Proposal, readList } from '#lib/station/label-words/read-list.ts'
import type { Declaration } from '#lib/station/station-document.ts'

export interface Tile {
  readonly code: string
  readonly kinds: readonly string[]
  /** null: no answer yet. */
  readonly answer: Declaration | null
  /** What the words propose; null where none of them is about it. */
  readonly proposes: Proposal | null
  /** The words that do, each once, those that only ask first. */
  readonly words: readonly string[]
  /** Kinds of it that are answered as contained. */
  readonly contained: readonly string[]
}

/** The marks of the words as they stand, by the station's set and own additions. */
export const marksOf = (allergens: Allergens, list: string): readonly Mark[] =>
  readList(list, allergens.allergenSet, allergens.ownAllergens)

const KINDS_GIVE: readonly Proposal[] = ['contains', 'ask', 'may-contain']

/** What is proposed of a group by itself and by its kinds: free of one kind frees no group. */
const proposedOf = (own: Proposal | null, kinds: readonly Proposal[]): Proposal | null => {
  const all = [...(own === null ? [] : [own]), ...kinds.filter((one) => one !== 'free')]
  if (own === 'free' && all.length > 1) return 'ask'
  return KINDS_GIVE.find((one) => all.includes(one)) ?? own
}

export const tilesOf = (
  allergens: Allergens,
  form: LabelForm,
  marks: readonly Mark[],
): readonly Tile[] => {
  const byCode = new Map(proposalsOf(marks).map((one) => [one.code, one]))
  return askableAllergens(allergens).map((code) => {
    const kinds = kindsOf(allergens, code)
    const found = [code, ...kinds].flatMap((one) => byCode.get(one) ?? [])
    const ofKinds = found.filter((one) => one.code !== code)
    return {
      code,
      kinds,
      answer: answerOf(form, code),
      proposes: proposedOf(
        byCode.get(code)?.proposes ?? null,
        ofKinds.map(({ proposes }) => proposes),
      ),
      words: wordsOf(found),
      contained: kinds.filter((kind) => answerOf(form, kind) === 'contains'),
    }
  })
}

const wordsOf = (proposed: readonly Proposed[]): readonly string[] => [
  ...new Set(
    proposed
      .flatMap(({ marks }) => marks)
      .toSorted((one, other) => Number(other.proposes === 'ask') - Number(one.proposes === 'ask'))
      .map(({ word }) => shown(word)),
  ),
]

/** As it is said: without the hyphen of a line's end. */
const shown = (word: string): string =>
  word
    .replace(/\u00ad/g, '')
    .replace(/-\s*\n\s*/g, '')
    .replace(/\s+/g, ' ')
    .toLowerCase()

/** Tiles that one tap answers as the words propose: without an answer, and nothing to ask. */
export const toConfirm = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter(({ answer, proposes }) => answer === null && proposes !== null && proposes !== 'ask')

/** What the reader confirms: allergens as proposed, and with them the kinds that are named. */
export const withConfirmed = (
  form: LabelForm,
  tiles: readonly Tile[],
  marks: readonly Mark[],
): LabelForm => {
  const byCode = new Map(proposalsOf(marks).map((one) => [one.code, one.proposes]))
  const draft = toConfirm(tiles).reduce((so, { code, kinds, proposes }) => {
    if (proposes === null || proposes === 'ask') return so
    const named = kinds.filter((kind) => byCode.get(kind) === 'contains')
    return [...(proposes === 'contains' ? named : [])].reduce(
      (next, kind) => withWord(next, kind, 'contains'),
      withWord(so, code, proposes),
    )
  }, form.draft)
  return { ...form, draft }
}

export interface Rest {
  /** Its law makes a label name them, and no word is about them. */
  readonly notListed: readonly string[]
  /** Its law needn't name them: what isn't listed there is not said. */
  readonly notSaid: readonly string[]
}

/** What one tap answers once the whole list was read; what a word is about is never of it. */
export const restOf = (allergens: Allergens, form: LabelForm, tiles: readonly Tile[]): Rest => {
  const open = tiles
    .filter(({ answer, proposes }) => answer === null && proposes === null)
    .map(({ code }) => code)
  const { law } = form
  const isNamed = (code: string) => law !== null && isNamedByLaw(allergens, law, code)
  return {
    notListed: open.filter(isNamed),
    notSaid: open.filter((code) => !isNamed(code)),
  }
}

/** Kinds of a group that is contained by some that are named: its law names each kind. */
const otherKinds = (form: LabelForm, allergens: Allergens, tiles: readonly Tile[]) =>
  tiles
    .filter(({ answer, contained }) => answer === 'contains' && contained.length > 0)
    .flatMap(({ kinds }) => kinds)
    .filter(
      (kind) =>
        answerOf(form, kind) === null &&
        form.law !== null &&
        isNamedByLaw(allergens, form.law, kind),
    )

/** "I read the whole list": the rest isn't listed where its law names it, and isn't said elsewhere. */
export const withRest = (
  form: LabelForm,
  allergens: Allergens,
  tiles: readonly Tile[],
  marks: readonly Mark[],
): LabelForm => {
  const { notListed, notSaid } = restOf(allergens, form, tiles)
  const marked = new Set(marks.map(({ code }) => code))
  const kinds = otherKinds(form, allergens, tiles).filter((kind) => !marked.has(kind))
  const listed = [...notListed, ...kinds].reduce(
    (so, code) => withWord(so, code, 'not-listed'),
    form.draft,
  )
  const draft = notSaid.reduce((so, code) => withWord(so, code, 'unknown'), listed)
  return { ...form, draft, hasReadAll: !form.isPlain }
}

/** Tiles without an answer, what is to be asked and what is to be confirmed among them. */
export const openTiles = (tiles: readonly Tile[]): readonly Tile[] =>
  tiles.filter(({ answer }) => answer === null)

/** "The other ones aren't said": for a label of which nothing else can be said. */
export const withRestUnsaid = (form: LabelForm, tiles: readonly Tile[]): LabelForm => ({
  ...form,
  draft: openTiles(tiles).reduce((so, { code }) => withWord(so, code, 'unknown'), form.draft),
})
