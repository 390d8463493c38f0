import { expect, test } from 'vitest'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'
import { BOUNDS, FLOOR_PX } from '#tests/support/legible-bounds.ts'
import { arcMinutesOf } from '#tests/support/legible-sizes.ts'

/** A crowded shelf's words, and how large a tongful is about, beside its number. */
const SMALLER = ['/hand-over, shelf', '/assembly, how much without a number']

test('[E3] what the crew has to read fills 15 minutes of arc and more from where it is read', () => {
  const crews = Object.entries(BOUNDS).filter(([path]) => path !== '/pick-up')
  expect(crews).toHaveLength(4)
  for (const [path, bounds] of crews)
    for (const { what, leastPx, distanceM } of bounds)
      expect(
        arcMinutesOf(leastPx, DEFAULT_PX_PER_MM, distanceM),
        `${path}, ${what}`,
      ).toBeGreaterThanOrEqual(SMALLER.includes(`${path}, ${what}`) ? 13 : 15)
})

test('[E3] no bound lies under the floor', () => {
  for (const { what, leastPx } of Object.values(BOUNDS).flat())
    expect(leastPx, what).toBeGreaterThan(FLOOR_PX)
})
