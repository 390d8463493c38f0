import { describe, expect, it } from 'vitest'
import { fieldsWith, fromTyped, toTyped, valueAt } from '#components/menu/fields/typed.ts'

describe('what is typed into a field', () => {
  it.each([
    ['6.50', 'money', 650],
    ['$6.5', 'money', 650],
    ['6,50', 'money', 650],
    ['0.29', 'money', 29],
    ['8.25 %', 'percent', 825],
    ['24', 'whole', 24],
    ['2.5', 'number', 2.5],
    ['16', 'ounces', 453_592],
    ['90', 'minutes', 5_400_000],
    ['10,000', 'money', 1_000_000],
    ['1,234.50', 'money', 123_450],
    ['1,000', 'whole', 1_000],
    ['1,500', 'number', 1_500],
    ['0,125', 'number', 0.125],
  ] as const)('%s as %s is kept as %s', (text, as, kept) => {
    expect(fromTyped(text, as)).toBe(kept)
  })

  it.each([
    ['-1', 'money'],
    ['six', 'money'],
    ['2.5', 'whole'],
    ['1e3', 'number'],
    ['=1+1', 'whole'],
    ['6.505', 'money'],
    ['1,2345', 'money'],
    ['10,00,000', 'number'],
  ] as const)('%s as %s stays as it was typed, so that it can be told', (text, as) => {
    expect(fromTyped(text, as)).toBe(text)
    expect(toTyped(text, as)).toBe(text)
  })

  it('nothing is no answer', () => {
    expect(fromTyped(' ', 'text')).toBeUndefined()
    expect(fromTyped('', 'money')).toBeUndefined()
    expect(toTyped(undefined, 'money')).toBe('')
    expect(toTyped(null, 'whole')).toBe('')
  })

  it('what is kept is shown as it is typed', () => {
    expect(toTyped(650, 'money')).toBe('6.50')
    expect(toTyped(825, 'percent')).toBe('8.25')
    expect(toTyped(453_592, 'ounces')).toBe('16')
    expect(toTyped(0.125, 'number')).toBe('0.125')
  })

  it('is written into what it lies in, and the rest stays', () => {
    const row = { portion: { tool: 'scoop', number: 16 }, name: 'Rice' }
    expect(valueAt(row, 'portion.number')).toBe(16)
    expect(valueAt(row, 'portion.gPerCup')).toBeUndefined()
    expect(fieldsWith(row, 'portion.number', 8)).toEqual({
      fields: { portion: { tool: 'scoop', number: 8 } },
    })
    expect(fieldsWith(row, 'portion.number', undefined)).toEqual({
      fields: { portion: { tool: 'scoop' } },
    })
    expect(valueAt({ ways: [{ seconds: 15 }] }, 'ways.0.seconds')).toBe(15)
    const limits = { limits: { reheat: { days: 1, paragraph: 'a' }, other: 2 } }
    expect(fieldsWith(limits, 'limits.reheat.days', 3)).toEqual({
      fields: { limits: { reheat: { days: 3, paragraph: 'a' }, other: 2 } },
    })
    expect(fieldsWith(limits, 'limits.reheat', undefined)).toEqual({
      fields: { limits: { other: 2 } },
    })
    expect(fieldsWith(undefined, 'limits.reheat.days', 3)).toEqual({
      fields: { limits: { reheat: { days: 3 } } },
    })
    expect(fieldsWith(row, 'name', 'Rices')).toEqual({ fields: { name: 'Rices' } })
    expect(fieldsWith(row, 'name', undefined)).toEqual({ fields: {}, clear: ['name'] })
  })
})
