import { expect, it } from 'vitest'
import { tastingEn } from '#lib/words/tasting/tasting-en.ts'

const { over } = tastingEn

it.each([
  [[1], 'can 1'],
  [[2, 1], 'can 1, 2'],
  [[1, 3, 4, 6], 'can 1, 3, 4, 6'],
  [[1, 2, 3, 5, 6], 'can 1–3, 5, 6'],
  [[1, 2, 3, 4, 5, 6], 'can 1–6'],
  [[9, 10, 11, 4], 'can 4, 9–11'],
])('[TB4] over a pan %j are each there by number, never counted', (numbers, said) => {
  expect(over.can(numbers).replace('\u2060', '')).toBe(said)
})

it('[TB4] who can’t has "not" before the numbers, who is to be asked "ask"', () => {
  expect([over.cannot([1, 4]), over.unknown([2])]).toEqual(['not 1, 4', 'ask 2'])
})
