import { describe, expect, it } from 'vitest'
import code from '#fixtures/reference/food-code.json' with { type: 'json' }
import {
  type LimitName,
  limitsWith,
  MODEL_CODE,
  meets,
  type SafetyLimits,
} from '#lib/safety/limits.ts'
import { looserThanModel } from '#lib/safety/local-variants.ts'
import { LOCAL_VARIANTS } from '#tests/support/local-variants.ts'
import { degrees } from '#tests/support/readings.ts'

const limits: SafetyLimits = MODEL_CODE
const named = (name: string) => limits[name as LimitName]

describe('limits', () => {
  it.each(Object.entries(limits))('[F2] %s names its document and paragraph', (_, limit) => {
    expect(limit.document).toBe('FDA Food Code 2022')
    expect(limit.paragraph).toMatch(/^3-(?:202|[345]0[13])\.\d{2}(\([A-D]\)(\(\d\))?)?$/)
  })

  it.each(Object.values(LOCAL_VARIANTS).flatMap((one) => Object.entries(one)))(
    '[F2] the local %s names its document and paragraph',
    (_, limit) => {
      expect(limit.document).not.toBe('FDA Food Code 2022')
      expect(limit.paragraph).toMatch(/\d/)
    },
  )

  it.each(code.temperatures)('[F2] $limit is $f °F / $c °C as in $paragraph', (row) => {
    expect(named(row.limit)).toEqual({
      bound: row.bound,
      tenths: { F: row.f * 10, C: row.c * 10 },
      document: 'FDA Food Code 2022',
      paragraph: row.paragraph,
      certainty: row.certainty,
    })
  })

  it.each(code.hours)('[F2] $limit is $hours h as in $paragraph', (row) => {
    expect(named(row.limit)).toMatchObject({
      withinMs: row.hours * 3_600_000,
      paragraph: row.paragraph,
      certainty: row.certainty,
    })
  })

  it.each(code.heat)('[F2] $limit is as in $paragraph', (row) => {
    expect(named(row.limit)).toMatchObject({
      combinations: row.ways.map(([f = 0, c = 0, seconds]) => ({
        tenths: { F: f * 10, C: c * 10 },
        seconds,
      })),
      standSeconds: row.stand,
      paragraph: row.paragraph,
      certainty: row.certainty,
    })
  })

  it('[F2] the table names every limit, and nothing else', () => {
    const rows = [...code.temperatures, ...code.hours, ...code.heat, ...code.days]
    expect(rows.map((row) => row.limit).sort()).toEqual(Object.keys(limits).sort())
    expect(limits.dateMark).toMatchObject({ days: 7, paragraph: '3-501.17(A)' })
  })

  it('[F3] a local limit stands in for the model code’s, the others stay', () => {
    const city = limitsWith(LOCAL_VARIANTS.newYorkCity)
    expect(meets(degrees(139.9), city.hotHolding)).toBe(false)
    expect(meets(degrees(140), city.hotHolding)).toBe(true)
    expect(meets(degrees(60, 'C'), city.hotHolding)).toBe(true)
    expect(city.coldHolding).toBe(limits.coldHolding)
    expect(limitsWith(LOCAL_VARIANTS.southDakota1997).reheatWithin.withinMs).toBe(3_600_000)
    expect(limitsWith(LOCAL_VARIANTS.wisconsin).shellEggAir.tenths.F).toBe(410)
  })

  it('[F3] what asks less than the model code is named', () => {
    for (const variant of Object.values(LOCAL_VARIANTS))
      expect(looserThanModel(limitsWith(variant))).toEqual([])
    const { coldHolding, timeOnly4h, dateMark, reheat, hotHolding, cookMicrowave } = limits
    const looser = looserThanModel(
      limitsWith({
        coldHolding: { ...coldHolding, tenths: { F: 450, C: 70 } },
        hotHolding: { ...hotHolding, tenths: { F: 1350, C: 560 } },
        timeOnly4h: { ...timeOnly4h, withinMs: timeOnly4h.withinMs + 1 },
        dateMark: { ...dateMark, days: 8 },
        reheat: { ...reheat, combinations: [{ tenths: { F: 1650, C: 740 }, seconds: 14 }] },
        cookMicrowave: { ...cookMicrowave, standSeconds: 60 },
      }),
    )
    expect(new Set(looser)).toEqual(
      new Set(['coldHolding', 'cookMicrowave', 'dateMark', 'hotHolding', 'reheat', 'timeOnly4h']),
    )
  })
})
