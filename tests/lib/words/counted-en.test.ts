import { expect, it } from 'vitest'
import { counted, formOf, list } from '#lib/words/counted-en.ts'

it('a list has a word before its last, and no comma there', () => {
  const lists = [[], ['rice'], ['rice', 'pita'], ['rice', 'pita', 'beans']]
  expect(lists.map((names) => list(names, 'and'))).toEqual([
    '',
    'rice',
    'rice and pita',
    'rice, pita and beans',
  ])
  expect(list(['rice', 'pita', 'beans'], 'or')).toBe('rice, pita or beans')
})

it('only one is one', () => {
  expect([0, 1, 2, 1.5, 1200].map((count) => counted(count, 'portion', 'portions'))).toEqual([
    '0 portions',
    '1 portion',
    '2 portions',
    '1.5 portions',
    '1,200 portions',
  ])
  expect([0, 1, 2].map((count) => formOf(count, 'was', 'were'))).toEqual(['were', 'was', 'were'])
})
