import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Draft } from '#lib/editor/draft.ts'
import { newId, proposedShort, slug } from '#lib/editor/ids.ts'

const empty: Draft = { station: 'a', rows: {} }

describe('an id', () => {
  test.each([
    ['Pickled onions', 'pickled-onions'],
    ['Jalapeño & crème fraîche', 'jalapeno-creme-fraiche'],
    ['Grüße vom Grill', 'grusse-vom-grill'],
    ['Борщ', 'borshch'],
    ['Φέτα', 'feta'],
    ['Chef’s choice', 'chefs-choice'],
    ['白米飯', ''],
  ])('[ED3] of %s is %s', (name, id) => {
    expect(slug(name)).toBe(id)
  })

  test('[ED3] is numbered where there is one, or nothing to say it by', () => {
    const draft: Draft = { station: 'a', rows: { 'component:rice': {}, 'pan:rice-2': {} } }
    expect(newId(draft, 'item', 'Rice')).toBe('rice-3')
    expect(newId(draft, 'ingredient', 'Rice')).toBe('rice')
    expect(newId(empty, 'component', '白米飯')).toBe('component')
    expect(newId(empty, 'component', '7 grains')).toBe('component-7-grains')
    expect(newId(empty, 'item', 'constructor')).toBe('item-constructor')
  })

  test('[ED3] is one that the schema takes, whatever the name, and never one that is taken', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), (name) => {
        const id = newId(empty, 'component', name)
        expect(id).toMatch(/^(?!constructor$)[a-z][a-z0-9-]{0,39}$/)
        const rows = { [`component:${id}`]: {} }
        const next = newId({ station: 'a', rows }, 'pan', name)
        expect(next).toMatch(/^(?!constructor$)[a-z][a-z0-9-]{0,39}$/)
        expect(next).not.toBe(id)
      }),
    )
  })
})

describe('a short name', () => {
  test.each([
    ['Pita', ['Pita']],
    ['Brown rice', ['Brown', 'rice']],
    ['Pickled red onions', ['Pickled', 'red onions']],
    ['Roast peppers and onions', ['Roast peppe.', 'and onions']],
    ['Worcestershire', ['Worcestersh.']],
  ])('[ED3] of %s is proposed', (name, short) => {
    expect(proposedShort(name)).toEqual(short)
  })

  test('[ED3] has one or two lines of 1 to 12 signs, of any name that says something', () => {
    fc.assert(
      fc.property(
        fc
          .string({ unit: 'grapheme', minLength: 1, maxLength: 200 })
          .filter((name) => name.trim() !== ''),
        (name) => {
          const short = proposedShort(name)
          expect([1, 2]).toContain(short.length)
          for (const line of short) {
            expect(line.length).toBeGreaterThan(0)
            expect(line.length).toBeLessThanOrEqual(12)
          }
        },
      ),
    )
  })
})
