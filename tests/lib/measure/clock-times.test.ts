import { describe, expect, it } from 'vitest'
import { minuteOfDay, nextTimeOfDay } from '#lib/measure/civil.ts'

const CHICAGO = 'America/Chicago'
const at = (iso: string): number => Date.parse(iso)

describe('a time of day', () => {
  it('[U16] is counted in minutes by the clock on the wall', () => {
    expect(minuteOfDay(at('2026-11-25T16:45:30Z'), CHICAGO)).toBe(645.5)
    expect(minuteOfDay(at('2026-11-25T06:00:00Z'), CHICAGO)).toBe(0)
    // Clocks went forward at two: three hours after midnight it is four.
    expect(minuteOfDay(at('2026-03-08T09:00:00Z'), CHICAGO)).toBe(240)
  })

  it('[U16] is the next one, past midnight too', () => {
    const morning = at('2026-11-25T16:45:00Z')
    expect(nextTimeOfDay(morning, '13:15', CHICAGO)).toBe(at('2026-11-25T19:15:00Z'))
    const night = at('2026-11-26T04:00:00Z')
    expect(nextTimeOfDay(night, '01:00', CHICAGO)).toBe(at('2026-11-26T07:00:00Z'))
  })

  it('[U16] that is more than twelve hours ahead is past', () => {
    const morning = at('2026-11-25T16:45:00Z')
    expect(nextTimeOfDay(morning, '10:44', CHICAGO)).toBeNull()
    expect(nextTimeOfDay(morning, '10:45', CHICAGO)).toBeNull()
    expect(nextTimeOfDay(morning, '22:45', CHICAGO)).toBe(morning + 12 * 3_600_000)
    expect(nextTimeOfDay(morning, '22:46', CHICAGO)).toBeNull()
  })
})
