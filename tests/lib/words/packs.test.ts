import { describe, expect, it } from 'vitest'
import { sayPacks } from '#lib/words/recipe/packs-en.ts'

describe('packs as they are said', () => {
  it('[LS15] so many cases or packs of what one holds: two numbers never stand side by side', () => {
    expect(sayPacks(1, '4 x 5 lb')).toBe('1 case of 4 × 5 lb')
    expect(sayPacks(2, '6 x #10 cans')).toBe('2 cases of 6 × #10 cans')
    expect(sayPacks(2, '5 lb')).toBe('2 packs of 5 lb')
    expect(sayPacks(2, '1 case of 12 each')).toBe('2 cases of 12 each')
    expect(sayPacks(1, '15 dozen')).toBe('1 pack of 15 dozen')
    expect(sayPacks(3, '10×12 pieces')).toBe('3 cases of 10 × 12 pieces')
    for (const typed of ['4 x 5 lb', '5 lb', 'a pail', '2 boxes'])
      expect(sayPacks(12, typed)).toMatch(/^12 (cases|packs) of /)
  })
})
