import { expect, it } from 'vitest'
import { savedForName } from '#lib/words/service-en.ts'

const name = (id: string): string => (id === 'harbor-tuna' ? 'Harbor tuna bowl' : id)

it('[U7] says for whom portions are kept', () => {
  expect(
    ['harbor-tuna', 'kept-apart', 'vegetarian', 'milk'].map((id) => savedForName(id, name)),
  ).toEqual([
    'Harbor tuna bowl',
    'keep-apart orders',
    'vegetarian orders',
    'guests who keep from milk',
  ])
})
