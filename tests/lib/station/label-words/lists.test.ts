import { describe, expect, test } from 'vitest'
import type { IngredientList } from '#fixtures/labels/ingredient-list.ts'
import { NAMES_NOTHING } from '#fixtures/labels/names-nothing.ts'
import { NAMES_SOME } from '#fixtures/labels/names-some.ts'
import { WITH_STATEMENTS } from '#fixtures/labels/with-statements.ts'
import { proposalsOf } from '#lib/station/label-words/proposals.ts'
import { readList } from '#lib/station/label-words/read-list.ts'

const says = ({ text, set, own = [] }: IngredientList): string =>
  proposalsOf(readList(text, set ?? 'us-9', own))
    .map(({ code, proposes }) => `${code} ${proposes}`)
    .toSorted()
    .join(', ')

describe('[LW1] [LW2] an invented list proposes what its words name, and no more', () => {
  test.each(NAMES_SOME.map((list) => [list.name, list] as const))('%s', (_, list) => {
    expect(says(list)).toBe(list.says)
  })
})

describe('[LW3] an invented list of traps proposes nothing', () => {
  test.each(NAMES_NOTHING.map((list) => [list.name, list] as const))('%s', (_, list) => {
    expect(list.says).toBe('')
    expect(readList(list.text, 'us-9')).toEqual([])
  })
})

describe('[LW4] [LW5] [LW6] an invented list says by its statements what is warned of and free', () => {
  test.each(WITH_STATEMENTS.map((list) => [list.name, list] as const))('%s', (_, list) => {
    expect(says(list)).toBe(list.says)
  })
})

test('there are 60 lists and more, each of a name of its own', () => {
  const all = [...NAMES_NOTHING, ...NAMES_SOME, ...WITH_STATEMENTS].map(({ name }) => name)
  expect(new Set(all).size).toBe(all.length)
  expect(all.length).toBeGreaterThanOrEqual(60)
})
