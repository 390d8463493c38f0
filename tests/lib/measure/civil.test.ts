import { describe, expect, it } from 'vitest'
import { civilDate, dayBefore, startOfNextDay } from '#lib/measure/civil.ts'

const next = (from: string, zone: string): string =>
  new Date(startOfNextDay(Date.parse(from), zone)).toISOString()

describe('the next civil day', () => {
  it('[T1] starts by the clock of the station, not of the server', () => {
    expect(next('2026-11-25T16:00:00Z', 'America/Chicago')).toBe('2026-11-26T06:00:00.000Z')
    // 20:00 in Chicago is already tomorrow in UTC.
    expect(next('2026-11-26T02:00:00Z', 'America/Chicago')).toBe('2026-11-26T06:00:00.000Z')
    expect(next('2026-11-25T16:00:00Z', 'Pacific/Auckland')).toBe('2026-11-26T11:00:00.000Z')
  })

  it('[T1] is the day after where it is asked for at midnight', () => {
    expect(next('2026-11-26T06:00:00Z', 'America/Chicago')).toBe('2026-11-27T06:00:00.000Z')
    expect(next('2026-11-26T05:59:59.999Z', 'America/Chicago')).toBe('2026-11-26T06:00:00.000Z')
  })

  it('[T2] is 23 or 25 hours away where the clocks change', () => {
    // US clocks go forward on 2026-03-08 and back on 2026-11-01 (15 U.S.C. 260a).
    expect(next('2026-03-08T06:00:00Z', 'America/Chicago')).toBe('2026-03-09T05:00:00.000Z')
    expect(next('2026-11-01T05:00:00Z', 'America/Chicago')).toBe('2026-11-02T06:00:00.000Z')
  })

  it('[T3] starts at its first moment where midnight itself is skipped', () => {
    // Beirut went forward at 00:00 on 2021-03-28 (IANA time zone database, asia).
    expect(next('2021-03-27T12:00:00Z', 'Asia/Beirut')).toBe('2021-03-27T22:00:00.000Z')
    expect(
      new Date('2021-03-27T22:00:00Z').toLocaleString('en-GB', { timeZone: 'Asia/Beirut' }),
    ).toBe('28/03/2021, 01:00:00')
  })

  it('[T4] is an error for a time zone that nobody knows', () => {
    expect(() => startOfNextDay(0, 'America/Atlantis')).toThrow(RangeError)
  })
})

describe('a civil day', () => {
  it('is told of an instant with fractions, as screens tell time', () => {
    const midnight = Date.parse('2026-11-26T06:00:00Z')
    expect(civilDate(midnight + 0.25, 'America/Chicago')).toBe('2026-11-26')
    expect(civilDate(midnight - 0.25, 'America/Chicago')).toBe('2026-11-25')
  })

  it('has one before it, over months and leap days', () => {
    expect(['2026-11-26', '2026-03-01', '2028-03-01', '2026-01-01'].map(dayBefore)).toEqual([
      '2026-11-25',
      '2026-02-28',
      '2028-02-29',
      '2025-12-31',
    ])
    expect(() => dayBefore('2026-02-30x')).toThrow(RangeError)
  })
})
