import { expect, it } from 'vitest'
import type { Change } from '#lib/editor/change.ts'
import { sayClash } from '#lib/editor/words/clash-en.ts'

const changed = (field: string, theirs: unknown, mine: unknown) =>
  ({
    what: 'changed',
    entity: 'item',
    id: 'bowl',
    name: 'Bowl',
    field,
    from: theirs,
    to: mine,
  }) as Change

it.each([
  [changed('priceCents', 750, 800), 'Price: yours 8.00, theirs 7.50'],
  [changed('name', 'Garden bowl', 'Bowl'), 'Name: yours Bowl, theirs Garden bowl'],
  [changed('required', null, true), 'Required: yours yes, theirs not said'],
  [changed('ingredients', ['rice', 'salt'], []), 'Ingredients: yours none, theirs rice; salt'],
  [
    changed('doors', { open: '11:00', close: '13:00' }, { open: '11:30', close: '13:00' }),
    'Doors: yours opening 11:30, closing 13:00, theirs opening 11:00, closing 13:00',
  ],
])('[ED10] %o is said with both values', (change, said) => {
  expect(sayClash(change)).toBe(said)
})

it('[ED10] a long value is cut, and a row that one of both took away is said', () => {
  const long = sayClash(changed('name', 'x'.repeat(200), 'y'))
  expect(long).toBe(`Name: yours y, theirs ${'x'.repeat(119)}…`)
  const of = { entity: 'item', id: 'bowl', name: 'Bowl' } as const
  expect(sayClash({ what: 'added', ...of })).toContain('Theirs: taken away')
  expect(sayClash({ what: 'removed', ...of })).toContain('Yours: taken away')
})
