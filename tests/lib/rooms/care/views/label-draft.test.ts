import { describe, expect, test } from 'vitest'
import { declaredIn } from '#lib/needs/declared.ts'
import {
  asksStatement,
  contradictions,
  draftOf,
  EMPTY_LABEL,
  type LabelDraft,
  labelFrom,
  problemOf,
  sourcedTraits,
  traitsBySources,
  unansweredSources,
  withNoTraits,
  withSource,
  withSources,
  withTrait,
  withWord,
} from '#lib/rooms/care/views/label-draft.ts'
import { SOURCED, SOURCES_OF } from '#lib/station/codes/diets.ts'
import { sayLabelProblem } from '#lib/words/label-problems-en.ts'
import { ingredient } from '#tests/support/kitchens.ts'
import { demoStation } from '#tests/support/service.ts'

const READ_ON = '2026-11-28'
const read = (draft: LabelDraft) => labelFrom(demoStation, draft, READ_ON)
const problem = (draft: LabelDraft) => problemOf(demoStation, draft)
const said = (words: Readonly<Record<string, 'contains' | 'may-contain' | 'free'>>): LabelDraft =>
  Object.entries(words).reduce((so, [code, word]) => withWord(so, code, word), EMPTY_LABEL)
const ticked = (...traits: readonly (typeof SOURCED)[number][]): LabelDraft =>
  traits.reduce((so, trait) => withTrait(so, trait, true), EMPTY_LABEL)

describe('gluten on the label form', () => {
  test('[N38] is asked for beside a grain that is contained, said or not', () => {
    for (const words of [{}, { gluten: 'free' }, { gluten: 'may-contain' }] as const) {
      expect(problem(said({ wheat: 'contains', ...words }))).toEqual({ why: 'wheat-is-gluten' })
      expect(problem(said({ barley: 'contains', ...words }))).toEqual({
        why: 'always-gluten',
        grain: 'barley',
      })
    }
    expect(problem(said({ wheat: 'contains', gluten: 'contains' }))).toBeNull()
    expect(problem(said({ wheat: 'may-contain', gluten: 'free' }))).toBeNull()
    expect(problem(EMPTY_LABEL)).toBeNull()
  })

  test('[N38] that was free before wheat was set to contained is asked, never kept', () => {
    const before = draftOf(demoStation, ingredient('flour', { wheat: 'free', gluten: 'free' }))
    expect(problem(before)).toBeNull()
    expect(problem(withWord(before, 'wheat', 'contains'))).toEqual({ why: 'wheat-is-gluten' })
  })

  test('[N38] is free beside wheat by the statement, which is asked where it can stand', () => {
    const wheat = said({ wheat: 'contains', gluten: 'free' })
    const stated = { ...wheat, glutenStatement: true }
    expect(asksStatement(wheat)).toBe(true)
    expect(problem(stated)).toBeNull()
    expect(read(stated)).toMatchObject({ glutenStatement: true, readOn: READ_ON })
    expect(read(wheat)).not.toHaveProperty('glutenStatement')
    expect(declaredIn(demoStation, { ...ingredient('flour'), ...read(stated) }, 'gluten')).toBe(
      'free',
    )
    expect(problem(withWord(stated, 'gluten', 'contains'))).toEqual({ why: 'statement-alone' })
    for (const other of [
      withWord(stated, 'rye', 'contains'),
      withWord(stated, 'wheat', 'may-contain'),
    ]) {
      expect(asksStatement(other)).toBe(false)
      expect(read(other)).not.toHaveProperty('glutenStatement')
    }
  })

  test('[N38] the statement of the label before is never that of the one that is read', () => {
    const free = { wheat: 'contains', gluten: 'free' } as const
    const before = draftOf(demoStation, ingredient('flour', free, { glutenStatement: true }))
    expect(before.glutenStatement).toBe(false)
    expect(problem(before)).toEqual({ why: 'wheat-is-gluten' })
  })
})

describe('what a trait comes from on the label form', () => {
  test('[N39] is asked of each that is ticked, until it is named or said not to be there', () => {
    const both = ticked('gelatin', 'animal-rennet')
    expect(unansweredSources(both)).toEqual(['gelatin', 'animal-rennet'])
    const named = withSource(both, 'gelatin', 'beef', true)
    expect(unansweredSources(named)).toEqual(['animal-rennet'])
    const answered = withSources(named, 'animal-rennet', [])
    expect(unansweredSources(answered)).toEqual([])
    expect(read(answered).sources).toEqual({ gelatin: ['beef'], 'animal-rennet': [] })
    expect(unansweredSources(withSource(named, 'gelatin', 'beef', false))).toContain('gelatin')
    expect(unansweredSources(withSources(answered, 'animal-rennet', null))).toEqual([
      'animal-rennet',
    ])
    expect(unansweredSources(withTrait(EMPTY_LABEL, 'honey', true))).toEqual([])
  })

  test('[N39] goes with its trait, and “not said” gives way to a source', () => {
    const beef = withSource(ticked('gelatin', 'stock'), 'gelatin', 'beef', true)
    const without = withTrait(beef, 'gelatin', false)
    expect(without.sources).toEqual({})
    expect(unansweredSources(withTrait(without, 'gelatin', true))).toContain('gelatin')
    expect(withNoTraits(beef, true).sources).toEqual({})
    expect(read(withNoTraits(beef, true))).not.toHaveProperty('sources')
    expect(withSource(withSources(beef, 'gelatin', []), 'gelatin', 'pork', true).sources).toEqual({
      gelatin: ['pork'],
    })
  })

  test('[N39] is as on the label before, and asked of a document that didn’t know it', () => {
    const made = { traits: ['gelatin' as const] }
    const old = draftOf(demoStation, ingredient('jelly', {}, made))
    expect(sourcedTraits(old)).toEqual(['gelatin'])
    expect(unansweredSources(old)).toEqual(['gelatin'])
    const named = ingredient('jelly', {}, { ...made, sources: { gelatin: ['pork'] } })
    expect(unansweredSources(draftOf(demoStation, named))).toEqual([])
  })

  test('[N39] of fish is in the food, and contradicts that it is free of it', () => {
    const fishStock = withSource(ticked('stock'), 'stock', 'fish', true)
    expect(traitsBySources(fishStock)).toEqual(['fish'])
    expect(read(fishStock).traits).toEqual(['fish', 'stock'])
    expect(problem(fishStock)).toBeNull()
    for (const word of ['free', 'may-contain'] as const) {
      const denied = withWord(fishStock, 'fish', word)
      expect(problem(denied)).toMatchObject({ why: 'source-not-contained', code: 'fish' })
      expect(contradictions(demoStation, denied)).toEqual([])
    }
  })
})

test('[N38] [N39] each problem is said in words that say what to do', () => {
  const sentences = [
    problem(said({ wheat: 'contains' })),
    problem(said({ rye: 'contains' })),
    problem(withTrait(EMPTY_LABEL, 'gluten-grain', true)),
    problem({ ...said({ wheat: 'contains', gluten: 'contains' }), glutenStatement: true }),
    ...SOURCED.flatMap((trait) => [
      { why: 'source-of-nothing', trait } as const,
      ...SOURCES_OF[trait].map(
        (source) => ({ why: 'source-not-contained', trait, source, code: 'fish' }) as const,
      ),
      { why: 'no-such-source', trait, source: 'other-animal' } as const,
    ]),
  ].map((one) => (one === null ? 'none' : sayLabelProblem(one)))
  expect(new Set(sentences).size).toBe(sentences.length)
  for (const one of sentences) expect(one).toMatch(/: (say|tick|read) /)
})
