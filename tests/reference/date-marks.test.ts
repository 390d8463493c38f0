import { describe, expect, it } from 'vitest'
import { civilDate } from '#lib/measure/civil.ts'
import { dateMark, stampOf } from '#lib/safety/date-marks.ts'
import { earlierStamp } from '#lib/safety/date-stamp.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { lastDayOf, type ToldDates } from '#lib/safety/told-dates.ts'

const lastDay = (preparedOn: string, frozenOn?: string, thawedOn?: string): string => {
  const freezings = frozenOn === undefined ? [] : [{ frozenOn, thawedOn: thawedOn ?? null }]
  const mark = dateMark({ preparedOn, freezings, useBy: null }, limits)
  return mark.mark === 'last-day' ? mark.lastDay : mark.mark
}

describe('FDA Food Code 2022, 3-501.17 and 3-501.18', () => {
  it('[F28] cooked 1 Oct, chilled 1 to 2 Oct, frozen 3 Oct, thawed 10 Oct: last day 14 Oct (North Carolina date-marking sheet)', () => {
    expect(lastDay('2026-10-01', '2026-10-03', '2026-10-10')).toBe('2026-10-14')
  })

  it('[F27] prepared on a Monday: last day Sunday', () => {
    expect(new Date('2026-11-23').getUTCDay()).toBe(1)
    expect(lastDay('2026-11-23')).toBe('2026-11-29')
    expect(new Date('2026-11-29').getUTCDay()).toBe(0)
  })

  it('[F27] not 7 days after preparation, as a page of answers has it: that is a day too long', () => {
    expect(lastDay('2026-11-23')).not.toBe('2026-11-30')
  })

  it('[F27] prepared 26 Feb 2028, a leap year: last day 3 March', () => {
    expect(lastDay('2028-02-26')).toBe('2028-03-03')
    expect(lastDay('2026-02-26')).toBe('2026-03-04')
  })

  it('[F27] prepared at 23:50: day 1 is that calendar day', () => {
    const preparedOn = civilDate(Date.parse('2026-10-01T23:50:00-04:00'), 'America/New_York')
    expect(preparedOn).toBe('2026-10-01')
    expect(lastDay(preparedOn)).toBe('2026-10-07')
  })

  it('[F29] egg mix on day 1 with ham on day 4 is on day 4: last day today and 3 days', () => {
    const [today, opened] = ['2026-10-10', '2026-10-07']
    const [mix, ham] = [today, opened].map((day) => stampOf(lastDay(day), 'UTC'))
    expect(earlierStamp(mix ?? null, ham ?? null)?.lastDay).toBe('2026-10-13')
  })
})

describe('FDA Food Code 2022, 3-501.17, as days are told', () => {
  const told = (dates: ToldDates, today: string) => {
    const last = lastDayOf(dates, today, limits)
    return 'lastDay' in last ? last.lastDay : last.problem.code
  }

  it('[Z54] 3-501.17(A): prepared on 1 Oct, the day of preparation is day 1: last day 7 Oct', () => {
    expect(told({ preparedOn: '2026-10-01' }, '2026-10-01')).toBe('2026-10-07')
  })

  it('[Z54] 3-501.17(B): a pack counts from the day it was opened, and not past the maker’s use-by (from memory)', () => {
    expect(told({ preparedOn: '2026-10-01', useBy: '2026-10-04' }, '2026-10-02')).toBe('2026-10-04')
    expect(told({ preparedOn: '2026-10-01', useBy: '2026-11-04' }, '2026-10-02')).toBe('2026-10-07')
  })

  it('[Z54] cooked 1 Oct, frozen 3 Oct, thawed 10 Oct: last day 14 Oct (North Carolina date-marking sheet)', () => {
    const freezing = { frozenOn: '2026-10-03', thawedOn: '2026-10-10' }
    expect(told({ preparedOn: '2026-10-01', freezing }, '2026-10-10')).toBe('2026-10-14')
  })

  it('[Z55] 3-501.18(A): freezing on day 8 mends nothing, on day 7 leaves the day of thawing (computed)', () => {
    const thawedOn = '2026-10-20'
    const frozen = (frozenOn: string): ToldDates => ({
      preparedOn: '2026-10-01',
      freezing: { frozenOn, thawedOn },
    })
    expect(told(frozen('2026-10-08'), thawedOn)).toBe('frozen-too-late')
    expect(told(frozen('2026-10-07'), thawedOn)).toBe(thawedOn)
  })
})
