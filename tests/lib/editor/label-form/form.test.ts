import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  answerOf,
  formOf,
  type LabelForm,
  NEW_FORM,
  withAnswer,
  withKind,
  withList,
  withPlain,
  writtenLabel,
} from '#lib/editor/label-form/form.ts'
import { stillOpen } from '#lib/editor/label-form/problems.ts'
import {
  marksOf,
  type Tile,
  tilesOf,
  toConfirm,
  withConfirmed,
  withRest,
  withRestUnsaid,
} from '#lib/editor/label-form/tiles.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, askableAllergens } from '#lib/station/codes/askable.ts'
import { labelSchema } from '#lib/station/shapes/label-schema.ts'

const US: Allergens = { allergenSet: 'us-9', ownAllergens: ['kiwi'] }
const EU: Allergens = { allergenSet: 'eu-14', ownAllergens: [] }

const read = (list: string, law: AllergenSetId | null = null): LabelForm => ({
  ...withList(NEW_FORM, list),
  law,
})
const tiles = (form: LabelForm, allergens = US): readonly Tile[] =>
  tilesOf(allergens, form, marksOf(allergens, form.list))
const confirmed = (form: LabelForm, allergens = US): LabelForm =>
  withConfirmed(form, tiles(form, allergens), marksOf(allergens, form.list))
const rested = (form: LabelForm, allergens = US): LabelForm =>
  withRest(form, allergens, tiles(form, allergens), marksOf(allergens, form.list))
const tile = (form: LabelForm, code: string, allergens = US): Tile => {
  const found = tiles(form, allergens).find((one) => one.code === code)
  if (!found) throw new Error(`no tile ${code}`)
  return found
}

describe('[LF1] nothing is answered by default', () => {
  test('each allergen that is asked has a tile without an answer', () => {
    for (const allergens of [US, EU]) {
      const all = tiles(NEW_FORM, allergens)
      expect(all.map(({ code }) => code)).toEqual(askableAllergens(allergens))
      expect(all.filter(({ answer }) => answer !== null)).toEqual([])
      expect(stillOpen(all)).toBe(all.length)
    }
  })

  test('words that are typed answer nothing, whatever they name', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('milk', 'butter', 'May contain soy.', 'Free from egg.', 'water')),
        (words) => {
          const form = read(words.join(', '), 'us-9')
          expect(form.draft).toEqual(NEW_FORM.draft)
          expect(stillOpen(tiles(form))).toBe(askableAllergens(US).length)
        },
      ),
    )
  })

  test('no answer is written down as nothing, and "not said" as unknown', () => {
    expect(writtenLabel(US, NEW_FORM, '2026-11-25').declarations).toEqual({})
    const form = withAnswer(NEW_FORM, US, 'milk', 'unknown')
    expect(writtenLabel(US, form, '2026-11-25').declarations).toEqual({ milk: 'unknown' })
  })
})

describe('[LF2] one tap prints a word, and the same again takes it away', () => {
  test('an answer', () => {
    const once = withAnswer(NEW_FORM, US, 'milk', 'free')
    expect(answerOf(once, 'milk')).toBe('free')
    expect(answerOf(withAnswer(once, US, 'milk', 'contains'), 'milk')).toBe('contains')
    expect(withAnswer(once, US, 'milk', 'free')).toEqual(NEW_FORM)
  })

  test('a kind that is contained makes its group contained, and goes with it', () => {
    const almond = withKind(NEW_FORM, 'tree-nuts', 'almond', 'contains')
    expect(answerOf(almond, 'tree-nuts')).toBe('contains')
    expect(tile(almond, 'tree-nuts').contained).toEqual(['almond'])
    const free = withAnswer(almond, US, 'tree-nuts', 'free')
    expect(answerOf(free, 'almond')).toBe(null)
    const walnut = withKind(almond, 'tree-nuts', 'walnut', 'not-listed')
    expect(answerOf(walnut, 'tree-nuts')).toBe('contains')
  })
})

describe('[LF3] one tap confirms what the words propose, and never what is only to be asked', () => {
  const form = read('Chocolate, almonds, wheat flour. Free from egg. May contain soy.')

  test('as proposed, with the kinds that are named', () => {
    const after = confirmed(form)
    expect(after.draft.declarations).toEqual({
      egg: 'free',
      'tree-nuts': 'contains',
      almond: 'contains',
      wheat: 'contains',
      gluten: 'contains',
      soy: 'may-contain',
    })
    expect(toConfirm(tiles(after))).toEqual([])
    expect(tile(after, 'milk')).toMatchObject({ answer: null, proposes: 'ask' })
  })

  test('an answer that stands is left as it is', () => {
    const said = withAnswer(form, US, 'soy', 'contains')
    expect(answerOf(confirmed(said), 'soy')).toBe('contains')
  })

  test('a kind that is free frees no group, and one that is contained makes it asked', () => {
    expect(tile(read('Almond-free.'), 'tree-nuts').proposes).toBe(null)
    expect(tile(read('Almonds. Free from tree nuts.'), 'tree-nuts').proposes).toBe('ask')
    expect(tile(read('Walnuts. May contain tree nuts.'), 'tree-nuts').proposes).toBe('contains')
  })
})

describe('[LF4] one tap answers the rest: not listed where the pack’s law names it, else not said', () => {
  test('under US law in a station of the nine', () => {
    const after = rested(confirmed(read('Wheat flour, salt.', 'us-9')))
    expect(after.hasReadAll).toBe(true)
    const said = Object.entries(after.draft.declarations)
    const not = (word: string) => said.flatMap(([code, one]) => (one === word ? [code] : []))
    expect(not('not-listed').toSorted()).toEqual(
      ['milk', 'egg', 'fish', 'shellfish', 'tree-nuts', 'peanut', 'soy', 'sesame'].toSorted(),
    )
    expect(not('unknown').toSorted()).toEqual(['barley', 'kiwi', 'molluscs', 'oats', 'rye'])
    expect(stillOpen(tiles(after))).toBe(0)
  })

  test('under EU law in a station of the nine: a pine nut is no nut there, molluscs are named', () => {
    const after = rested(read('Salt.', 'eu-14'))
    expect(answerOf(after, 'tree-nuts')).toBe('unknown')
    expect(answerOf(after, 'molluscs')).toBe('not-listed')
    expect(answerOf(after, 'rye')).toBe('not-listed')
    expect(answerOf(after, 'gluten')).toBe('unknown')
  })

  test('under US law in a station of the fourteen', () => {
    const after = rested(read('Salt.', 'us-9'), EU)
    expect(answerOf(after, 'milk')).toBe('not-listed')
    expect(answerOf(after, 'tree-nuts')).toBe('not-listed')
    for (const code of ['gluten-cereals', 'celery', 'mustard', 'sulphites', 'lupin', 'molluscs'])
      expect(answerOf(after, code), code).toBe('unknown')
  })

  test('without a law nothing is called not listed', () => {
    const after = rested(read('Salt.'))
    expect(Object.values(after.draft.declarations)).not.toContain('not-listed')
  })

  test('what a word is about is never of the rest, until who reads answers it', () => {
    const after = rested(read('Chocolate, almonds.', 'us-9'))
    expect(answerOf(after, 'milk')).toBe(null)
    expect(answerOf(after, 'tree-nuts')).toBe(null)
    expect(answerOf(after, 'egg')).toBe('not-listed')
    expect(stillOpen(tiles(after))).toBe(2)
  })

  test('other kinds of a group that is named by its kinds aren’t listed either', () => {
    const after = rested(confirmed(read('Almonds, salt.', 'us-9')))
    expect(answerOf(after, 'almond')).toBe('contains')
    expect(answerOf(after, 'walnut')).toBe('not-listed')
    const unnamed = rested(confirmed(read('Tree nuts, salt.', 'us-9')))
    expect(answerOf(unnamed, 'walnut')).toBe(null)
  })

  test('what is left is not said by one tap more', () => {
    const form = rested(read('Chocolate.', 'us-9'))
    const after = withRestUnsaid(form, tiles(form))
    expect(answerOf(after, 'milk')).toBe('unknown')
    expect(stillOpen(tiles(after))).toBe(0)
  })

  test('no such tap changes an answer that stands', () => {
    const word = fc.constantFrom('contains', 'may-contain', 'free', 'not-listed', 'unknown')
    const answers = fc.dictionary(fc.constantFrom(...askableAllergens(US)), word)
    const list = fc.constantFrom('', 'milk, almonds', 'chocolate', 'Free from egg. Wheat.')
    fc.assert(
      fc.property(answers, list, fc.constantFrom('us-9', 'eu-14', null), (given, text, law) => {
        const before = read(text, law)
        const form = { ...before, draft: { ...before.draft, declarations: given } }
        for (const after of [confirmed(form), rested(form), withRestUnsaid(form, tiles(form))])
          expect(after.draft.declarations).toMatchObject(given)
      }),
    )
  })
})

describe('[LF5] a label is written down as it was read, and read again from the start', () => {
  test('with its law, its list and its picture', () => {
    const form = { ...rested(confirmed(read(' Wheat flour. ', 'us-9'))), photo: 'a'.repeat(64) }
    const label = writtenLabel(US, form, '2026-11-25')
    expect(labelSchema.parse(label)).toEqual(label)
    expect(label).toMatchObject({ law: 'us-9', list: 'Wheat flour.', readOn: '2026-11-25' })
    expect(label).not.toHaveProperty('plain')
    expect(writtenLabel(US, withPlain(NEW_FORM, true), '2026-11-25')).toMatchObject({ plain: true })
  })

  test('other words are words that nobody has read to the end', () => {
    const form = rested(read('Salt.', 'us-9'))
    expect(form.hasReadAll).toBe(true)
    expect(withList(form, 'Salt, butter.').hasReadAll).toBe(false)
    expect(withList(form, 'Salt.')).toBe(form)
  })

  test('[ED18] says what declares it free, and nothing where nothing is', () => {
    const form = rested(read('Salt.', 'us-9'))
    const free = withAnswer(form, US, 'milk', 'free')
    expect(writtenLabel(US, { ...free, freeBy: 'letter' }, '2026-11-25').freeBy).toBe('letter')
    expect(writtenLabel(US, free, '2026-11-25').freeBy).toBe('printed')
    const none = writtenLabel(US, { ...form, freeBy: 'letter' }, '2026-11-25')
    expect(none).not.toHaveProperty('freeBy')
  })

  test('from what was written down before no claim of who read it is taken over', () => {
    const form = { ...rested(confirmed(read('Wheat, salt.', 'us-9'))), freeBy: 'letter' as const }
    const again = formOf(US, writtenLabel(US, form, '2026-11-25'))
    expect(again.draft.declarations).toEqual(form.draft.declarations)
    expect(again).toMatchObject({
      hasReadAll: false,
      freeBy: null,
      law: 'us-9',
      list: 'Wheat, salt.',
    })
    expect(again.draft.glutenStatement).toBe(false)
  })

  test('an allergen that the station doesn’t know any more isn’t taken over', () => {
    const label = {
      ...writtenLabel(US, NEW_FORM, '2026-11-25'),
      declarations: { lupin: 'free' as const },
    }
    expect(formOf(US, label).draft.declarations).toEqual({})
  })
})
