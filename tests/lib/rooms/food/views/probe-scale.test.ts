import { describe, expect, test } from 'vitest'
import {
  coolingScaleOf,
  probeScaleOf,
  roomCoolingScaleOf,
  shareOf,
} from '#lib/rooms/food/views/probe-scale.ts'
import { holdingLimit } from '#lib/rooms/food/views/reading-entry.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { componentOf } from '#lib/station/find.ts'
import { demoStation } from '#tests/support/service.ts'

const limit = (component: string, heldBy: 'hot' | 'cold') =>
  holdingLimit(demoStation, componentOf(demoStation, component), heldBy)

describe('a probe’s scale', () => {
  test.each([
    ['hot', 'chicken', 'F', 1_350],
    ['hot', 'chicken', 'C', 570],
    ['cold', 'tuna', 'F', 410],
    ['cold', 'tuna', 'C', 50],
  ] as const)('of %s food has the station’s limit on it in °%s', (heldBy, component, scale, at) => {
    const drawn = probeScaleOf(limit(component, heldBy), scale)
    expect(drawn.limits).toEqual([at])
    expect(shareOf(drawn, at)).toBeGreaterThan(0.1)
    expect(shareOf(drawn, at)).toBeLessThan(0.9)
    expect(drawn.zones.map(({ from, to }) => to - from).every((size) => size > 0)).toBe(true)
  })

  test('is whole: its zones meet at the limit and reach both ends', () => {
    const { least, most, zones } = probeScaleOf(limit('chicken', 'hot'), 'F')
    expect(zones[0]).toMatchObject({ to: most, kind: 'hot-enough' })
    expect(zones[1]).toMatchObject({ from: least, kind: 'too-cool' })
    expect(zones[0]?.from).toBe(zones[1]?.to)
  })

  test('has no number so near the limit that both stand over each other', () => {
    const { ticks, limits } = probeScaleOf(limit('chicken', 'hot'), 'F')
    expect(Math.min(...ticks.map((one) => Math.abs(one - (limits[0] ?? 0))))).toBeGreaterThan(100)
  })

  test('keeps what is beyond it at its end', () => {
    const drawn = probeScaleOf(limit('chicken', 'hot'), 'F')
    expect(shareOf(drawn, 5_000)).toBe(1)
    expect(shareOf(drawn, -100)).toBe(0)
  })

  test('of what cools has both stages, from the limits that the station has', () => {
    const limits = limitsOf(demoStation)
    const { zones, limits: at } = coolingScaleOf(limits, 'F', { first: '1:00', second: '5:00' })
    expect(at).toEqual([1_350, 700, 410])
    expect(zones.map(({ kind, by }) => [kind, by])).toEqual([
      ['starts', null],
      ['first-stage', '1:00'],
      ['second-stage', '5:00'],
      ['cold-enough', null],
    ])
  })

  test('[B19] of what cools from room temperature has one stage, to its own hour', () => {
    const { zones, limits: at } = roomCoolingScaleOf(limitsOf(demoStation), 'F', '4:00')
    expect(at).toEqual([410])
    expect(zones.map(({ kind, by }) => [kind, by])).toEqual([
      ['second-stage', '4:00'],
      ['cold-enough', null],
    ])
  })
})
