import { expect, test } from 'vitest'
import { sayBuild } from '#lib/service/tickets.ts'

test('a build is said with a dash that no line ends at, and what is no build as it is', () => {
  expect([sayBuild('2B'), sayBuild('127AA'), sayBuild('2'), sayBuild('hot-well')]).toEqual([
    '2-\u2060B',
    '127-\u2060AA',
    '2',
    'hot-well',
  ])
})
