import { describe, expect, it } from 'vitest'
import { dayOrderOf, typedDay, typedFigures } from '#lib/measure/typed-day.ts'

const us = (figures: string, today = '2026-11-29') => typedDay(figures, today, 'month-first')

describe('a date off a pack', () => {
  it('[DV18] of four figures is the one near today, over the turn of the year too', () => {
    expect(us('1205')).toEqual({ is: 'day', date: '2026-12-05' })
    expect(us('1128')).toEqual({ is: 'day', date: '2026-11-28' })
    expect(us('0102')).toEqual({ is: 'day', date: '2027-01-02' })
    expect(us('1231', '2027-01-04')).toEqual({ is: 'day', date: '2026-12-31' })
    expect(us('0229', '2028-02-20')).toEqual({ is: 'day', date: '2028-02-29' })
  })

  it('[DV18] that far off needs its year: an old pack’s is never one of next year', () => {
    expect(us('0401')).toEqual({ is: 'needs-year' })
    expect(us('0229')).toEqual({ is: 'needs-year' })
    expect(us('040126')).toEqual({ is: 'day', date: '2026-04-01' })
    expect(us('040129')).toEqual({ is: 'day', date: '2029-04-01' })
  })

  it('[DV18] that is none is told, and one that is begun isn’t', () => {
    expect(us('1301')).toEqual({ is: 'no-date' })
    expect(us('0230')).toEqual({ is: 'no-date' })
    expect(us('022927')).toEqual({ is: 'no-date' })
    expect(us('12x5')).toEqual({ is: 'no-date' })
    for (const begun of ['', '1', '12', '120', '12052']) expect(us(begun)).toEqual({ is: 'begun' })
  })

  it('[DV18] is written day first elsewhere', () => {
    expect(typedDay('0512', '2026-11-29', dayOrderOf('en-GB'))).toEqual({
      is: 'day',
      date: '2026-12-05',
    })
    expect(dayOrderOf('en-US')).toBe('month-first')
  })

  it('[DV18] is six figures at most, and the last one goes', () => {
    const keyed = [...'0012345'].reduce(typedFigures, '')
    expect(keyed).toBe('001234')
    expect(typedFigures('12', '.')).toBe('12')
    expect(typedFigures('12', 'back')).toBe('1')
  })
})
