import { describe, expect, test } from 'vitest'
import { type LabelForm, NEW_FORM, withAnswer, withKind } from '#lib/editor/label-form/form.ts'
import { againstWords, formProblems } from '#lib/editor/label-form/problems.ts'
import { marksOf, tilesOf } from '#lib/editor/label-form/tiles.ts'
import { labelFormWords } from '#lib/editor/words/label-form-en.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import type { Declaration } from '#lib/station/station-document.ts'

const US: Allergens = { allergenSet: 'us-9', ownAllergens: [] }

const saying = (
  said: Readonly<Record<string, Declaration>>,
  more: Partial<LabelForm> = {},
): LabelForm => ({
  ...Object.entries(said).reduce((so, [code, word]) => withAnswer(so, US, code, word), NEW_FORM),
  ...more,
})
const withTraits = (form: LabelForm, traits: LabelForm['draft']['traits']): LabelForm => ({
  ...form,
  draft: { ...form.draft, traits },
})
const tiles = (form: LabelForm) => tilesOf(US, form, marksOf(US, form.list))
const problems = (form: LabelForm) => formProblems(US, form, tiles(form))
const whys = (form: LabelForm) => problems(form).map(({ at, why }) => `${at} ${why}`)

const READ = { list: 'Salt.', hasReadAll: true, law: 'us-9' } as const

describe('[LF6] not listed takes the law of the pack, and the whole list or one plain food', () => {
  test.each([
    ['nothing', {}, ['words no-list', 'law no-law']],
    ['a law', { law: 'us-9' }, ['words no-list']],
    ['a list', { list: 'Salt.' }, ['words not-read-whole', 'law no-law']],
    ['a list and a law', { list: 'Salt.', law: 'us-9' }, ['words not-read-whole']],
    ['all of them', READ, []],
    ['a plain food and a law', { isPlain: true, law: 'us-9' }, []],
  ] as const)('with %s', (_, more, told) => {
    expect(whys(saying({ milk: 'not-listed' }, more))).toEqual(told)
  })

  test('what its law lets out is told at its tile', () => {
    expect(problems(saying({ rye: 'not-listed' }, READ))).toEqual([
      { at: 'allergens', why: 'beyond-law', code: 'rye', law: 'us-9' },
    ])
    expect(problems(saying({ rye: 'not-listed' }, { ...READ, law: 'eu-14' }))).toEqual([])
  })
})

describe('[LF7] declared free stands on printed words or a letter', () => {
  test('it is asked, of each that no words declare', () => {
    const form = saying({ milk: 'free', egg: 'free' }, { list: 'Free from milk.' })
    expect(problems(form)).toEqual([{ at: 'free', why: 'free-by', codes: ['egg'] }])
    expect(problems({ ...form, freeBy: 'letter' })).toEqual([])
  })

  test('words that print it are enough', () => {
    expect(problems(saying({ milk: 'free' }, { list: 'Free from milk.' }))).toEqual([])
  })
})

describe('[LF8] answers that contradict each other are told at their field', () => {
  test('a kind that is contained of a group that isn’t', () => {
    const form = withKind(saying({}), 'tree-nuts', 'almond', 'contains')
    const denied = {
      ...form,
      draft: { ...form.draft, declarations: { ...form.draft.declarations, 'tree-nuts': 'free' } },
    } as const
    expect(problems({ ...denied, freeBy: 'letter' })).toEqual([
      { at: 'allergens', why: 'kind-contained', code: 'tree-nuts', kind: 'almond' },
    ])
  })

  test('wheat without gluten, unless the statement stands beside it', () => {
    expect(whys(saying({ wheat: 'contains' }))).toEqual(['gluten label'])
    expect(whys(saying({ wheat: 'contains', gluten: 'contains' }))).toEqual([])
    const free = saying({ wheat: 'contains', gluten: 'free' }, { freeBy: 'printed' })
    expect(whys(free)).toEqual(['gluten label'])
    expect(whys({ ...free, draft: { ...free.draft, glutenStatement: true } })).toEqual([])
    const both = saying({ rye: 'contains', gluten: 'free' }, { freeBy: 'printed' })
    expect(whys(both)).toEqual(['gluten label'])
  })

  test('a trait that brings what isn’t there', () => {
    const form = withTraits(saying({ milk: 'not-listed' }, READ), ['dairy'])
    expect(problems(form)).toEqual([
      { at: 'diets', why: 'trait-denied', code: 'milk', trait: 'dairy' },
    ])
    const shell = saying({ molluscs: 'free', shellfish: 'contains' }, { freeBy: 'letter' })
    expect(problems(withTraits(shell, ['shellfish']))).toEqual([])
  })

  test('a stock of which nobody said what it comes from', () => {
    expect(problems(withTraits(saying({}), ['stock']))).toEqual([
      { at: 'diets', why: 'source-unanswered', trait: 'stock' },
    ])
  })

  test('more letters than are kept', () => {
    expect(whys({ ...NEW_FORM, list: 'a'.repeat(4_001) })).toEqual(['words too-long'])
  })

  test('each has its sentence', () => {
    const all = [
      ...problems(saying({ milk: 'not-listed', rye: 'not-listed' }, { list: 'Salt.' })),
      ...problems(saying({ milk: 'not-listed', rye: 'not-listed' }, { law: 'us-9' })),
      ...problems(withTraits(saying({ milk: 'free', wheat: 'contains' }), ['dairy', 'stock'])),
    ]
    expect(new Set(all.map(({ why }) => why)).size).toBe(8)
    for (const one of all) expect(labelFormWords.sayProblem(one)).toMatch(/\w.*[.?]$/)
  })
})

describe('[LF9] words that say otherwise than the answer are shown again, and keep nothing back', () => {
  test('a word that names it beside an answer that denies it', () => {
    const form = saying(
      { milk: 'not-listed', egg: 'free' },
      { ...READ, list: 'Butter. May contain egg.' },
    )
    expect(againstWords(tiles(form)).map(({ code, words }) => [code, ...words])).toEqual([
      ['milk', 'butter'],
      ['egg', 'egg'],
    ])
    expect(whys({ ...form, freeBy: 'letter' })).toEqual([])
  })

  test('not a word that only asks, and not an answer that agrees', () => {
    const form = saying(
      { milk: 'not-listed', egg: 'contains' },
      { ...READ, list: 'Chocolate, egg.' },
    )
    expect(againstWords(tiles(form))).toEqual([])
  })
})
