import { describe, expect, it } from 'vitest'
import code from '#fixtures/reference/food-code.json' with { type: 'json' }
import { limitsWith, MODEL_CODE } from '#lib/safety/limits.ts'
import {
  ARRIVALS,
  type Arrival,
  type Arrived,
  arrivalLack,
  coolsWithin,
  questionArrival,
  turnedAway,
} from '#lib/safety/receiving.ts'
import { degrees } from '#tests/support/readings.ts'

const TODAY = '2026-11-29'

const came = (comes: Arrival, more: Partial<Arrived> = {}): Arrived => ({
  comes,
  read: null,
  solid: null,
  useBy: null,
  ...more,
})

const away = (arrived: Arrived, limits = MODEL_CODE) => turnedAway(arrived, TODAY, limits)

/** Written from 3-202.11 (from memory), not from the program. */
const LIMITS: readonly (readonly [Arrival, f: number, c: number, isHot: boolean, string])[] = [
  ['cold', 41, 5, false, '3-202.11(A)'],
  ['milk', 45, 7, false, '3-202.11(B)'],
  ['shellfish', 45, 7, false, '3-202.11(B)'],
  ['eggs', 45, 7, false, '3-202.11(C)'],
  ['hot', 135, 57, true, '3-202.11(D)'],
]

describe('what is received', () => {
  it.each(LIMITS)(
    '[DV1] %s at %s °F or %s °C, each on its own scale',
    (comes, f, c, isHot, where) => {
      const worse = isHot ? -0.1 : 0.1
      for (const [figure, scale] of [
        [f, 'F'],
        [c, 'C'],
      ] as const) {
        expect(away(came(comes, { read: degrees(figure, scale) }))).toBeNull()
        const read = degrees(Math.round((figure + worse) * 10) / 10, scale)
        expect(away(came(comes, { read }))).toMatchObject({
          code: isHot ? 'not-hot' : 'too-warm',
          read,
          limit: { paragraph: where, certainty: 'memory' },
        })
      }
    },
  )

  it('[DV1] the limits of the table are those, and marked as recalled', () => {
    const rows = code.temperatures.filter(({ limit }) => limit.startsWith('received'))
    expect(rows.map(({ f, c, paragraph }) => [f, c, paragraph])).toEqual([
      [41, 5, '3-202.11(A)'],
      [45, 7, '3-202.11(B)'],
      [45, 7, '3-202.11(C)'],
      [135, 57, '3-202.11(D)'],
    ])
    expect(rows.every(({ certainty }) => certainty === 'memory')).toBe(true)
  })

  it('[DV1] local code’s figure stands in for the model code’s', () => {
    const own = limitsWith({
      receivedByItsLaw: {
        ...MODEL_CODE.receivedByItsLaw,
        tenths: { F: 410, C: 50 },
        document: 'County code',
        paragraph: '12',
      },
    })
    const milk = came('milk', { read: degrees(43) })
    expect(turnedAway(milk, TODAY, MODEL_CODE)).toBeNull()
    expect(turnedAway(milk, TODAY, own)).toMatchObject({
      code: 'too-warm',
      limit: { document: 'County code' },
    })
  })

  it('[DV2] frozen only while it is hard', () => {
    expect(away(came('frozen', { solid: true }))).toBeNull()
    expect(away(came('frozen', { solid: false }))).toMatchObject({
      code: 'thawed',
      written: { paragraph: '3-202.11(E)' },
    })
    expect(arrivalLack(came('frozen'))).toBe('solid')
  })

  it.each(ARRIVALS)('[DV3] %s to the end of the day on its pack, and not a day longer', (comes) => {
    const good = {
      read: degrees(comes === 'hot' ? 140 : 38),
      solid: true,
    }
    expect(away(came(comes, { ...good, useBy: TODAY }))).toBeNull()
    expect(away(came(comes, { ...good, useBy: '2026-11-30' }))).toBeNull()
    expect(away(came(comes, { ...good, useBy: '2026-11-28' }))).toMatchObject({
      code: 'past-date',
      useBy: '2026-11-28',
      written: { paragraph: '3-501.17(B)', certainty: 'memory' },
    })
  })

  it('[DV4] nothing passes unread but what is dry', () => {
    expect(ARRIVALS.map((comes) => [comes, arrivalLack(came(comes))])).toEqual([
      ['cold', 'temperature'],
      ['milk', 'temperature'],
      ['shellfish', 'temperature'],
      ['eggs', 'temperature'],
      ['frozen', 'solid'],
      ['hot', 'temperature'],
      ['dry', null],
    ])
  })

  it('[DV5] what its own law lets come warmer is cold within 4 hours', () => {
    const within = (comes: Arrival, f: number) =>
      coolsWithin(came(comes, { read: degrees(f) }), MODEL_CODE)
    expect(within('milk', 41)).toBeNull()
    expect(within('milk', 41.1)).toMatchObject({ withinMs: 14_400_000, paragraph: '3-501.14(C)' })
    expect(within('shellfish', 45)?.withinMs).toBe(14_400_000)
    expect(within('cold', 41)).toBeNull()
    // Eggs go into air of 45 °F, as they came.
    expect(within('eggs', 45)).toBeNull()
  })

  it('[DV11] a figure that fits on the other scale is asked about, and what can’t be is refused', () => {
    expect(questionArrival('milk', degrees(4), 'F')).toMatchObject({ code: 'did-you-mean' })
    expect(questionArrival('hot', degrees(60), 'F')).toMatchObject({ code: 'did-you-mean' })
    expect(questionArrival('cold', degrees(400), 'F')).toMatchObject({ code: 'cannot-be' })
    expect(questionArrival('milk', degrees(50), 'F')).toBeNull()
  })
})
