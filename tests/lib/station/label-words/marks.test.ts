import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { NAMES_SOME } from '#fixtures/labels/names-some.ts'
import { WITH_STATEMENTS } from '#fixtures/labels/with-statements.ts'
import { ALLERGEN_SET_IDS } from '#lib/station/codes/allergen-sets.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { ALL_WORDS } from '#lib/station/label-words/all-words.ts'
import { readList } from '#lib/station/label-words/read-list.ts'
import { NAMING, NAMING_SOMETIMES } from '#tests/lib/station/label-words/reading-guides.ts'

const NEUTRAL = ['water', 'salt', 'sugar', 'Garlic', 'tomato paste', 'rosemary extract', 'E 415']
const neutral = fc.array(fc.constantFrom(...NEUTRAL), { minLength: 1, maxLength: 5 })
const set = fc.constantFrom(...ALLERGEN_SET_IDS)
const list = fc.constantFrom(...[...NAMES_SOME, ...WITH_STATEMENTS].map(({ text }) => text))

describe('[LW7] what stands around a word changes nothing', () => {
  test('a list without such a word has no mark', () => {
    fc.assert(
      fc.property(neutral, fc.constantFrom(', ', '\n', '; ', ' / '), set, (words, by, which) => {
        expect(readList(words.join(by), which)).toEqual([])
      }),
    )
  })

  test('signs and letters without words have no mark, and nothing makes it fail', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), set, (text, which) => {
        for (const { from, to, word } of readList(text, which))
          expect(text.slice(from, to)).toBe(word)
      }),
    )
  })

  test('other ingredients before and behind a list only move its marks', () => {
    fc.assert(
      fc.property(list, neutral, neutral, set, (text, before, behind, which) => {
        const head = `${before.join(', ')}. `
        const moved = readList(`${head}${text}\n\n${behind.join(', ')}.`, which)
        const alone = readList(text, which)
        expect(
          moved.map((one) => ({ ...one, from: one.from - head.length, to: one.to - head.length })),
        ).toEqual(alone)
      }),
    )
  })

  test('a word among others is marked as it is alone', () => {
    const word = fc.constantFrom(...[...NAMING, ...NAMING_SOMETIMES].map((one) => one.word))
    fc.assert(
      fc.property(word, neutral, neutral, (one, before, behind) => {
        const says = (text: string) =>
          readList(text, 'us-9').map((mark) => `${mark.word} ${mark.code} ${mark.proposes}`)
        expect(says([...before, one, ...behind].join(', '))).toEqual(says(one))
      }),
    )
  })
})

describe('[LW8] a mark only proposes', () => {
  test('it has a place, the word as it is printed, a code of the set, and its source', () => {
    for (const which of ALLERGEN_SET_IDS) {
      const known = declarable({ allergenSet: which, ownAllergens: ['kiwi'] })
      const marks = [...NAMES_SOME, ...WITH_STATEMENTS].flatMap(({ text }) =>
        readList(`${text}, kiwi`, which, ['kiwi']),
      )
      expect(marks.length).toBeGreaterThan(100)
      for (const mark of marks) {
        expect(Object.keys(mark).toSorted()).toEqual(
          ['code', 'from', 'proposes', 'source', 'to', 'word'].toSorted(),
        )
        expect(known.has(mark.code)).toBe(true)
        expect(['contains', 'may-contain', 'free', 'ask']).toContain(mark.proposes)
        expect(mark.source).not.toBe('')
      }
    }
  })

  test('it never proposes that an allergen isn’t listed, nor that it isn’t said', () => {
    const all = [...NAMES_SOME, ...WITH_STATEMENTS].flatMap(({ text }) => readList(text, 'us-9'))
    expect(all.filter(({ proposes }) => /listed|unknown/.test(proposes))).toEqual([])
  })

  test('every row has words, codes that some set or a house knows, and a source', () => {
    const known = new Set(
      ALLERGEN_SET_IDS.flatMap((allergenSet) => [...declarable({ allergenSet, ownAllergens: [] })]),
    )
    for (const { codes, words, source } of ALL_WORDS) {
      expect(words.length).toBeGreaterThan(0)
      expect(source).not.toBe('')
      expect(codes.filter((code) => !known.has(code))).toEqual([])
      for (const word of words) expect(word).toMatch(/^[a-z]+( [a-z]+)*$/)
    }
  })
})
