import { describe, expect, test } from 'vitest'
import { proposalsOf } from '#lib/station/label-words/proposals.ts'
import { readList } from '#lib/station/label-words/read-list.ts'

/** What is proposed of milk. */
const ofMilk = (text: string): string | undefined =>
  proposalsOf(readList(text, 'us-9')).find(({ code }) => code === 'milk')?.proposes

describe('[LW4] what a label warns of may be contained, as far as the warning goes', () => {
  test.each([
    'May contain milk',
    'may also contain traces of soy, egg and milk.',
    'MAY CONTAIN:\nMILK',
    'Could contain milk.',
    'Made in a facility that also processes milk.',
    'Manufactured on shared equipment with soy and milk',
    'Produced in a factory which handles egg, milk.',
    'Packed in an environment where milk may be present',
    'Baked in a kitchen that uses milk.',
    'Not suitable for people with a milk allergy.',
    'Traces of milk',
    'Cannot guarantee milk-free.',
    'We can’t guarantee that it is free from milk.',
    'May not be free from milk.',
  ])('%s', (text) => {
    expect(ofMilk(text)).toBe('may-contain')
  })

  test.each([
    ['a sentence ends it', 'May contain soy. Milk, salt.'],
    ['its bracket ends it', 'chocolate (may contain soy), milk'],
    ['a line that is done ends it', 'MAY CONTAIN FISH\nMILK, SALT'],
    ['an empty line ends it', 'May contain soy,\n\nmilk, salt'],
    ['the next statement ends it', 'May contain soy; contains milk'],
    ['the heading of the list ends it', 'May contain soy INGREDIENTS: milk'],
    ['how it was made is no warning', 'Made with milk in our kitchen'],
    ['where it was baked is no warning', 'Baked in our bakery with milk and eggs'],
    ['that it contains traces is said plainly', 'Contains traces of milk'],
  ])('%s', (_, text) => {
    expect(ofMilk(text)).toBe('contains')
  })

  test('a warning goes on over a line that isn’t done', () => {
    for (const text of ['May contain\nmilk', 'May contain soy,\nMilk', 'may contain soy and\nmilk'])
      expect(ofMilk(text), text).toBe('may-contain')
  })
})

describe('[LW5] only its own name directly behind "free from", or before "-free", is declared', () => {
  test.each([
    'Free from milk',
    'FREE FROM: MILK, EGG',
    'free of egg, soy and milk.',
    'Contains no milk.',
    'Does not contain egg or milk',
    'Without milk',
    'Milk-free',
    'no milk',
    'Free from egg and\nmilk.',
  ])('%s', (text) => {
    expect(ofMilk(text)).toBe('free')
  })

  test.each([
    ['of another word for it', 'Dairy-free'],
    ['of a part of it', 'Free from casein'],
    ['of its sugar', 'Lactose-free'],
    ['behind a word that isn’t known', 'Free from colours, milk'],
    ['of one ingredient', 'spread (milk-free), salt'],
    ['of one ingredient, said before it', 'milk-free spread, salt'],
    ['behind a line that may be done', 'Free from egg,\nmilk'],
    ['of nearly all', '99% milk-free'],
    ['denied', 'This isn’t milk-free'],
    ['hung on the next', 'milk- and egg-free'],
    ['made like it', 'vegan cheese'],
  ])('it is asked: %s', (_, text) => {
    expect(ofMilk(text)).toBe('ask')
  })

  test.each([
    'milk free from hormones',
    'milk, free-range eggs',
    'fat-free milk',
    'lactose-free milk',
    'No nitrates, milk',
    'Free from soy. Milk',
    'Free from soy, contains milk',
  ])('it is contained: %s', (text) => {
    expect(ofMilk(text)).toBe('contains')
  })

  test('wheat-free says nothing of gluten, and gluten-free nothing of wheat', () => {
    const said = (text: string) =>
      proposalsOf(readList(text, 'us-9')).map(({ code, proposes }) => `${code} ${proposes}`)
    expect(said('Wheat-free')).toEqual(['wheat free'])
    expect(said('Gluten-free')).toEqual(['gluten free'])
  })
})

describe('[LW6] what a list says twice is said once, the worst of it', () => {
  test.each([
    ['named and warned of', 'milk. May contain milk.', 'contains'],
    ['asked and warned of', 'chocolate. May contain milk.', 'ask'],
    ['asked and named', 'chocolate, milk', 'contains'],
    ['named and declared free', 'butter. Free from milk.', 'ask'],
    ['warned of and declared free', 'Free from milk. May contain milk.', 'ask'],
    ['asked and declared free', 'chocolate. Free from milk.', 'ask'],
  ])('%s', (_, text, proposes) => {
    expect(ofMilk(text)).toBe(proposes)
  })

  test('each proposal keeps the marks that it comes of', () => {
    const [milk] = proposalsOf(readList('butter, salt, casein', 'us-9'))
    expect(milk?.marks.map(({ word }) => word)).toEqual(['butter', 'casein'])
  })
})
