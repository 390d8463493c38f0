import { expect, test } from 'vitest'
import { sayBuild } from '#lib/service/tickets.ts'

test('a build is said with a dash, and what is no build as it is', () => {
  expect([sayBuild('2B'), sayBuild('127AA'), sayBuild('2'), sayBuild('hot-well')]).toEqual([
    '2-B',
    '127-AA',
    '2',
    'hot-well',
  ])
})
