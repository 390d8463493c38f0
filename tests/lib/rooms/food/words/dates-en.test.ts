import { describe, expect, it } from 'vitest'
import { dateWords } from '#lib/rooms/food/words/dates-en.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import type { DateProblem } from '#lib/safety/told-dates.ts'
import { sayDateProblem } from '#lib/words/date-problems-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const PROBLEMS: readonly DateProblem[] = [
  { code: 'day-ahead', what: 'preparedOn', on: '2026-11-26' },
  { code: 'day-ahead', what: 'frozenOn', on: '2026-11-26' },
  { code: 'day-ahead', what: 'thawedOn', on: '2026-11-26' },
  { code: 'opened-after-use-by', useBy: '2026-11-23' },
  { code: 'no-first-day' },
  { code: 'frozen-before-first-day' },
  { code: 'thawed-before-frozen' },
  { code: 'frozen-too-late' },
]

describe('words on dates', () => {
  it('[Z59] a day is said as people say it, in the station’s zone', () => {
    expect(sayDate('2026-11-26')).toBe('Thu, Nov 26')
    const midnight = Date.parse('2026-11-26T06:00:00Z')
    expect(sayDay(midnight - 1, 'America/Chicago')).toBe('Wed, Nov 25')
    expect(sayDay(midnight, 'America/Chicago')).toBe('Thu, Nov 26')
    expect(dateWords.lastUse(sayDate('2026-11-26'))).toBe('Use by Thu, Nov 26')
  })

  it('[Z55] every reason has a sentence of its own, with its day', () => {
    const said = PROBLEMS.map(sayDateProblem)
    expect(new Set(said).size).toBe(PROBLEMS.length)
    for (const one of said) expect(one).toMatch(/^[A-Z].*\.$/)
    expect(said[0]).toBe(
      'It can’t have been opened or made on Thu, Nov 26: that day is still to come.',
    )
    expect(said[3]).toContain('Mon, Nov 23')
  })

  it('[Z58] the limit is said with its paragraph, as local code has it', () => {
    const cold = safetyWords.limit(limits.dateMarkCold, 'F')
    expect(dateWords.limit(limits.dateMark, cold)).toMatch(/^At most 7 days at 41 °F or below/)
    expect(dateWords.limit({ ...limits.dateMark, days: 4 }, cold)).toMatch(/^At most 4 days/)
    expect(safetyWords.paragraph(limits.dateMark)).toBe('FDA Food Code 2022, 3-501.17(A)')
    expect(safetyWords.load({ code: 'past-date-mark', lastDay: '2026-11-24' }, String)).toBe(
      'Throw it out: its last day was Tue, Nov 24.',
    )
  })
})
