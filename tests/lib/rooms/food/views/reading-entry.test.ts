import { describe, expect, test } from 'vitest'
import { type PadKey, tenthsOf, typed } from '#lib/measure/number-pad.ts'
import {
  asksStood,
  clockLimit,
  cookLimit,
  coolLimit,
  heatAgainLimit,
  heatReadingOf,
  holdingLimit,
  howProbed,
  judgeEntry,
  probePlaces,
  type ReadingEntry,
  readingOf,
} from '#lib/rooms/food/views/reading-entry.ts'
import { weightMg } from '#lib/rooms/pans/views/weight-entry.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { componentOf } from '#lib/station/find.ts'
import { demoStation } from '#tests/support/service.ts'

const keys = (...pressed: readonly PadKey[]): string =>
  pressed.reduce((text, key) => typed(text, key), '')

const entry = (text: string, over: Partial<ReadingEntry> = {}): ReadingEntry => ({
  text,
  scale: 'F',
  probe: '1',
  where: 'middle-stirred',
  initials: 'AB',
  held: '',
  confirmed: false,
  ...over,
})

const hot = holdingLimit(demoStation, componentOf(demoStation, 'chicken'), 'hot')
const judge = (text: string, over: Partial<ReadingEntry> = {}) =>
  judgeEntry(entry(text, over), 'hot-holding', 'F', hot)

describe('the number pad', () => {
  test('[P29] takes digits with one point and one figure after it', () => {
    expect(keys('1', '4', '2', '.', '5', '7', '.')).toBe('142.5')
    expect(keys('.', '5')).toBe('0.5')
    expect(keys('0', '7')).toBe('7')
    expect(keys('1', '2', '3', '4', '5', '6')).toBe('12345')
  })

  test('[P29] takes the last one back, and turns the sign', () => {
    expect(keys('1', '4', 'back', '5')).toBe('15')
    expect(keys('back')).toBe('')
    expect(keys('4', '-')).toBe('-4')
    expect(keys('4', '-', '-')).toBe('4')
  })

  test('[P29] is read in whole tenths, and as nothing while no number stands there', () => {
    expect(['142.5', '142.', '-4', '', '-'].map(tenthsOf)).toEqual([1425, 1420, -40, null, null])
  })

  test('[P35] a weight is typed in pounds, ounces or kilograms', () => {
    expect(weightMg('1', 'lb')).toBe(453_592)
    expect(weightMg('16', 'oz')).toBe(453_592)
    expect(weightMg('2.5', 'kg')).toBe(2_500_000)
    expect(weightMg('', 'kg')).toBeNull()
  })
})

describe('a reading as it is typed', () => {
  test('[P30] is judged by its limit on the scale on which it was read', () => {
    expect(judge('135').verdict).toBe('met')
    expect(judge('134.9').verdict).toBe('not-met')
    expect(judge('57', { scale: 'C', confirmed: true }).verdict).toBe('met')
  })

  test('[P30] is asked about where it fits the other scale, and isn’t sent before', () => {
    const asked = judge('65')
    expect(asked.question).toEqual({ code: 'did-you-mean', scale: 'C', must: false })
    expect(asked).toMatchObject({ isReady: false, verdict: null })
    expect(judge('65', { scale: 'C' })).toMatchObject({ isReady: true, verdict: 'met' })
    expect(judge('65', { confirmed: true })).toMatchObject({ isReady: true, verdict: 'not-met' })
  })

  test('[P30] what can’t be isn’t taken, whoever confirms it', () => {
    const asked = judge('165', { scale: 'C', confirmed: true })
    expect(asked.question).toEqual({ code: 'did-you-mean', scale: 'F', must: true })
    expect(asked.isReady).toBe(false)
    expect(judge('900').question).toEqual({ code: 'cannot-be' })
  })

  test('[P31] isn’t sent before it is said where it was read, which fits the food', () => {
    expect(judge('142', { where: null })).toMatchObject({ lacks: 'where', isReady: false })
    expect(readingOf(entry('142', { where: null }))).toBeNull()
    const places = (id: string) => probePlaces(componentOf(demoStation, id))
    // Scooped: diced by the time it stands on the line, as the round says it too.
    expect(places('chicken')).toEqual(['middle-stirred', 'surface'])
    expect(probePlaces(componentOf(demoStation, 'chicken'), 'cooking')).toEqual([
      'thickest-part',
      'surface',
    ])
    for (const one of demoStation.components)
      expect(probePlaces(one)[0] === 'thickest-part').toBe(howProbed(one) === 'piece')
    expect(places('beans')).toEqual(['middle-stirred', 'surface'])
    expect(probePlaces(undefined)).toContain('thickest-part')
  })

  test('[P31] can’t be sent without a figure, probe, initials, or of the surface only', () => {
    expect(judge('')).toMatchObject({ lacks: 'temperature', isReady: false })
    expect(judge('142', { probe: ' ' })).toMatchObject({ lacks: 'probe', isReady: false })
    expect(judge('142', { initials: '' })).toMatchObject({ lacks: 'initials', isReady: false })
    expect(judge('142', { where: 'surface' })).toMatchObject({ lacks: 'surface', isReady: false })
    expect(judge('142')).toMatchObject({ lacks: null, isReady: true })
  })

  test('[P31] a reading that is out of its limit can be sent: it says what is', () => {
    expect(judge('120')).toMatchObject({ verdict: 'not-met', isReady: true })
  })

  test('[P30] heat counts with the seconds for which it was held', () => {
    const limit = { kind: 'heat', limit: MODEL_CODE.cookGroundMeat } as const
    const of = (text: string, held: string) =>
      judgeEntry(entry(text, { held }), 'cooking', 'F', limit).verdict
    expect([of('155', ''), of('155', '17'), of('158', ''), of('140', '600')]).toEqual([
      'not-long-enough',
      'met',
      'met',
      'not-met',
    ])
  })

  test('[P31] is sent with what makes it count', () => {
    expect(readingOf(entry('142.5', { probe: ' 2 ' }))).toEqual({
      tenths: 1425,
      scale: 'F',
      probe: '2',
      where: 'middle-stirred',
    })
    expect(readingOf(entry('65', { confirmed: true }))).toMatchObject({ scaleConfirmed: true })
    expect(heatReadingOf(entry('165', { held: '20' }))).toMatchObject({ heldSeconds: 20 })
    expect(readingOf(entry(''))).toBeNull()
  })
})

// FDA Food Code 2022, 3-401.12 and 3-403.11(B): 165 °F, then covered for 2 minutes.
test('[PL33] what a microwave heated waits covered: its seconds are asked for, said and sent', () => {
  const microwave = heatAgainLimit(demoStation, 'microwave')
  const judged = (over: Partial<ReadingEntry>) =>
    judgeEntry(entry('166', { held: '15', ...over }), 'reheating', 'F', microwave).verdict
  expect(asksStood(microwave)).toBe(true)
  expect(asksStood(heatAgainLimit(demoStation, 'range'))).toBe(false)
  expect(asksStood(hot)).toBe(false)
  expect([judged({}), judged({ stood: '119' }), judged({ stood: '120' })]).toEqual([
    'not-stood',
    'not-stood',
    'met',
  ])
  expect(heatReadingOf(entry('166', { stood: '120' }))).toMatchObject({ stoodSeconds: 120 })
  expect(heatReadingOf(entry('166'))).not.toHaveProperty('stoodSeconds')
})

test('[P30] each job has the limit of its paragraph', () => {
  const paragraph = (limit: { limit: { paragraph: string } } | null) => limit?.limit.paragraph
  expect(paragraph(hot)).toBe('3-501.16(A)(1)')
  expect(paragraph(cookLimit(demoStation, componentOf(demoStation, 'chicken')))).toBe(
    '3-401.11(A)(3)',
  )
  expect(cookLimit(demoStation, componentOf(demoStation, 'cheddar'))).toBeNull()
  expect(paragraph(clockLimit(MODEL_CODE, 'cold'))).toBe('3-501.19(B)')
  const started = { startedAt: 0, dueAt: 1 }
  expect(coolLimit(MODEL_CODE, null).limit).toBe(MODEL_CODE.coolingFrom)
  expect(coolLimit(MODEL_CODE, null, 'room').limit).toBe(MODEL_CODE.coolingTo)
  expect(coolLimit(MODEL_CODE, { state: 'first-stage', ...started }).limit).toBe(
    MODEL_CODE.coolingFirstTo,
  )
  expect(coolLimit(MODEL_CODE, { state: 'second-stage', ...started }).limit).toBe(
    MODEL_CODE.coolingTo,
  )
})
