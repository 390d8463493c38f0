import { describe, expect, test } from 'vitest'
import { declaredIn } from '#lib/needs/declared.ts'
import { EMPTY_LABEL, withWord } from '#lib/rooms/care/views/label-draft.ts'
import {
  groundedLabel,
  groundsProblems,
  NO_GROUNDS,
  restNotListed,
  withRestNotListed,
} from '#lib/rooms/care/views/label-grounds.ts'
import { labelledAs } from '#lib/station/relabelled.ts'
import { demoStation } from '#tests/support/service.ts'

const [first] = demoStation.ingredients
if (!first) throw new Error('the demo station has no ingredient')
const READ = { ...NO_GROUNDS, law: 'us-9', hasReadAll: true } as const

describe('what a label that is read in a service stands on', () => {
  test('[P73] the rest of what its law names is not listed, never declared free, and no word is changed by it', () => {
    const some = withWord(withWord(EMPTY_LABEL, 'soy', 'contains'), 'milk', 'may-contain')
    const draft = withRestNotListed(demoStation, withWord(some, 'almond', 'contains'), READ)
    expect(draft.declarations).toMatchObject({
      soy: 'contains',
      milk: 'may-contain',
      egg: 'not-listed',
    })
    expect(Object.values(draft.declarations)).not.toContain('free')
    for (const code of ['tree-nuts', 'gluten', 'molluscs', 'barley', 'oats'])
      expect(draft.declarations[code], code).toBeUndefined()
    const label = groundedLabel(demoStation, draft, READ, '2026-11-25')
    expect(label).toMatchObject({ law: 'us-9', readOn: '2026-11-25' })
    expect(label).not.toHaveProperty('freeBy')
    expect(declaredIn(demoStation, labelledAs(first, label), 'egg')).toBe('not-listed')
  })

  test('[P73] nothing is not listed while nobody said which law its pack is under, or that all was read', () => {
    expect(restNotListed(demoStation, EMPTY_LABEL, NO_GROUNDS)).toEqual([])
    expect(withRestNotListed(demoStation, EMPTY_LABEL, NO_GROUNDS)).toEqual(EMPTY_LABEL)
    const draft = withWord(EMPTY_LABEL, 'egg', 'not-listed')
    expect(groundsProblems(demoStation, draft, NO_GROUNDS)).toEqual([
      { why: 'no-law' },
      { why: 'not-read-whole' },
    ])
    expect(groundsProblems(demoStation, draft, READ)).toEqual([])
    expect(groundsProblems(demoStation, withWord(draft, 'oats', 'not-listed'), READ)).toEqual([
      { why: 'beyond-law', codes: ['oats'] },
    ])
  })

  test('[P73] declared free stands on words of the package or the maker’s letter, which the label keeps', () => {
    const draft = withWord(EMPTY_LABEL, 'milk', 'free')
    expect(groundsProblems(demoStation, draft, READ)).toEqual([{ why: 'free-by', codes: ['milk'] }])
    const grounds = { ...READ, freeBy: 'letter' } as const
    expect(groundsProblems(demoStation, draft, grounds)).toEqual([])
    expect(groundedLabel(demoStation, draft, grounds, '2026-11-25').freeBy).toBe('letter')
    const none = groundedLabel(demoStation, EMPTY_LABEL, grounds, '2026-11-25')
    expect(none).not.toHaveProperty('freeBy')
  })
})
