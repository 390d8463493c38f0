import { describe, expect, test } from 'vitest'
import { menuEn as words } from '#lib/editor/words/menu-en.ts'

describe('what a label names, beside its ingredient', () => {
  test.each([
    [['milk'], ['egg', 'soy'], 'contains milk; may contain egg and soy'],
    [['milk'], [], 'contains milk'],
    [[], ['soy'], 'may contain soy'],
    [[], [], 'names none'],
  ])('what it contains ends before what it may contain: %j %j', (contains, mayContain, said) => {
    expect(words.pan.named(contains, mayContain)).toBe(said)
  })
})
