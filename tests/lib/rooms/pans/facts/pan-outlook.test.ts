import { describe, expect, test } from 'vitest'
import type { ComponentForecast, StationForecast } from '#lib/estimate/station-forecast.ts'
import { biasThatMatters, outlookOf, outOfTen, rangeOf } from '#lib/rooms/pans/facts/pan-outlook.ts'

const NOON = Date.parse('2026-11-25T18:00:00Z')
const at = (minutes: number): number => NOON + minutes * 60_000

const chicken: ComponentForecast = {
  lasting: 'wont-last',
  chance: 0.8,
  beforeNextBatch: 0.2,
  by: { early: at(33.4), likely: at(40), late: at(51.2) },
  left: { mean: 9, sd: 1 },
  wanted: { mean: 20, sd: 4 },
  underway: [],
  batch: null,
  keep: null,
  bias: null,
}

const forecast = (over: Partial<ComponentForecast> = {}): StationForecast => ({
  service: 's-lunch',
  position: 1,
  at: NOON,
  closesAt: at(60),
  closesSaid: true,
  rushUntil: null,
  components: { chicken: { ...chicken, ...over } },
  wait: null,
  candidates: [],
  doNext: [],
})

describe('by when a component is gone', () => {
  test('[P23] is a range rounded outwards to five minutes, near at hand to the minute', () => {
    expect(rangeOf(chicken.by, NOON)).toEqual({ from: at(30), to: at(55) })
    expect(rangeOf({ early: at(4.6), likely: at(6), late: at(9.1) }, NOON)).toEqual({
      from: at(4),
      to: at(10),
    })
  })

  test('[P23] never begins before now, and is open where it may last until close', () => {
    expect(rangeOf({ early: at(-3), likely: at(1), late: at(2) }, NOON)?.from).toBe(NOON)
    expect(rangeOf({ early: at(30), likely: null, late: null }, NOON)).toEqual({
      from: at(30),
      to: null,
    })
    expect(rangeOf({ early: null, likely: null, late: null }, NOON)).toBeNull()
  })

  test('[P23] a chance is said of ten, and as none or certain only where it is', () => {
    expect([0, 0.004, 0.26, 0.5, 0.996, 1].map(outOfTen)).toEqual([0, 1, 3, 5, 9, 10])
  })
})

describe('whether it lasts', () => {
  test('[P24] is one word, with its range only where it isn’t enough', () => {
    expect(outlookOf(forecast(), 'chicken')).toMatchObject({
      lasting: 'wont-last',
      by: { from: at(30), to: at(55) },
    })
    expect(outlookOf(forecast({ lasting: 'enough' }), 'chicken')?.by).toBeNull()
  })

  test('[P24] what may be gone within half an hour stands out', () => {
    expect(outlookOf(forecast(), 'chicken')?.isSoon).toBe(false)
    const by = { early: at(30), likely: at(40), late: null }
    expect(outlookOf(forecast({ by }), 'chicken')?.isSoon).toBe(true)
  })

  test('[P24] nothing is said before a forecast has come', () => {
    expect(outlookOf(null, 'chicken')).toBeNull()
    expect(outlookOf(forecast(), 'tuna')).toBeNull()
  })
})

test('[P34] scoops are said to run heavy or light from five percent on, where it costs portions', () => {
  const told = (percent: number, fewer: number) =>
    biasThatMatters(forecast({ bias: { percent, fewer } }), 'chicken')
  expect([told(8, 3), told(-6, -2), told(4, 2), told(8, 0)]).toEqual([8, -6, 0, 0])
  expect(biasThatMatters(forecast(), 'chicken')).toBe(0)
  expect(biasThatMatters(null, 'chicken')).toBe(0)
})
