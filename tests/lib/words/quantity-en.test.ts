import { describe, expect, it } from 'vitest'
import { quantityEn } from '#lib/words/quantity-en.ts'

describe('quantities in English', () => {
  it('[Q8] a pan is said by size and depth', () => {
    expect(quantityEn.pan('third', 4)).toBe('third pan, 4 in deep')
    expect(quantityEn.pan('full', 2.5)).toBe('full pan, 2 1/2 in deep')
    expect(quantityEn.panSize('ninth')).toBe('ninth pan')
  })

  it('[Q17] a ladle is said in fluid ounces', () => {
    expect(quantityEn.ladle(2)).toBe('2 fl oz ladle')
  })

  it('[Q5] a colour never stands for a scoop without its number', () => {
    expect(quantityEn.scoop(40, 'purple')).toBe('#40 purple')
    expect(quantityEn.scoop(14, null)).toBe('#14')
    expect(quantityEn.scoopColour('purple')).toBe('purple')
  })
})
