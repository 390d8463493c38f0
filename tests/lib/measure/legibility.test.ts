import { describe, expect, it } from 'vitest'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'
import { arcMinutesOf, capHeightMm, fontPx } from '#tests/support/legible-sizes.ts'

const pxPerMm = ([width, height, inches]: readonly [number, number, number]) =>
  Math.hypot(width, height) / (inches * 25.4)

describe('legibility', () => {
  it('[E1] font px is 2·D·tan(a/2) ÷ 0.668 × px per mm: a table worked out by hand for four screens', () => {
    for (const [screen, at1m, at1m5] of [
      [
        [1280, 800, 10.1],
        [41, 51, 56],
        [61, 77, 85],
      ],
      [
        [1280, 800, 11],
        [38, 47, 52],
        [56, 71, 78],
      ],
      [
        [1536, 864, 15.6],
        [31, 39, 43],
        [46, 58, 64],
      ],
      [
        [1920, 1080, 24],
        [25, 31, 35],
        [38, 47, 52],
      ],
    ] as const)
      for (const [index, arcMinutes] of [16, 20, 22].entries()) {
        const density = pxPerMm(screen)
        expect(Math.round(fontPx({ distanceM: 1, arcMinutes }, density))).toBe(at1m[index])
        expect(Math.round(fontPx({ distanceM: 1.5, arcMinutes }, density))).toBe(at1m5[index])
      }
  })

  it('[E1] 20 minutes of arc at one metre are a capital of 5.82 mm, by the other form of the formula too', () => {
    const height = capHeightMm({ distanceM: 1, arcMinutes: 20 })
    expect(height).toBeCloseTo(5.82, 2)
    expect(height).toBeCloseTo((6.283 * 1000 * 20) / 21_600, 2)
  })

  it('[E1] the angle of a size is the way back', () => {
    for (const arcMinutes of [16, 20, 22])
      expect(arcMinutesOf(fontPx({ distanceM: 0.7, arcMinutes }, 4.2), 4.2, 0.7)).toBeCloseTo(
        arcMinutes,
        9,
      )
  })

  it('[E2] a device counts as a 10.1-inch tablet of 1280 × 800 until it is calibrated', () => {
    expect(pxPerMm([1280, 800, 10.1])).toBeCloseTo(DEFAULT_PX_PER_MM, 2)
  })
})
