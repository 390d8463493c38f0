import { describe, expect, it } from 'vitest'
import { FITS, shelfShown } from '#lib/rooms/shelf/views/shelf-shown.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'

const shelf = (count: number) => Array.from({ length: count }, (_, place) => place)

describe('a full shelf', () => {
  it('[R35] stands closer from the fifth build on, and shows up to nine', () => {
    for (const count of [0, 1, 4, 5, FITS]) {
      const { shown, more, isDense } = shelfShown(shelf(count), false)
      expect([shown.length, more, isDense]).toEqual([count, 0, count > 4])
    }
  })

  it('[R35] of more than nine shows the eight that have stood longest, and counts the rest', () => {
    expect(shelfShown(shelf(10), false)).toEqual({ shown: shelf(8), more: 2, isDense: true })
    expect(shelfShown(shelf(15), false)).toMatchObject({ shown: shelf(8), more: 7 })
  })

  it('[R35] shows all of them where that was asked for', () => {
    expect(shelfShown(shelf(15), true)).toEqual({ shown: shelf(15), more: 0, isDense: true })
  })

  it('[R35] names up to four that look alike, and counts the rest', () => {
    expect(handOverEn.alike(['1A', '2A', '3A', '4A'])).toBe(
      'Looks like 1-\u2060A, 2-\u2060A, 3-\u2060A, 4-\u2060A.',
    )
    expect(handOverEn.alike(['1A', '2A', '3A', '4A', '5A'])).toBe(
      'Looks like 1-\u2060A, 2-\u2060A, 3-\u2060A, + 2.',
    )
  })
})
