import { describe, expect, it } from 'vitest'
import { type Cooking, cookedTo } from '#lib/safety/cooking.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { reheated } from '#lib/safety/reheating.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { at, heat } from '#tests/support/readings.ts'

const met = (kind: Cooking['kind'], value: number, seconds: number, scale: Scale = 'F') =>
  cookedTo({ kind, cookedIn: 'usual', readings: [heat(value, seconds, { in: scale })] }, limits)
    ?.met

/** Rows of 3-401.11(A), read in North Carolina's food handler manual, p. 55, and FDA's egg page. */
const ROWS = [
  ['fish-or-meat', 145, 63, 15],
  ['eggs-to-order', 145, 63, 15],
  ['eggs-batch', 155, 68, 17],
  ['ground-meat', 155, 68, 17],
  ['ground-meat', 150, 66, 60],
  ['ground-meat', 145, 63, 180],
  ['poultry-or-stuffed', 165, 74, 0],
] as const

describe('FDA Food Code 2022, 3-401.11 to 3-401.14: cooking raw animal food', () => {
  it.each(ROWS)(
    '[F7] %s: %s °F / %s °C for %s s is enough on either scale',
    (kind, f, c, seconds) => {
      expect(met(kind, f, seconds)).toBe(true)
      expect(met(kind, c, seconds, 'C')).toBe(true)
    },
  )

  it.each(ROWS)('[F7] %s: a tenth below %s °F / %s °C for %s s is not', (kind, f, c, seconds) => {
    expect(met(kind, f - 0.1, seconds)).toBe(false)
    expect(met(kind, c - 0.1, seconds, 'C')).toBe(false)
  })

  it.each(ROWS.filter(([, , , seconds]) => seconds > 0))(
    '[F7] %s: %s °F / %s °C for a second less than %s s is not',
    (kind, f, _c, seconds) => {
      expect(met(kind, f, seconds - 1)).toBe(false)
    },
  )

  it('[F7] ground meat at 158 °F / 70 °C is done at once (Cal. Health and Safety Code 114004)', () => {
    expect(met('ground-meat', 158, 0)).toBe(true)
    expect(met('ground-meat', 70, 0, 'C')).toBe(true)
    expect(met('ground-meat', 157.9, 0)).toBe(false)
  })

  it('[F7] 15 s at 155 °F, as older adoptions have it, is no longer enough: 17 s are', () => {
    expect(met('ground-meat', 155, 15)).toBe(false)
    expect(met('ground-meat', 155, 16)).toBe(false)
    expect(met('ground-meat', 155, 17)).toBe(true)
  })

  it('[F7] a held batch of eggs isn’t done at what eggs to order are', () => {
    expect(met('eggs-to-order', 145, 15)).toBe(true)
    expect(met('eggs-batch', 145, 15)).toBe(false)
  })

  it('[F7] 3-401.13, from memory: plant food for hot holding at 135 °F / 57 °C', () => {
    expect(met('plant', 135, 0)).toBe(true)
    expect(met('plant', 57, 0, 'C')).toBe(true)
    expect(met('plant', 134.9, 0)).toBe(false)
  })
})

describe('FDA Food Code 2022, 3-403.11: reheating for hot holding', () => {
  const to = (
    what: 'cooked-here' | 'commercial-pack',
    value: number,
    seconds: number,
    time: string,
  ) =>
    reheated(
      { what, place: 'range', startedAt: at('09:00'), readings: [heat(value, seconds, { time })] },
      at('12:00'),
      limits,
    ).ok

  it('[F26] (A) 165 °F for 15 s, (C) a commercial pack 135 °F, (D) within 2 h', () => {
    expect(to('cooked-here', 165, 15, '11:00')).toBe(true)
    expect(to('cooked-here', 165, 15, '11:01')).toBe(false)
    expect(to('cooked-here', 135, 15, '11:00')).toBe(false)
    expect(to('commercial-pack', 135, 0, '11:00')).toBe(true)
  })
})
