import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ageingNow, hasRunOut, lastsUntil, UNUSED_MS, WHOLE_MS } from '#lib/access/life.ts'

const HOUR = 3_600_000

describe('how long a device is proved', () => {
  test('[D2] a day since it was last used, and 30 days in all', () => {
    expect([UNUSED_MS, WHOLE_MS]).toEqual([24 * HOUR, 720 * HOUR])
    expect(lastsUntil({ joinedAt: 0, seenAt: 0 })).toBe(24 * HOUR)
    expect(lastsUntil({ joinedAt: 0, seenAt: 10 * HOUR })).toBe(34 * HOUR)
    expect(lastsUntil({ joinedAt: 0, seenAt: 719 * HOUR })).toBe(720 * HOUR)
    const proved = { joinedAt: 0, seenAt: 10 * HOUR }
    expect(hasRunOut(proved, 34 * HOUR - 1)).toBe(false)
    expect(hasRunOut(proved, 34 * HOUR)).toBe(true)
  })

  test('[D3] ages by a clock that never falls, however the machine’s is set', () => {
    const steps = fc.array(
      fc.record({
        passes: fc.integer({ min: 0, max: 100 * HOUR }),
        setTo: fc.option(fc.integer({ min: 0, max: 5_000 * HOUR }), { nil: null }),
      }),
    )
    fc.assert(
      fc.property(steps, (all) => {
        let [wall, monotonic] = [1_000 * HOUR, 0]
        let floor = { at: wall, monotonic }
        let passed = 0
        const begun = floor.at
        for (const { passes, setTo } of all) {
          wall = setTo ?? wall + passes
          monotonic += passes
          passed += passes
          const now = ageingNow(floor, wall, monotonic)
          expect(now).toBeGreaterThanOrEqual(floor.at)
          expect(now).toBeGreaterThanOrEqual(begun + passed)
          floor = { at: now, monotonic }
        }
      }),
    )
  })
})
