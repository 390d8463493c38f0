import { describe, expect, it } from 'vitest'
import {
  momentProblem,
  questionReading,
  type ReadingContext,
  readingLacks,
  thatCount,
} from '#lib/safety/readings.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { at, degrees, read } from '#tests/support/readings.ts'

describe('readings', () => {
  it('[F4] a reading counts with probe, initials and the middle of the food', () => {
    expect(readingLacks(read(140, '11:00'))).toBeNull()
    expect(readingLacks(read(140, '11:00', { probe: null }))).toBe('no-probe')
    expect(readingLacks(read(140, '11:00', { probe: ' ' }))).toBe('no-probe')
    expect(readingLacks(read(140, '11:00', { where: 'surface' }))).toBe('surface-only')
    expect(readingLacks(read(140, '11:00', { where: 'thickest-part' }))).toBeNull()
    expect(readingLacks(read(140, '11:00', { initialled: false }))).toBe('not-initialled')
    const none = { temperature: { tenths: Number.NaN, scale: 'F' as const } }
    expect(readingLacks(read(140, '11:00', none))).toBe('no-temperature')
  })

  it('[F4] what doesn’t count is left out, and the others come oldest first', () => {
    const all = [read(1, '12:00'), read(2, '11:00', { initialled: false }), read(3, '10:00')]
    expect(thatCount(all).map((one) => one.temperature.tenths)).toEqual([30, 10])
  })

  const asked = (value: number, scale: Scale, context: ReadingContext, kitchen: Scale = 'F') =>
    questionReading(degrees(value, scale), context, kitchen)
  const must = (scale: Scale) => ({ code: 'did-you-mean', scale, must: true })
  const may = (scale: Scale) => ({ code: 'did-you-mean', scale, must: false })

  it.each([
    ['165 °C in a soup', asked(165, 'C', 'cooking'), must('F')],
    ['165 °C reheating', asked(165, 'C', 'reheating'), must('F')],
    ['140 °C in a hot pan', asked(140, 'C', 'hot-holding'), must('F')],
    ['74 °F at the end of cooking', asked(74, 'F', 'cooking'), may('C')],
    ['60 °F in a hot pan', asked(60, 'F', 'hot-holding', 'C'), may('C')],
    ['60 °F in a hot pan of a °F kitchen', asked(60, 'F', 'hot-holding'), may('C')],
    ['41 °C in a cold pan', asked(41, 'C', 'cold-holding'), may('F')],
    ['4 °F in a cold pan', asked(4, 'F', 'cold-holding'), may('C')],
    ['41 °C cooling in a °F kitchen', asked(41, 'C', 'cooling'), may('F')],
  ])('[F5] %s asks whether the other scale was meant', (_, question, expected) => {
    expect(question).toEqual(expected)
  })

  it.each([
    ['165 °F in a soup', asked(165, 'F', 'cooking')],
    ['74 °C in a soup', asked(74, 'C', 'cooking', 'C')],
    ['74 °C in a °F kitchen, where 74 °F would be strange', asked(74, 'C', 'cooking')],
    ['128 °F in a hot pan, which fell', asked(128, 'F', 'hot-holding')],
    ['41 °F in a cold pan', asked(41, 'F', 'cold-holding')],
    ['100 °F cooling', asked(100, 'F', 'cooling')],
    ['212 °F, boiling', asked(212, 'F', 'cooking')],
  ])('[F5] %s is taken as it is', (_, question) => {
    expect(question).toBeNull()
  })

  it.each([
    ['300 °F in a soup', asked(300, 'F', 'cooking')],
    ['-50 °C in a cold pan', asked(-50, 'C', 'cold-holding')],
    ['no number', questionReading({ tenths: Number.NaN, scale: 'F' }, 'cooking', 'F')],
  ])('[F5] %s can’t be on either scale', (_, question) => {
    expect(question).toEqual({ code: 'cannot-be' })
  })

  it('[F6] a moment before what is recorded, or after now, is questioned', () => {
    const now = at('12:00')
    expect(momentProblem(at('11:59'), at('11:58'), now)).toBeNull()
    expect(momentProblem(now, now, now)).toBeNull()
    expect(momentProblem(at('11:50'), at('11:58'), now)).toEqual({
      code: 'clock-back',
      byMs: 480_000,
    })
    expect(momentProblem(now, at('12:30'), now)).toEqual({ code: 'clock-back', byMs: 1_800_000 })
    expect(momentProblem(at('12:30'), at('12:30'), now)).toEqual({
      code: 'clock-back',
      byMs: 1_800_000,
    })
    expect(momentProblem(at('12:01'), null, now)).toEqual({ code: 'in-the-future', byMs: 60_000 })
  })
})
