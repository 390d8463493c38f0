import { describe, expect, test } from 'vitest'
import { usuallyGives } from '#lib/rooms/food/views/batch-gives.ts'
import { componentOf, linePansOf } from '#lib/station/find.ts'
import { given, running } from '#tests/support/service.ts'

describe('what a batch is thought to have given', () => {
  const state = running(given())
  const { station } = state
  const usual = linePansOf(station, 'chicken').reduce((sum, pan) => sum + pan.usualPortions, 0)
  const unsaid = {
    station: {
      ...station,
      components: station.components.map((one) => ({ ...one, remake: null })),
      line: {
        ...station.line,
        wells: station.line.wells.map((well) => ({
          ...well,
          pans: well.pans.flatMap((pan) =>
            pan.component === 'chicken' ? [pan, { ...pan, id: 'another' }] : [pan],
          ),
        })),
      },
    },
  }

  test('[B42] is what the house says of a load', () => {
    const { remake } = componentOf(station, 'chicken')
    expect(remake).not.toBeNull()
    expect(usuallyGives(state, 'chicken', 3)).toBe(remake?.portionsPerLoad)
  })

  test('[B42] else all of its pans as they are usually loaded, shared by its loads', () => {
    expect(usual).toBeGreaterThan(0)
    expect(usuallyGives(unsaid, 'chicken', 1)).toBe(2 * usual)
    expect(usuallyGives(unsaid, 'chicken', 3)).toBe(Math.ceil((2 * usual) / 3))
  })

  test('[B42] of what has no pan on the line one portion', () => {
    const bare = { station: { ...unsaid.station, line: { ...station.line, wells: [] } } }
    expect(usuallyGives(bare, 'chicken', 1)).toBe(1)
  })
})
