import { describe, expect, it } from 'vitest'
import { inLimits } from '#lib/safety/holding.ts'
import { MODEL_CODE as limits, limitsWith } from '#lib/safety/limits.ts'
import { compareTemperatures } from '#lib/safety/temperature.ts'
import { LOCAL_VARIANTS } from '#tests/support/local-variants.ts'
import { degrees, read } from '#tests/support/readings.ts'

describe('FDA Food Code 2022, 3-501.16, in the adoptions of Delaware, Wisconsin and Washington', () => {
  it.each([
    ['hot', 135, 'F', true],
    ['hot', 134.9, 'F', false],
    ['hot', 57, 'C', true],
    ['hot', 56.9, 'C', false],
    ['cold', 41, 'F', true],
    ['cold', 41.1, 'F', false],
    ['cold', 5, 'C', true],
    ['cold', 5.1, 'C', false],
  ] as const)('[F11] (A) %s at %s °%s keeps its limit: %s', (heldBy, value, scale, kept) => {
    expect(inLimits(heldBy, read(value, '12:00', { in: scale }), limits)).toBe(kept)
  })

  it('[F11] (A)(1) roasts from 130 °F / 54 °C', () => {
    expect(inLimits('hot', read(130, '12:00'), limits, true)).toBe(true)
    expect(inLimits('hot', read(54, '12:00', { in: 'C' }), limits, true)).toBe(true)
    expect(inLimits('hot', read(53.9, '12:00', { in: 'C' }), limits, true)).toBe(false)
  })

  it.each([
    [57, 134.6],
    [5, 41],
    [21, 69.8],
    [74, 165.2],
    [63, 145.4],
    [68, 154.4],
  ])('[F1] the code’s %s °C is %s °F, so a reading is judged on its own scale', (c, f) => {
    expect(compareTemperatures(degrees(c, 'C'), degrees(f))).toBe(0)
  })

  it('[F3] New York City Health Code § 81.10, Table 1: hot from 140 °F / 60 °C', () => {
    const city = limitsWith(LOCAL_VARIANTS.newYorkCity)
    expect(inLimits('hot', read(139.9, '12:00'), city)).toBe(false)
    expect(inLimits('hot', read(140, '12:00'), city)).toBe(true)
  })
})
