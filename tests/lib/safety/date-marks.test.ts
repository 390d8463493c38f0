import { describe, expect, it } from 'vitest'
import { civilDate } from '#lib/measure/civil.ts'
import { type Dated, dateMark, stampOf } from '#lib/safety/date-marks.ts'
import { earlierStamp, pastStamp } from '#lib/safety/date-stamp.ts'
import { MODEL_CODE as limits, limitsWith } from '#lib/safety/limits.ts'

const mark = (preparedOn: string, other: Partial<Dated> = {}) =>
  dateMark({ preparedOn, freezings: [], useBy: null, ...other }, limits)
const frozen = (frozenOn: string, thawedOn: string | null) => ({ frozenOn, thawedOn })
const last = (lastDay: string) => ({ mark: 'last-day', lastDay })

describe('date marks', () => {
  it('[F27] the day of preparation is day 1, so 7 days end 6 days after it', () => {
    expect(mark('2026-10-01')).toEqual(last('2026-10-07'))
    const four = limitsWith({ dateMark: { ...limits.dateMark, days: 4 } })
    const food = { preparedOn: '2026-10-01', freezings: [], useBy: null }
    expect(dateMark(food, four)).toEqual(last('2026-10-04'))
  })

  it('[F27] the day is that of the station’s time zone', () => {
    const late = Date.parse('2026-10-02T03:50:00Z')
    expect(civilDate(late, 'America/New_York')).toBe('2026-10-01')
    expect(civilDate(late, 'UTC')).toBe('2026-10-02')
    expect(() => civilDate(late, 'Nowhere/Atall')).toThrow(RangeError)
  })

  it('[F27] it is sold until the midnight that ends its last day, also where clocks change', () => {
    const stamp = stampOf('2026-11-01', 'America/New_York')
    expect(stamp.endsAt).toBe(Date.parse('2026-11-02T05:00:00Z'))
    expect(pastStamp(stamp, stamp.endsAt - 1)).toBe(false)
    expect(pastStamp(stamp, stamp.endsAt)).toBe(true)
    expect(stampOf('2026-10-31', 'America/New_York').endsAt).toBe(
      Date.parse('2026-11-01T04:00:00Z'),
    )
  })

  it('[F28] no day passes while it is frozen, and days before it stay used', () => {
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-05', '2026-10-20')] })).toEqual(
      last('2026-10-22'),
    )
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-03', null)] })).toEqual({
      mark: 'frozen',
      daysLeft: 5,
    })
    const twice = [frozen('2026-10-03', '2026-10-10'), frozen('2026-10-12', '2026-10-20')]
    expect(mark('2026-10-01', { freezings: twice })).toEqual(last('2026-10-22'))
  })

  it('[F28] the day of preparation and a day of thawing count though it is frozen that day', () => {
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-01', '2026-10-10')] })).toEqual(
      last('2026-10-15'),
    )
    const sameDay = [frozen('2026-10-03', '2026-10-10'), frozen('2026-10-10', '2026-10-20')]
    expect(mark('2026-10-01', { freezings: sameDay })).toEqual(last('2026-10-23'))
  })

  it('[F28] freezing after the last day mends nothing, and freezing on it leaves one day', () => {
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-08', null)] })).toEqual({
      mark: 'too-late',
    })
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-07', null)] })).toEqual({
      mark: 'frozen',
      daysLeft: 1,
    })
    expect(mark('2026-10-01', { freezings: [frozen('2026-10-07', '2026-11-03')] })).toEqual(
      last('2026-11-03'),
    )
    const noneLeft = [frozen('2026-10-07', '2026-11-03'), frozen('2026-11-03', '2026-11-05')]
    expect(mark('2026-10-01', { freezings: noneLeft })).toEqual({ mark: 'too-late' })
  })

  it('[F28] freezings in an order that can’t be are told', () => {
    for (const freezings of [
      [frozen('2026-09-30', '2026-10-02')],
      [frozen('2026-10-03', '2026-10-02')],
      [frozen('2026-10-02', '2026-10-09'), frozen('2026-10-08', '2026-10-12')],
    ])
      expect(mark('2026-10-01', { freezings })).toEqual({ mark: 'wrong-order' })
  })

  it('[F29] a mark never goes past the maker’s use-by date', () => {
    expect(mark('2026-10-01', { useBy: '2026-10-05' })).toEqual(last('2026-10-05'))
    expect(mark('2026-10-01', { useBy: '2026-10-08' })).toEqual(last('2026-10-07'))
    const late = { useBy: '2026-10-02', freezings: [frozen('2026-10-03', null)] }
    expect(mark('2026-10-01', late)).toEqual({ mark: 'too-late' })
  })

  it('[F29] in mixed food the earliest mark governs', () => {
    const [one, other] = [stampOf('2026-10-04', 'UTC'), stampOf('2026-10-05', 'UTC')]
    expect(earlierStamp(other, one)).toBe(one)
    expect(earlierStamp(one, other)).toBe(one)
    expect(earlierStamp(null, other)).toBe(other)
    // The maker's date of either, whichever is marked earlier.
    const dated = { ...other, useBy: '2026-11-01' }
    expect(earlierStamp(one, dated)).toEqual({ ...one, useBy: '2026-11-01' })
    expect(earlierStamp({ ...one, useBy: '2026-12-01' }, dated)?.useBy).toBe('2026-11-01')
    expect(earlierStamp(null, null)).toBeNull()
    // Of the one that governs it says when it was thawed; of two that end together the later.
    const thawed = { ...one, thawedOn: '2026-10-02' }
    expect(earlierStamp(thawed, other)).toBe(thawed)
    expect(earlierStamp({ ...other, thawedOn: '2026-10-03' }, one)).toBe(one)
    expect(earlierStamp(one, thawed)).toEqual(thawed)
    expect(earlierStamp(thawed, { ...one, thawedOn: '2026-10-03' })?.thawedOn).toBe('2026-10-03')
  })
})
